/** Numbers as people type them and as the language of the page writes them. What is none stays the text that it is: the program says what is wrong with it. */

import { writer } from "./map/figures";

/** Plain digits, with a point or a comma. */
const PLAIN = /^(\d+)(?:([.,])(\d*))?$/;

/** What the language of the page writes before tenths. */
const sign = (): string => writer(document.documentElement.lang || "en", 1, 1).format(0.5).charAt(1);

/** The number, the text where it is none, nothing where nothing is written. */
export function typed(text: string): number | string | undefined {
  const plain = text.trim();
  if (plain === "") return undefined;
  const [known, whole = "", between, rest = ""] = PLAIN.exec(plain) ?? [];
  if (known === undefined) return plain;
  // A sign before three digits parts thousands, unless the language writes it before tenths: that is not guessed.
  const thousands = between !== undefined && between !== sign() && rest.length === 3 && whole !== "0";
  // With a comma, since the program takes a point for that before tenths, and tells what a comma can mean.
  return thousands ? `${whole},${rest}` : Number(`${whole}.${rest || "0"}`);
}

/** The value as it stands in a field; a text as it is. */
export const shown = (value: unknown): string =>
  typeof value === "string" ? value : typeof value === "number" ? String(value).replace(".", sign()) : "";

/** About where a slider stands for a value that may be a text. */
export function about(value: unknown): number | null {
  if (typeof value === "number") return value;
  const number = typeof value === "string" ? Number.parseFloat(value.replace(",", ".")) : Number.NaN;
  return Number.isFinite(number) ? number : null;
}

/** The record with a member of that value, or without it. */
export function withMember<T extends Readonly<Record<string, unknown>>>(record: T, name: string, value: unknown): T {
  const { [name]: _, ...others } = record;
  if (value === undefined) return (name in record ? others : record) as T;
  if (Object.is(record[name], value)) return record;
  // In its place, so that a file does not change its order.
  return (name in record ? { ...record, [name]: value } : { ...others, [name]: value }) as T;
}
