/** Figures as the language of the page writes them, with their units. */

import type { Words } from "../words";

/** How numbers are written in the language of the page. */
export interface Numbers {
  readonly number: (value: number) => string;
  readonly metres: (metres: number) => string;
  /** Whole metres. */
  readonly height: (metres: number) => string;
  /** Of metres, to ten of them; without their unit. */
  readonly kilometres: (metres: number) => string;
  /** With their unit, as many digits as it takes. */
  readonly km: (kilometres: number) => string;
}

/** Who writes numbers, by language and decimals: to make one is slow. */
const writers = new Map<string, Intl.NumberFormat>();

export function writer(language: string, least: number, most: number): Intl.NumberFormat {
  const name = `${language} ${least} ${most}`;
  const known = writers.get(name) ?? new Intl.NumberFormat(language, { minimumFractionDigits: least, maximumFractionDigits: most, useGrouping: false });
  writers.set(name, known);
  return known;
}

/** In the language of the page. */
export function numbersOf(element: HTMLElement, words: Words): Numbers {
  const language = element.closest("[lang]")?.getAttribute("lang") || document.documentElement.lang || "en";
  const [plain, fine] = [writer(language, 0, 1), writer(language, 2, 2)];
  const [m, km] = [words("draw-unit-m"), words("draw-unit-km")];
  return {
    number: (value) => plain.format(value),
    metres: (metres) => `${plain.format(metres)} ${m}`,
    height: (metres) => `${Math.round(metres)} ${m}`,
    kilometres: (metres) => fine.format(metres / 1000),
    km: (kilometres) => `${plain.format(kilometres)} ${km}`,
  };
}
