/** Zones on the map: filled by width, hatched along their strike, their width written inside. */

import { within, type Area, type Point } from "./geometry/rings";
import { leader } from "./ink-legs";
import { rimOf, widthOf, written, type Labels } from "./labels";
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
/** So many times as far a width stands where there is no room for it at first. Our judgement. */
const FARTHER = 1.35;

/** A zone as it is drawn. */
interface Worn {
  readonly one: Shape;
  readonly known: Known;
  readonly fill: string;
}

/** The zones in sight, the great ones below, so that a small one within is seen. */
export function wears(scene: Scene, sight: Sight): Worn[] {
  const box = sight.box();
  return bySize(scene.shapes.filter((each) => meets(box, each.box))).map((one) => {
    const known = scene.about(one);
    return { one, known, fill: known.gap_m === null ? scene.colours.halo : zoneFill(scene.colours, known.gap_m) };
  });
}

export function drawZones(pen: CanvasRenderingContext2D, scene: Scene, sight: Sight, zones: readonly Worn[]): void {
  for (const { one, known, fill } of zones) {
    sight.inMetres(pen);
    pen.globalAlpha = known.gap_m === null ? NOT_KNOWN : known.met ? MET : NOT_MET;
    pen.fillStyle = fill;
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

/** Along the strike where it is known; slanting and broken where not even a width is. Drawn in metres. */
function hatch(pen: CanvasRenderingContext2D, scene: Scene, sight: Sight, one: Shape, known: Known): void {
  const { strike_deg: strike, gap_m: gap } = known;
  if (strike === null && gap !== null) return;
  const wear = strike === null ? brokenWear(scene) : { ink: hatchInk(scene, gap), under: scene.colours.dark ? "rgba(0,0,0,0.3)" : "rgba(255,255,255,0.4)" };
  const pattern = hatching(pen, sight.density, wear, strike === null);
  if (!pattern) return;
  // Counted from a place on the ground, so that the lines move with it.
  const [x, y] = sight.pixel([one.box[0], one.box[3]]);
  const turned = new DOMMatrix().translate(x * sight.density, y * sight.density).rotate(strike ?? 45);
  pattern.setTransform(pen.getTransform().inverse().multiply(turned));
  pen.fillStyle = pattern;
  pen.fill(one.path, "evenodd");
}

interface Wear {
  readonly ink: string;
  readonly under: string | null;
}

const brokenWear = ({ colours }: Scene): Wear => ({ ink: colours.zoneRim, under: null });

const tiles = new Map<string, HTMLCanvasElement>();

/** Upright lines that repeat: turned by who fills with them. A filling costs far less than lines under a clip. */
function hatching(pen: CanvasRenderingContext2D, density: number, { ink, under }: Wear, broken: boolean): CanvasPattern | null {
  const name = [density, ink, under, broken].join();
  let tile = tiles.get(name);
  if (!tile) {
    tile = document.createElement("canvas");
    tiles.set(name, tile);
    [tile.width, tile.height] = [Math.round((broken ? 2 : 1) * APART * density), Math.round(8 * density)];
    const own = tile.getContext("2d");
    const line = (width: number, colour: string): void => {
      if (!own) return;
      own.fillStyle = colour;
      own.fillRect((tile!.width - width * density) / 2, 0, width * density, broken ? tile!.height / 2 : tile!.height);
    };
    if (under) line(2.6, under);
    line(broken ? 1.3 : 1, ink);
  }
  return pen.createPattern(tile, "repeat");
}

function hatchInk(scene: Scene, gap: number | null): string {
  if (scene.colours.dark) return "rgba(230,235,241,0.55)";
  return gap !== null && gap > 10 ? "rgba(255,255,255,0.6)" : "rgba(27,36,48,0.6)";
}

/** The widths of the zones that are met, or of the others: the most dangerous first, and where there is room for them `afar` on a leader. An assumed width has a question mark before it. */
export function labelZones(labels: Labels, scene: Scene, sight: Sight, metres: (metres: number) => string, met: boolean, afar: boolean): void {
  for (const one of byDanger(scene, sight)) {
    const about = scene.about(one);
    const wide = (one.box[2] - one.box[0]) * sight.scale;
    if (about.met !== met || (!met && wide < 14)) continue;
    const { gap_m: gap, gap_text: text, assumed } = about;
    const says = gap === null ? cropped(text ?? "?") : `${assumed ? "? " : ""}${metres(gap)}`;
    if (seenMiddles(one, sight).length > 0) labelWidth(labels, scene, sight, one, says, met, afar || scene.picked === one.key);
  }
}

/** Inside where it is clear of all lines, else beside the zone on a leader, else over the route. */
function labelWidth(labels: Labels, scene: Scene, sight: Sight, one: Shape, says: string, met: boolean, afar: boolean): void {
  const { pen, colours } = labels;
  const font = met ? "650 13px" : "600 11px";
  const { ink, halo } = onFill(colours, met ? scene.about(one).gap_m : null);
  const inks = met ? ink : colours.soft;
  const middles = seenMiddles(one, sight);
  const wide = widthOf(pen, font, says) + 6;
  const inside = middles.filter((at) => scene.picked !== one.key || fits(one, sight, at, wide));
  if (labels.text(says, inside, font, inks, halo)) return;
  const far = wide / 2 + 12;
  const leads = afar ? [far, FARTHER * far] : [];
  const led = leads.reduce<Point | null>((found, away) => found ?? labels.placeLed(middles[0]!, away, wide, 17), null);
  if (!led) {
    const over = (one.box[2] - one.box[0]) * sight.scale > 30;
    if (over) labels.text(says, middles, font, inks, halo, true);
    return;
  }
  // To the rim of the figure: a line through it makes it another.
  leader(pen, colours, middles[0]!, rimOf(middles[0]!, led, wide, 17), colours.zoneRim);
  written(pen, font, says, led, colours.ink, colours.halo);
}

/** Whether a label about a pixel lies in the zone with all its corners. */
function fits(one: Shape, sight: Sight, [x, y]: Point, wide: number): boolean {
  const corners = [[-1, -1], [1, -1], [1, 1], [-1, 1]] as const;
  return corners.every(([east, south]) => {
    const corner = sight.place([x + (east * wide) / 2, y + south * 9]);
    return one.areas.some((area) => within(area, corner));
  });
}

const seenMiddles = (one: Shape, sight: Sight): Point[] => zoneMiddles(one).map((at) => sight.pixel(at)).filter((at) => sight.sees(at));

/** Names under the widths, where there is room. */
export function nameZones(labels: Labels, scene: Scene, sight: Sight): void {
  for (const one of byDanger(scene, sight)) {
    const title = one.zone.properties["name"];
    if ((one.box[2] - one.box[0]) * sight.scale < 110 || typeof title !== "string" || title === "") continue;
    const { gap_m, met } = scene.about(one);
    const { ink, halo } = onFill(scene.colours, met ? gap_m : null);
    const below = seenMiddles(one, sight).flatMap(([x, y]): Point[] => [[x, y + 16], [x, y - 16]]);
    labels.text(cropped(title), below, "italic 11px", met ? ink : scene.colours.soft, halo);
  }
}

/** Zones in sight: the widest gaps first, before all one that is not known, and the greater zone of two alike. */
function byDanger(scene: Scene, sight: Sight): Shape[] {
  const box = sight.box();
  const gap = (one: Shape): number => scene.about(one).gap_m ?? Infinity;
  const shapes = scene.shapes.filter((each) => meets(box, each.box));
  return shapes.sort((a, b) => (gap(a) === gap(b) ? size(b) - size(a) : gap(b) - gap(a)));
}

const cropped = (title: string): string => (title.length > 28 ? `${title.slice(0, 27)}…` : title);

const bySize = (shapes: readonly Shape[]): Shape[] => [...shapes].sort((a, b) => size(b) - size(a));

const size = ({ box }: Shape): number => (box[2] - box[0]) * (box[3] - box[1]);

/** By its outline, which stays where only its figures change. */
const known = new WeakMap<Shape["areas"], readonly Point[]>();

/** Places well inside a zone, the ones farthest from its rim first. */
export function zoneMiddles(one: Shape): readonly Point[] {
  const before = known.get(one.areas);
  if (before) return before;
  const found = one.areas.flatMap((area) => inner(area)).sort((a, b) => b.deep - a.deep);
  const least = (found[0]?.deep ?? 0) * 0.3;
  const spots = found.filter(({ deep }) => deep >= least).slice(0, 24).map(({ at }) => at);
  known.set(one.areas, spots);
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
