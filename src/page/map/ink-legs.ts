/** The route and its legs on the map, each piece in the style of the word that holds on it. */

import type { Leg, Verdict } from "../door";
import type { Point } from "./geometry/rings";
import { round } from "./ink-hands";
import { GRAVITY, SIGNS, type Palette } from "./palette";
import { beside, widthOf, written, type Labels } from "./labels";
import type { Scene } from "./scene";
import { meets } from "./shapes";
import type { Sight } from "./sight";

/** From one arrow to the next and from the line to an arrow, pixels. Our judgement. */
const ARROWS_APART = 72;
const ASIDE = 8;
/** A way back is drawn so far beside the way out, pixels. */
const BACK = 8;
/** Letters of kilometres, and of legs, changes and places. */
const TICK = "600 11px";
const MARK = "700 12px";
/** So strong the legs of before are drawn where there is no plan now. */
const PALE = 0.4;

export function drawRoute(pen: CanvasRenderingContext2D, scene: Scene, sight: Sight): void {
  const { colours, legs, routePath } = scene;
  sight.inMetres(pen);
  pen.lineJoin = "round";
  pen.globalAlpha = 0.85;
  sight.stroke(pen, routePath, colours.halo, 6);
  pen.globalAlpha = 1;
  if (legs.length === 0 || scene.past) sight.stroke(pen, routePath, colours.soft, legs.length === 0 ? 2.4 : 1.4);
  const box = sight.box(10);
  const gone = scene.past ? undefined : legs.find(({ leg }) => leg.leg === scene.leg);
  const aside = BACK * sight.resolution;
  for (const piece of gone?.pieces ?? []) sight.stroke(pen, piece.pathAt(aside), colours.dark ? "rgba(255,255,255,0.35)" : "rgba(27,36,48,0.22)", 18);
  const pieces = legs.flatMap((leg) => leg.pieces).filter((piece) => meets(box, piece.box));
  pieces.sort((a, b) => GRAVITY.indexOf(a.verdict) - GRAVITY.indexOf(b.verdict));
  const strength = scene.past ? PALE : 1;
  for (const piece of pieces) stroke(pen, sight, colours, piece.verdict, piece.pathAt(aside), strength);
  pen.globalAlpha = 1;
}

/** A line in the style of a verdict, on top of an edge that sets it off. Lines are drawn in metres. */
export function stroke(pen: CanvasRenderingContext2D, sight: Sight, colours: Palette, verdict: Verdict, path: Path2D, strength = 1): void {
  const colour = colours.legs[verdict];
  pen.lineCap = "butt";
  pen.globalAlpha = 0.85;
  if (strength === 1) sight.stroke(pen, path, colours.halo, verdict === "stop" ? 11 : 7);
  pen.globalAlpha = strength;
  if (verdict === "unroped") sight.stroke(pen, path, colour, 2.2);
  else if (verdict === "inside") sight.stroke(pen, path, colour, 4);
  else if (verdict === "look") sight.stroke(pen, path, colour, 4.2, [9, 4]);
  else if (verdict === "outside") {
    sight.stroke(pen, path, colour, 6.4);
    sight.stroke(pen, path, colours.halo, 2);
  } else {
    sight.stroke(pen, path, colour, 2.2);
    sight.stroke(pen, path, colour, 10, [2.8, 3.2]);
  }
}

/** To the right of the line, so that who comes back on it has arrows of his own. */
export function drawArrows(labels: Labels, scene: Scene, sight: Sight): void {
  const { pen, colours } = labels;
  for (const way of scene.ways) {
    for (const run of way.runs) {
      const line = run.map((spot) => sight.pixel(spot.at));
      eachAlong(line, ARROWS_APART, (at, angle) => {
        const spot: Point = [at[0] - Math.sin(angle) * ASIDE, at[1] + Math.cos(angle) * ASIDE];
        if (!sight.sees(spot) || !labels.place([spot], 8, 8, true)) return;
        pen.save();
        pen.translate(spot[0], spot[1]);
        pen.rotate(angle);
        const chevron = new Path2D("M-3-3.6L3 0L-3 3.6");
        [pen.lineJoin, pen.lineCap] = ["round", "round"];
        [pen.strokeStyle, pen.lineWidth] = [colours.halo, 4];
        pen.stroke(chevron);
        [pen.strokeStyle, pen.lineWidth] = [colours.ink, 1.5];
        pen.stroke(chevron);
        pen.restore();
      });
    }
  }
}

function eachAlong(line: readonly Point[], apart: number, visit: (at: Point, angle: number) => void): void {
  let left = apart / 2;
  for (let index = 1; index < line.length; index++) {
    const [a, b] = [line[index - 1]!, line[index]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
    let at = left;
    for (; at <= length; at += apart) visit([a[0] + ((b[0] - a[0]) * at) / length, a[1] + ((b[1] - a[1]) * at) / length], angle);
    left = at - length;
  }
}

interface Mark {
  readonly km: number;
  readonly at: Point;
  readonly across: Point;
}

/** Round kilometres, so many that their numbers have room. */
function marks(scene: Scene, sight: Sight): Mark[] {
  const apart = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50].find((km) => km * 1000 * sight.scale >= 64) ?? 100;
  return scene.ways.flatMap((way) => {
    const steps = Array.from({ length: Math.floor(way.stage.length_m / apart / 1000) }, (_, index) => (index + 1) * apart);
    return steps.flatMap((km): Mark[] => {
      const on = way.at(km * 1000);
      const at = on && sight.pixel(on.at);
      return at && sight.sees(at) ? [{ km: Number(km.toFixed(1)), at, across: [Math.sin(on.angle), Math.cos(on.angle)] }] : [];
    });
  });
}

/** A stroke across the route at each, under all labels. */
export function drawTicks(pen: CanvasRenderingContext2D, scene: Scene, sight: Sight): void {
  for (const { at, across } of marks(scene, sight)) {
    pen.beginPath();
    pen.moveTo(at[0] - 5 * across[0], at[1] - 5 * across[1]);
    pen.lineTo(at[0] + 5 * across[0], at[1] + 5 * across[1]);
    [pen.strokeStyle, pen.lineWidth] = [scene.colours.ink, 1.4];
    pen.stroke();
  }
}

export function labelTicks(labels: Labels, scene: Scene, sight: Sight, written: (km: number) => string): void {
  for (const { km, at } of marks(scene, sight)) {
    const says = written(km);
    labels.text(says, beside(at, widthOf(labels.pen, TICK, says) + 6, 15, 6), TICK, labels.colours.ink);
  }
}

/** Numbers of the legs that are on a rope, or of the others, beside their middles with the sign of their verdict: the gravest first, and of two alike the shorter, which has fewer places. */
export function labelLegs(labels: Labels, scene: Scene, sight: Sight, roped: boolean): void {
  const { pen, colours } = labels;
  // What is of before has no numbers and no words.
  if (scene.past) return;
  const long = ({ start_m, end_m }: Leg): number => end_m - start_m;
  const order = scene.legs.map(({ leg }) => leg).filter((leg) => leg.roped === roped);
  order.sort((a, b) => GRAVITY.indexOf(b.verdict) - GRAVITY.indexOf(a.verdict) || long(a) - long(b));
  for (const leg of order) {
    const way = scene.way(leg.stage);
    const shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];
    const spots = shares.map((share) => way?.at(leg.start_m + share * long(leg))?.at);
    const middles = spots.filter((at) => at !== undefined).map((at) => sight.pixel(at)).filter((at) => sight.sees(at));
    if (!roped && long(leg) * sight.scale < 40) continue;
    const says = [String(leg.leg), SIGNS[leg.verdict]].filter(Boolean).join(" ");
    const wide = widthOf(pen, MARK, says) + 12;
    const at = labels.place(middles.flatMap((middle) => beside(middle, wide, 18, 7)), wide, 18, roped);
    if (!at) continue;
    pill(pen, colours, at, wide, says, leg.verdict);
    labels.tells(at, wide, 18, leg);
  }
}

function pill(pen: CanvasRenderingContext2D, colours: Palette, [x, y]: Point, wide: number, says: string, verdict: Verdict): void {
  pen.beginPath();
  pen.roundRect(x - wide / 2, y - 9, wide, 18, 9);
  pen.fillStyle = verdict === "unroped" ? colours.soft : colours.legs[verdict];
  pen.fill();
  [pen.strokeStyle, pen.lineWidth] = [colours.halo, 1.5];
  pen.stroke();
  written(pen, MARK, says, [x, y], colours.dark ? "#0f141a" : "#ffffff", null);
}

/** Letters where the set-up changes, on a leader to their place. */
export function drawChanges(labels: Labels, scene: Scene, sight: Sight): void {
  const { pen, colours } = labels;
  for (const change of scene.plan?.changes ?? []) {
    const { letter, at } = change;
    const spot = sight.pixel(scene.frame.at(at));
    if (!sight.sees(spot)) continue;
    const wide = Math.max(19, widthOf(pen, MARK, letter) + 10);
    const free = labels.placeLed(spot, 20, wide, 19);
    if (free) leader(pen, colours, spot, free);
    round(pen, spot, 3.6, colours.halo, colours.change, 1.8);
    if (!free) continue;
    pen.beginPath();
    pen.roundRect(free[0] - wide / 2, free[1] - 9.5, wide, 19, 9.5);
    pen.fillStyle = colours.halo;
    pen.fill();
    [pen.strokeStyle, pen.lineWidth] = [colours.change, 1.8];
    pen.stroke();
    written(pen, MARK, letter, free, colours.change, null);
    labels.tells(free, wide, 19, change);
  }
}

/** From a label to its spot. */
export function leader(pen: CanvasRenderingContext2D, colours: Palette, from: Point, to: Point, ink = colours.change): void {
  pen.beginPath();
  pen.moveTo(from[0], from[1]);
  pen.lineTo(to[0], to[1]);
  [pen.strokeStyle, pen.lineWidth] = [colours.halo, 3];
  pen.stroke();
  [pen.strokeStyle, pen.lineWidth] = [ink, 1.2];
  pen.stroke();
}

/** Places to look at: a pointed board with the sign of their word. */
export function drawLooks(labels: Labels, scene: Scene, sight: Sight): void {
  const { pen, colours } = labels;
  for (const look of scene.plan?.looks ?? []) {
    const { at, verdict } = look;
    const spot = sight.pixel(scene.frame.at(at));
    if (!sight.sees(spot)) continue;
    const free = labels.placeLed(spot, 19, 21, 21);
    if (!free) continue;
    leader(pen, colours, spot, free);
    pen.beginPath();
    pen.moveTo(free[0], free[1] - 11);
    pen.lineTo(free[0] + 11, free[1]);
    pen.lineTo(free[0], free[1] + 11);
    pen.lineTo(free[0] - 11, free[1]);
    pen.closePath();
    pen.fillStyle = colours.halo;
    pen.fill();
    [pen.strokeStyle, pen.lineWidth] = [colours.legs[verdict], 2];
    pen.stroke();
    written(pen, MARK, SIGNS[verdict] || "!", free, colours.legs[verdict], null);
    labels.tells(free, 22, 22, look);
  }
}
