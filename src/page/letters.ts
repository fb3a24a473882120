/** The letters that the packed program stands in, five for four bytes: ASCII from `(` on, without `<` and `\\`. */

const values = new Uint8Array(128);
[..."()*+,-./0123456789:;=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[]^_`abcdefghijklmnopqrstuvwxyz{|}~"].forEach((letter, value) => (values[letter.charCodeAt(0)] = value));

/** The greatest value stands for letters that a last group lacks: what is cut off behind its bytes then never carries. */
const LACKS = 84;

/** The bytes of such a text. */
export function fromLetters(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(Math.floor((text.length * 4) / 5));
  const view = new DataView(new ArrayBuffer(4));
  for (let at = 0, to = 0; at < text.length; at += 5, to += 4) {
    let number = 0;
    for (let next = at; next < at + 5; next++) number = number * 85 + (next < text.length ? values[text.charCodeAt(next)]! : LACKS);
    view.setUint32(0, number);
    for (let byte = 0; byte < 4 && to + byte < bytes.length; byte++) bytes[to + byte] = view.getUint8(byte);
  }
  return bytes;
}
