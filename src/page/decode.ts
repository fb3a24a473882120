/** The text of a file, whichever letters it is written in. */

export interface Decoded {
  readonly text: string;
  /** Nothing says what its letters are, and UTF-8 they are not. */
  readonly guessed: boolean;
}

/** What the first bytes of a text can mark it as. */
const MARKS: readonly (readonly [label: string, bytes: readonly number[]])[] = [
  ["utf-8", [0xef, 0xbb, 0xbf]],
  ["utf-16le", [0xff, 0xfe]],
  ["utf-16be", [0xfe, 0xff]],
];
/** Read where nothing else fits: it has a letter for nearly every byte. */
const LAST = "windows-1252";
/** White space that may stand before it, which the program passes over too. */
const BLANK = [0x09, 0x0a, 0x0c, 0x0d, 0x20];
/** The head of an XML file as far as the name of its letters. */
const DECLARED = /^([\t\n\f\r ]*<\?xml\b[^>]{0,150}?\bencoding\s*=\s*["'])([\w.:-]+)/;

/** By the mark at its beginning, by what it says itself, as UTF-8, and last by guess. */
export function decoded(bytes: Uint8Array): Decoded {
  const mark = MARKS.find(([, first]) => first.every((byte, at) => bytes[at] === byte))?.[0];
  const head = Math.max(0, bytes.findIndex((byte) => !BLANK.includes(byte)));
  const plain = new TextDecoder(LAST).decode(bytes.subarray(head, head + 200));
  const says = DECLARED.exec(plain)?.[2]?.toLowerCase();
  // What can be read byte by byte is not two bytes a letter, whatever it says.
  const wide = says?.startsWith("utf-16") ?? false;
  for (const label of [mark, wide ? undefined : says, "utf-8"]) {
    const text = label === undefined ? null : read(bytes, label);
    if (text !== null) return { text: asUtf8(text), guessed: false };
  }
  return { text: asUtf8(new TextDecoder(LAST).decode(bytes)), guessed: true };
}

/** Null where the bytes are no such text, or nobody knows such letters. */
function read(bytes: Uint8Array, label: string): string | null {
  try {
    return new TextDecoder(label, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** A text that says of itself that it is in other letters would be read by those again. */
const asUtf8 = (text: string): string =>
  text.replace(DECLARED, (whole, before: string, label: string) => (/^utf-?8$/i.test(label) ? whole : `${before}UTF-8`));
