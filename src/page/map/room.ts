/** The room that a look at the map has: what lies over its rims and in its corner is left out of it. */

import type { Point } from "./geometry/rings";
import type { Box } from "./shapes";

/** Pixels at each side. */
export type Padding = readonly [top: number, right: number, bottom: number, left: number];

/** What lies over a map, in pixels from its upper left corner. */
export interface Cover {
  /** From the upper rim down to here, and from here to the lower one. */
  readonly top: number;
  readonly bottom: number;
  /** The buttons in an upper corner. */
  readonly corner: Corner | null;
}

/** From the rim beside them to their other edge, and from the upper rim to their lower one, pixels. */
export interface Corner {
  readonly wide: number;
  readonly high: number;
  readonly left: boolean;
}

/** The buttons stand in the left corner where that shows so much more of the map. Our judgement. */
const WORTH_IT = 1.05;

type Size = readonly [wide: number, high: number];

/** Round what is looked at, pixels, or this share of a small map. Our judgement. */
const RIM = 56;
const SHARE = 0.1;
/** Between what lies over the map and what is looked at, pixels. */
const OFF = 10;
/** At least this share of the map stays to look at, whatever lies over it. */
const LEAST = 0.3;

/** Measures what lies over the map now. */
export function coverOf(stage: HTMLElement): Cover {
  const map = stage.getBoundingClientRect();
  const seen = (name: string): DOMRect | null => {
    const box = stage.parentElement?.querySelector(name)?.getBoundingClientRect();
    return box && box.width > 0 && box.height > 0 ? box : null;
  };
  const [row, buttons] = [seen(".map-picked"), seen(".map-zoom")];
  const tops = [".map-furniture", ".map-hint"].map((name) => (seen(name)?.top ?? map.bottom) - map.top);
  return {
    top: Math.max(0, (row?.bottom ?? map.top) - map.top),
    bottom: Math.min(map.height, ...tops),
    corner: buttons && cornerOf(buttons, map),
  };
}

function cornerOf(buttons: DOMRect, map: DOMRect): Corner {
  const left = buttons.left - map.left < map.right - buttons.right;
  return { left, wide: left ? buttons.right - map.left : map.right - buttons.left, high: buttons.bottom - map.top };
}

/** The same with the buttons in the corner that leaves what is looked at the most room: the right one, where it is all one. */
export function roomier(box: Box, line: readonly Point[], size: Size, cover: Cover): Cover {
  const { corner } = cover;
  if (!corner) return cover;
  const [right, left] = [false, true].map((left): Cover => ({ ...cover, corner: { ...corner, left } })) as [Cover, Cover];
  const scale = (one: Cover) => fitted(box, size, paddingFor(box, line, size, one)).resolution;
  return scale(right) > WORTH_IT * scale(left) ? left : right;
}

/** The padding that shows a box the largest without anything of the line under the buttons in the corner. */
export function paddingFor(box: Box, line: readonly Point[], size: Size, cover: Cover): Padding {
  const [wide, high] = size;
  const rim = Math.min(RIM, wide * SHARE, high * SHARE);
  const [top, bottom] = [Math.max(rim, cover.top + OFF), Math.max(rim, high - cover.bottom + OFF)];
  const bars = sane([top, rim, bottom, rim], size);
  const { corner } = cover;
  if (!corner) return bars;
  const [x, y] = [corner.wide + OFF, corner.high + OFF];
  const free = (padding: Padding) => {
    const { resolution, middle } = fitted(box, size, padding);
    const side = corner.left ? 1 : -1;
    return !line.some(([east, north]) => wide / 2 + (side * (east - middle[0])) / resolution < x && high / 2 - (north - middle[1]) / resolution < y);
  };
  const aside: Padding = corner.left ? [top, rim, bottom, x] : [top, x, bottom, rim];
  const ways = [bars, sane(aside, size), sane([y, rim, bottom, rim], size)].filter(free);
  const scale = (padding: Padding) => fitted(box, size, padding).resolution;
  return ways.sort((a, b) => scale(a) - scale(b))[0] ?? bars;
}

/** Made smaller where next to nothing would be left between. */
function sane([top, right, bottom, left]: Padding, [wide, high]: Size): Padding {
  const down = Math.min(1, (high * (1 - LEAST)) / (top + bottom));
  const across = Math.min(1, (wide * (1 - LEAST)) / (left + right));
  return [top * down, right * across, bottom * down, left * across];
}

/** Metres a pixel, and the middle of the map, as a box is fitted. */
function fitted([west, south, east, north]: Box, [wide, high]: Size, [top, right, bottom, left]: Padding): { resolution: number; middle: Point } {
  const resolution = Math.max((east - west) / (wide - left - right), (north - south) / (high - top - bottom), Number.EPSILON);
  const middle: Point = [(west + east) / 2 + ((right - left) / 2) * resolution, (south + north) / 2 + ((top - bottom) / 2) * resolution];
  return { resolution, middle };
}
