/** Where the values of a JSON text begin and end, so that they can be handed on byte for byte. */

/** A piece of a text, its end not included. */
export interface Slice {
  readonly from: number;
  readonly to: number;
}

/** A member of an object: its name as it reads, its value, and the whole of it. */
export interface Member extends Slice {
  readonly name: string;
  readonly value: Slice;
}

const QUOTE = 34;
const BACKSLASH = 92;
const OPENING = new Set([91, 123]);
const CLOSING = new Set([93, 125]);
/** Space, tab, line ends, the byte-order mark and the separator of text sequences (RFC 8142). */
const BLANK = new Set([32, 9, 10, 13, 0xfeff, 0x1e]);
/** What ends a number or a literal. */
const ENDING = new Set([...BLANK, 44, 58, 34, ...OPENING, ...CLOSING]);

/** The values that stand one after the other in a text, mostly one. */
export function values(text: string): Slice[] {
  const found: Slice[] = [];
  for (let at = blankEnd(text, 0); at < text.length; ) {
    const to = Math.max(valueEnd(text, at), at + 1);
    found.push({ from: at, to });
    at = blankEnd(text, to);
  }
  return found;
}

/** The members of the object that begins at `at`, in their order. */
export function members(text: string, at: number): Member[] {
  const found: Member[] = [];
  let from = blankEnd(text, at + 1);
  while (text.charCodeAt(from) === QUOTE) {
    const nameEnd = valueEnd(text, from);
    const colon = blankEnd(text, nameEnd);
    const begin = blankEnd(text, colon + 1);
    const to = valueEnd(text, begin);
    const name = JSON.parse(text.slice(from, nameEnd)) as string;
    found.push({ name, from, to, value: { from: begin, to } });
    from = blankEnd(text, to);
    if (text[from] !== ",") break;
    from = blankEnd(text, from + 1);
  }
  return found;
}

/** The elements of the list that begins at `at`. */
export function elements(text: string, at: number): Slice[] {
  const found: Slice[] = [];
  let from = blankEnd(text, at + 1);
  while (from < text.length && text[from] !== "]") {
    const to = valueEnd(text, from);
    found.push({ from, to });
    from = blankEnd(text, to);
    if (text[from] !== ",") break;
    from = blankEnd(text, from + 1);
  }
  return found;
}

/** The piece of the text. */
export const cut = (text: string, slice: Slice): string => text.slice(slice.from, slice.to);

function blankEnd(text: string, at: number): number {
  while (at < text.length && BLANK.has(text.charCodeAt(at))) at++;
  return at;
}

function valueEnd(text: string, at: number): number {
  const first = text.charCodeAt(at);
  if (first === QUOTE) return stringEnd(text, at);
  if (!OPENING.has(first)) return plainEnd(text, at);
  let depth = 0;
  for (let i = at; i < text.length; i++) {
    const sign = text.charCodeAt(i);
    if (sign === QUOTE) i = stringEnd(text, i) - 1;
    else if (OPENING.has(sign)) depth++;
    else if (CLOSING.has(sign) && --depth === 0) return i + 1;
  }
  return text.length;
}

function stringEnd(text: string, at: number): number {
  for (let i = at + 1; i < text.length; i++) {
    const sign = text.charCodeAt(i);
    if (sign === BACKSLASH) i++;
    else if (sign === QUOTE) return i + 1;
  }
  return text.length;
}

function plainEnd(text: string, at: number): number {
  while (at < text.length && !ENDING.has(text.charCodeAt(at))) at++;
  return at;
}
