/** What lies in a .zip: looked up in its directory, and read no farther than the directory says and than there is room for. */

import { type NamedBytes, unpackedTo } from "./given";
import type { Words } from "./words";

/** So many files are read, of so many bytes together. Our judgement: a trip has some ten, and a tile of 30 m weighs 26 MB. */
const MOST_FILES = 200;
export const MOST_BYTES = 400e6;

/** Signatures, sizes and places of the format. */
const END = 0x06054b50;
const ENTRY = 0x02014b50;
const FILE = 0x04034b50;
const END_BYTES = 22;
const ENTRY_BYTES = 46;
const FILE_BYTES = 30;
/** A remark at the end is no longer. */
const REMARK = 0xffff;

const STORED = 0;
const DEFLATED = 8;

interface Entry {
  readonly name: string;
  readonly secret: boolean;
  readonly method: number;
  readonly sum: number;
  readonly packed: number;
  readonly size: number;
  readonly at: number;
}

export const isZip = (bytes: Uint8Array): boolean => /^PK(\x03\x04|\x05\x06)/.test(String.fromCharCode(...bytes.subarray(0, 4)));

/** The files with their paths in the archive, of those that are wanted. Throws what is wrong with it. */
export async function unzipped(bytes: Uint8Array, wants: (path: string) => boolean, words: Words): Promise<NamedBytes[]> {
  const wrong = (key: string) => new Error(words(key));
  const entries = directory(bytes)?.filter(({ name }) => wants(name));
  if (!entries) throw wrong("draw-zip-broken");
  if (entries.length === 0) throw wrong("draw-zip-nothing");
  const whole = entries.reduce((sum, { size }) => sum + size, 0);
  if (entries.length > MOST_FILES || whole > MOST_BYTES) throw wrong("draw-zip-too-much");
  if (entries.some(({ secret }) => secret)) throw wrong("draw-zip-secret");
  const files: NamedBytes[] = [];
  for (const entry of entries) {
    const plain = await contents(bytes, entry).catch(() => null);
    if (!plain) throw new Error(`${entry.name}: ${words("draw-zip-broken")}`);
    files.push({ name: entry.name, bytes: plain });
  }
  return files;
}

/** All that the directory lists; nothing where there is none. */
function directory(bytes: Uint8Array): Entry[] | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - END_BYTES;
  const first = Math.max(0, end - REMARK);
  while (end >= first && view.getUint32(end, true) !== END) end--;
  if (end < first) return null;
  const entries: Entry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left--) {
    if (at + ENTRY_BYTES > end || view.getUint32(at, true) !== ENTRY) return null;
    const [name, extra, remark] = [28, 30, 32].map((place) => view.getUint16(at + place, true)) as [number, number, number];
    const [sum, packed, size] = [16, 20, 24].map((place) => view.getUint32(at + place, true)) as [number, number, number];
    const from = at + ENTRY_BYTES;
    entries.push({
      name: new TextDecoder().decode(bytes.subarray(from, from + name)),
      secret: (view.getUint16(at + 8, true) & 1) === 1,
      method: view.getUint16(at + 10, true),
      sum,
      packed,
      size,
      at: view.getUint32(at + 42, true),
    });
    at = from + name + extra + remark;
  }
  return entries;
}

/** The bytes of a file; nothing where they are not those that the directory tells of. */
async function contents(bytes: Uint8Array, { method, sum, packed, size, at }: Entry): Promise<Uint8Array | null> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.getUint32(at, true) !== FILE) return null;
  const from = at + FILE_BYTES + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  if (from + packed > bytes.length) return null;
  const inside = bytes.slice(from, from + packed);
  const plain = method === STORED ? inside : method === DEFLATED ? await unpackedTo(inside, "deflate-raw", size) : null;
  return plain?.length === size && checksum(plain) === sum ? plain : null;
}

const SUMS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? 0xedb88320 ^ (sum >>> 1) : sum >>> 1;
  return sum;
});

/** CRC-32, as the format has it. */
function checksum(bytes: Uint8Array): number {
  let sum = ~0;
  for (const byte of bytes) sum = (SUMS[(sum ^ byte) & 0xff] ?? 0) ^ (sum >>> 8);
  return ~sum >>> 0;
}
