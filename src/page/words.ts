/** The words of the page by key, in the language that is chosen. */

export type Language = "en" | "de";

/** Gives the words of a key. */
export type Words = (key: string) => string;

/** All words by language and key, as the file of the page holds them. */
export type Catalogue = Readonly<Record<Language, Readonly<Record<string, string>>>>;

export const LANGUAGES: readonly Language[] = ["en", "de"];

/** The key of the words for a member of a file, whose names have underscores. */
export const keyOf = (before: string, name: string): string => `${before}-${name.replaceAll("_", "-")}`;

/** The words of one language; a key without words stands for itself. */
export function wordsOf(catalogue: Catalogue, language: Language): Words {
  const known = new Map(Object.entries(catalogue[language] ?? {}));
  return (key) => known.get(key) ?? key;
}
