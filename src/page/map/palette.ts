/** Colours and weights of the map, by day and by night: those of the printed map, and their like on dark ground. */

import type { Verdict } from "../door";

export interface Palette {
  readonly dark: boolean;
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  /** Round letters and lines, so that they stand out. */
  readonly halo: string;
  readonly contour: string;
  readonly height: string;
  readonly ice: string;
  readonly iceRim: string;
  readonly zoneRim: string;
  /** By width, from narrow gaps to wide ones. */
  readonly zones: readonly string[];
  readonly legs: Readonly<Record<Verdict, string>>;
  readonly change: string;
  readonly picked: string;
  /** Level ground, the side in the light and the side in the shade, as red, green, blue. */
  readonly ground: readonly [level: Shade, light: Shade, shade: Shade];
}

export type Shade = readonly [red: number, green: number, blue: number];

const LIGHT: Palette = {
  dark: false,
  paper: "#f7f8f9",
  ink: "#1b2430",
  soft: "#4a5563",
  halo: "#ffffff",
  contour: "rgba(112,94,76,0.6)",
  height: "#3d3024",
  ice: "rgba(226,238,245,0.62)",
  iceRim: "rgba(80,112,134,0.85)",
  zoneRim: "#2E4A80",
  zones: ["#D6E4EE", "#A9C4DA", "#7A9EC2", "#4F76A5", "#2E4A80"],
  legs: { unroped: "#6b7178", inside: "#1273B5", look: "#8F3F00", outside: "#310A45", stop: "#B3005E" },
  change: "#310A45",
  picked: "#1b2430",
  ground: [[240, 240, 238], [253, 252, 248], [142, 150, 164]],
};

const DARK: Palette = {
  dark: true,
  paper: "#10161d",
  ink: "#e6ebf1",
  soft: "#a8b3c1",
  halo: "#0f141a",
  contour: "rgba(196,178,156,0.3)",
  height: "#c9b8a2",
  ice: "rgba(120,160,190,0.16)",
  iceRim: "rgba(140,178,204,0.6)",
  zoneRim: "#9dbcf0",
  zones: ["#2c3f55", "#37577c", "#4776a8", "#6c9dd2", "#a3c8f2"],
  legs: { unroped: "#9aa1aa", inside: "#6cb8f0", look: "#f0a060", outside: "#c9a6e4", stop: "#ff7ab8" },
  change: "#e3cdf3",
  picked: "#ffffff",
  ground: [[38, 46, 56], [78, 88, 100], [12, 16, 22]],
};

/** Upper ends of the gap classes but the last, metres, as on the printed map. */
const CLASSES_M = [2, 5, 10, 20];

export const palette = (dark: boolean): Palette => (dark ? DARK : LIGHT);

/** Fill of a zone by the width of its gaps. */
export function zoneFill(colours: Palette, gap_m: number): string {
  const above = CLASSES_M.filter((upper) => gap_m > upper).length;
  return colours.zones[above] ?? colours.paper;
}

/** Written on a fill: the ink of the paper on pale ones by day and dark ones by night, else its opposite. */
export function onFill(colours: Palette, gap_m: number | null): { ink: string; halo: string } {
  if (gap_m === null || gap_m <= 10) return { ink: colours.ink, halo: colours.halo };
  return colours.dark ? { ink: "#0f141a", halo: "#8fb9ea" } : { ink: "#ffffff", halo: "#2E4A80" };
}

/** Set beside a word or a leg, so that colour is never alone; the same as in all outputs. */
export const SIGNS: Readonly<Record<Verdict, string>> = { unroped: "", inside: "", look: "?", outside: "✕", stop: "■" };

/** The graver the later: drawn above the others. */
export const GRAVITY: readonly Verdict[] = ["unroped", "inside", "look", "outside", "stop"];
