/** What lines and fills of the map mean. */

import { make } from "../dom";
import type { Verdict } from "../door";
import type { Words } from "../words";
import { GRAVITY, SIGNS, zoneFill, type Palette } from "./palette";

/** A width of each class, metres, and how the class is written. */
const CLASSES: readonly (readonly [gap_m: number, says: string])[] = [[1, "≤ 2"], [4, "≤ 5"], [8, "≤ 10"], [15, "≤ 20"], [30, "> 20"]];

type Line = readonly [colour: string, width: number, dashes?: string];

function line(colours: Palette, verdict: Verdict): Line[] {
  const colour = colours.legs[verdict];
  if (verdict === "unroped") return [[colour, 2.2]];
  if (verdict === "inside") return [[colour, 4]];
  if (verdict === "look") return [[colour, 4.2, "9 4"]];
  if (verdict === "outside") return [[colour, 6.4], [colours.halo, 2]];
  return [[colour, 2.2], [colour, 10, "2.8 3.2"]];
}

function swatch(strokes: readonly Line[], fill: string | null, rim: string, outline = "M1 1H43V15H1z"): SVGElement {
  const drawing = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  drawing.setAttribute("viewBox", "0 0 44 16");
  drawing.setAttribute("aria-hidden", "true");
  const add = (name: string, marks: Readonly<Record<string, string | number>>): void => {
    const element = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (const [mark, value] of Object.entries(marks)) element.setAttribute(mark, String(value));
    drawing.append(element);
  };
  if (fill) add("path", { d: outline, fill, stroke: rim, "stroke-width": 1.4 });
  for (const [colour, width, dashes = "none"] of strokes) add("path", { d: "M1 8H43", stroke: colour, "stroke-width": width, "stroke-dasharray": dashes });
  return drawing;
}

export function legend(colours: Palette, words: Words): HTMLElement {
  const row = (drawing: SVGElement, says: string): HTMLElement => {
    const item = make("li", {}, ` ${says}`);
    item.prepend(drawing);
    return item;
  };
  const lines = GRAVITY.map((verdict) => row(swatch(line(colours, verdict), null, ""), [SIGNS[verdict], words(`draw-legend-${verdict}`)].filter(Boolean).join(" ")));
  const fills = CLASSES.map(([gap, says]) => row(swatch([], zoneFill(colours, gap), colours.zoneRim), `${says} ${words("draw-unit-m")}`));
  const signs = [
    row(swatch([], colours.halo, colours.change, "M22 1a7 7 0 1 0 .1 0z"), words("draw-legend-change")),
    row(swatch([], colours.halo, colours.legs.look, "M22 0l8 8-8 8-8-8z"), words("draw-legend-place")),
  ];
  const others = [
    row(swatch([[colours.ink, 0.8]], zoneFill(colours, 4), colours.zoneRim), words("draw-legend-strike")),
    row(swatch([], colours.halo, colours.zoneRim), `? ${words("draw-legend-unknown")}`),
    row(swatch([], colours.ice, colours.iceRim), words("draw-legend-ice")),
  ];
  const list = (key: string, items: HTMLElement[]): HTMLElement => make("div", {}, make("p", { class: "map-note-title" }, words(key)), make("ul", { class: "map-legend" }, ...items));
  return make("div", { class: "map-legends" }, list("draw-legend-legs", [...lines, ...signs]), list("draw-legend-zones", [...fills, ...others]));
}
