/** What the file of the page was given when it was made: route, zones, trip, files, words. */

import type { Trip } from "./door";
import type { Catalogue, Language } from "./words";

export interface NamedText {
  readonly name: string;
  readonly text: string;
}

export interface PackedFile {
  readonly name: string;
  /** Base64 of gzip. */
  readonly packed: string;
  /** Only round the route that the page was made with. */
  readonly cut?: boolean;
}

export interface Given {
  readonly version: string;
  readonly language: Language;
  readonly words: Catalogue;
  readonly route: NamedText | null;
  readonly zones: NamedText | null;
  /** Paths in it are names in `files`. */
  readonly trip: Trip;
  readonly files: readonly PackedFile[];
}

/** A file in memory. */
export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly cut?: boolean;
}

/** Reads what stands in the page. */
export function readGiven(): Given {
  const given = document.getElementById("given");
  return JSON.parse(given?.textContent ?? "") as Given;
}

/** The packed core as it stands in the page. */
export const readCore = (): string => document.getElementById("core")?.textContent?.trim() ?? "";

/** The bytes of a text in base64. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const letters = atob(text);
  const bytes = new Uint8Array(letters.length);
  for (let i = 0; i < letters.length; i++) bytes[i] = letters.charCodeAt(i);
  return bytes;
}

/** The text in base64 of bytes. */
export function toBase64(bytes: Uint8Array): string {
  const pieces: string[] = [];
  // In pieces, since a call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 0x8000) {
    pieces.push(String.fromCharCode(...bytes.subarray(at, at + 0x8000)));
  }
  return btoa(pieces.join(""));
}

/** The file unpacked. Throws where it is longer than that. */
export async function unpacked(file: PackedFile, most: number): Promise<NamedBytes> {
  const bytes = await unpackedTo(fromBase64(file.packed), "gzip", most);
  if (!bytes) throw new RangeError(file.name);
  return { name: file.name, bytes, cut: file.cut ?? false };
}

/** What packed bytes hold; nothing where they hold more than that, of which none is read on. */
export async function unpackedTo(packed: Uint8Array<ArrayBuffer>, format: CompressionFormat, most: number): Promise<Uint8Array | null> {
  const reader = new Blob([packed]).stream().pipeThrough(new DecompressionStream(format)).getReader();
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  let length = 0;
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    pieces.push(next.value as Uint8Array<ArrayBuffer>);
    length += next.value.length;
    if (length > most) {
      await reader.cancel();
      return null;
    }
  }
  return new Uint8Array(await new Blob(pieces).arrayBuffer());
}

/** The file packed. */
export async function packed(file: NamedBytes): Promise<PackedFile> {
  const plain = new Blob([file.bytes as Uint8Array<ArrayBuffer>]).stream();
  const small = plain.pipeThrough(new CompressionStream("gzip"));
  const bytes = new Uint8Array(await new Response(small).arrayBuffer());
  return { name: file.name, packed: toBase64(bytes), cut: file.cut ?? false };
}
