/** Numbers as people type them. What is none stays the text that it is: the program says what is wrong with it. */

/** Plain digits, with a point or a comma; a comma before three digits might part thousands. */
const PLAIN = /^\d+(?:\.\d+|,\d{1,2}|,\d{4,})?$/;

/** The number, the text where it is none, nothing where nothing is written. */
export function typed(text: string): number | string | undefined {
  const plain = text.trim();
  if (plain === "") return undefined;
  return PLAIN.test(plain) ? Number(plain.replace(",", ".")) : plain;
}

/** The value as it stands in a field. */
export const shown = (value: unknown): string =>
  typeof value === "string" ? value : typeof value === "number" ? String(value) : "";

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
