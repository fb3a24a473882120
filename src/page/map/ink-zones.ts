/** Zones on the map: filled by width, hatched along their strike, their width written inside. */

import { within, type Area, type Point } from "./geometry/rings";
import type { Labels } from "./labels";
import { onFill, zoneFill } from "./palette";
import type { Known, Scene } from "./scene";
import { meets, type Shape } from "./shapes";
import type { Sight } from "./sight";

/** Opacity of a fill where the route meets it and where not; our judgement, as on the printed map. */
const MET = 0.78;
const NOT_MET = 0.22;
const NOT_KNOWN = 0.4;
/** From one line of a hatching to the next, pixels. */
const APART = 7;

export function drawZones(pen: CanvasRenderingContext2D, scene: Scene, sight: Sight): void {
  const box = sight.box();
  // The great ones below, so that a small one within is seen.
  for (const one of bySize(scene.shapes.filter((each) => meets(box, each.box)))) {
    const known = scene.about(one);
    sight.inMetres(pen);
    pen.globalAlpha = known.gap_m === null ? NOT_KNOWN : known.met ? MET : NOT_MET;
    pen.fillStyle = known.gap_m === null ? scene.colours.halo : zoneFill(scene.colours, known.gap_m);
    pen.fill(one.path, "evenodd");
    pen.globalAlpha = known.met ? 1 : 0.5;
    hatch(pen, scene, sight, one, known);
    sight.inMetres(pen);
    pen.lineJoin = "round";
    const dashes = known.gap_m === null || known.assumed ? [5, 3] : [];
    sight.stroke(pen, one.path, scene.colours.zoneRim, known.met ? 1.3 : 0.9, dashes);
    pen.globalAlpha = 1;
  }
}

/** Along the strike where it is known; slanting and broken where not even a width is. */
function hatch(pen: CanvasRenderingContext2D, scene: Scene, sight: Sight, one: Shape, known: Known): void {
  const { strike_deg: strike, gap_m: gap } = known;
  if (strike === null && gap !== null) return;
  pen.save();
  pen.clip(one.path, "evenodd");
  sight.inPixels(pen);
  const path = strokes(sight, one, strike ?? 45, gap === null ? 2 * APART : APART);
  if (strike !== null) {
    pen.lineWidth = 2.2;
    pen.strokeStyle = scene.colours.dark ? "rgba(0,0,0,0.3)" : "rgba(255,255,255,0.4)";
    pen.stroke(path);
  }
  pen.lineWidth = strike === null ? 1.2 : 0.8;
  pen.setLineDash(strike === null ? [4, 4] : []);
  pen.strokeStyle = strike === null ? scene.colours.zoneRim : hatchInk(scene, gap);
  pen.stroke(path);
  pen.restore();
}

function hatchInk(scene: Scene, gap: number | null): string {
  if (scene.colours.dark) return "rgba(230,235,241,0.55)";
  return gap !== null && gap > 10 ? "rgba(255,255,255,0.6)" : "rgba(27,36,48,0.6)";
}

/** Parallel lines over what is seen of a zone. They are counted from a place on the ground, so they move with it. */
function strokes(sight: Sight, one: Shape, strike: number, apart: number): Path2D {
  const [west, south, east, north] = one.box;
  const [left, top] = sight.pixel([west, north]);
  const [right, bottom] = sight.pixel([east, south]);
  const [x0, y0] = [Math.max(left, 0), Math.max(top, 0)];
  const [x1, y1] = [Math.min(right, sight.wide), Math.min(bottom, sight.high)];
  const turn = (strike * Math.PI) / 180;
  const [alongX, alongY] = [Math.sin(turn), -Math.cos(turn)];
  const [acrossX, acrossY] = [-alongY, alongX];
  const far = (x: number, y: number): number => (x - left) * acrossX + (y - top) * acrossY;
  const corners = [far(x0, y0), far(x1, y0), far(x0, y1), far(x1, y1)];
  const path = new Path2D();
  const reach = Math.hypot(x1 - x0, y1 - y0);
  const middle = ((x0 + x1) / 2 - left) * alongX + ((y0 + y1) / 2 - top) * alongY;
  for (let at = Math.ceil(Math.min(...corners) / apart) * apart; at <= Math.max(...corners); at += apart) {
    const [x, y] = [left + at * acrossX + middle * alongX, top + at * acrossY + middle * alongY];
    path.moveTo(x - alongX * reach, y - alongY * reach);
    path.lineTo(x + alongX * reach, y + alongY * reach);
  }
  return path;
}

/** Widths, and names where there is room. An assumed width has a question mark before it. */
export function labelZones(labels: Labels, scene: Scene, sight: Sight, metres: (metres: number) => string): void {
  const box = sight.box();
  for (const one of bySize(scene.shapes.filter((each) => meets(box, each.box)))) {
    const { gap_m: gap, gap_text: text, assumed, met } = scene.about(one);
    const wide = (one.box[2] - one.box[0]) * sight.scale;
    if (wide < 14) continue;
    const says = gap === null ? cropped(text ?? "?") : `${assumed ? "? " : ""}${metres(gap)}`;
    const middles = zoneMiddles(one).map((at) => sight.pixel(at));
    const { ink, halo } = onFill(scene.colours, met ? gap : null);
    const seen = middles.find((at) => sight.sees(at));
    if (!seen || !labels.text(says, middles, met ? "650 13px" : "600 11px", met ? ink : scene.colours.soft, halo, wide > 30)) continue;
    const title = one.zone.properties["name"];
    if (wide < 110 || typeof title !== "string" || title === "") continue;
    const below = middles.flatMap(([x, y]): Point[] => [[x, y + 16], [x, y - 16]]);
    labels.text(cropped(title), below, "italic 11px", met ? ink : scene.colours.soft, halo);
  }
}

const cropped = (title: string): string => (title.length > 28 ? `${title.slice(0, 27)}…` : title);

const bySize = (shapes: readonly Shape[]): Shape[] => [...shapes].sort((a, b) => size(b) - size(a));

const size = ({ box }: Shape): number => (box[2] - box[0]) * (box[3] - box[1]);

const known = new WeakMap<Shape, readonly Point[]>();

/** Places well inside a zone, the ones farthest from its rim first. */
export function zoneMiddles(one: Shape): readonly Point[] {
  const before = known.get(one);
  if (before) return before;
  const found = one.areas.flatMap((area) => inner(area)).sort((a, b) => b.deep - a.deep);
  const least = (found[0]?.deep ?? 0) * 0.3;
  const spots = found.filter(({ deep }) => deep >= least).slice(0, 24).map(({ at }) => at);
  known.set(one, spots);
  return spots;
}

const STEPS = 9;

function inner(area: Area): { at: Point; deep: number }[] {
  const outer = area[0] ?? [];
  const [xs, ys] = [outer.map(([x]) => x), outer.map(([, y]) => y)];
  const [west, east] = [xs.reduce((a, b) => Math.min(a, b), Infinity), xs.reduce((a, b) => Math.max(a, b), -Infinity)];
  const [south, north] = [ys.reduce((a, b) => Math.min(a, b), Infinity), ys.reduce((a, b) => Math.max(a, b), -Infinity)];
  const rim = area.flat();
  const found: { at: Point; deep: number }[] = [];
  for (let row = 0; row < STEPS; row++) {
    for (let column = 0; column < STEPS; column++) {
      const at: Point = [west + ((column + 0.5) / STEPS) * (east - west), south + ((row + 0.5) / STEPS) * (north - south)];
      if (!within(area, at)) continue;
      const deep = rim.reduce((least, [x, y]) => Math.min(least, Math.hypot(x - at[0], y - at[1])), Infinity);
      found.push({ at, deep });
    }
  }
  return found;
}
