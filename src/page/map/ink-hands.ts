/** What the hand works on: the picked zone and its spots, the sketch, the place pointed at, the crosshair. */

import { middle, type Point } from "./geometry/rings";
import type { Labels } from "./labels";
import type { Palette } from "./palette";
import type { Scene } from "./scene";
import { pathOf } from "./shapes";
import type { Sight } from "./sight";

/** Half the size of a drawn spot: for a finger, for a mouse. */
const SPOT = { coarse: 12, fine: 6 };
/** New spots can be pulled out of the middle of an edge that is longer than this, pixels. */
const LEAST_EDGE = 48;

export function drawHandles(pen: CanvasRenderingContext2D, scene: Scene, sight: Sight, coarse: boolean): void {
  const one = scene.find(scene.picked);
  if (!one) return;
  const { colours } = scene;
  sight.inMetres(pen);
  pen.lineJoin = "round";
  sight.stroke(pen, one.path, colours.halo, 5);
  sight.stroke(pen, one.path, colours.picked, 2.4);
  sight.inPixels(pen);
  if (!scene.handles) return;
  one.areas.forEach((area, a) =>
    area.forEach((ring, r) => {
      const pixels = ring.map((at) => sight.pixel(at));
      pixels.forEach((here, s) => {
        const [before, next] = [pixels[(s + ring.length - 1) % ring.length]!, pixels[(s + 1) % ring.length]!];
        const [back, on] = [apart(before, here), apart(here, next)];
        if (on > LEAST_EDGE * (coarse ? 1.3 : 1)) plus(pen, scene, middle(here, next), coarse);
        const chosen = scene.vertex?.area === a && scene.vertex.ring === r && scene.vertex.spot === s;
        spot(pen, scene, sight, here, chosen, sized(Math.min(back, on), coarse));
      });
    }),
  );
}

/** Labels keep off the outline and the spots of the picked zone. */
export function avoidPicked(labels: Labels, scene: Scene, sight: Sight, coarse: boolean): void {
  const rings = scene.find(scene.picked)?.areas.flat() ?? [];
  for (const ring of rings) labels.avoid([...ring, ...ring.slice(0, 1)].map((at) => sight.pixel(at)), coarse ? 9 : 7);
}

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Spots that stand close are drawn small, so that they do not hide one another: who comes nearer has them large. */
function sized(room: number, coarse: boolean): number {
  const half = coarse ? SPOT.coarse : SPOT.fine;
  return Math.max(2.5, Math.min(half, room * 0.42));
}

function spot(pen: CanvasRenderingContext2D, { colours }: Scene, sight: Sight, at: Point, chosen: boolean, half: number): void {
  if (!sight.sees(at, 16)) return;
  if (chosen) round(pen, at, Math.max(half, SPOT.fine) + 2, colours.picked, colours.halo, 3);
  else round(pen, at, half, colours.halo, colours.picked, half > 4 ? 2 : 1.3);
}

/** A disc with a rim. */
export function round(pen: CanvasRenderingContext2D, [x, y]: Point, half: number, fill: string, rim: string, width: number): void {
  pen.beginPath();
  pen.arc(x, y, half, 0, 2 * Math.PI);
  pen.fillStyle = fill;
  pen.fill();
  [pen.strokeStyle, pen.lineWidth] = [rim, width];
  pen.stroke();
}

function plus(pen: CanvasRenderingContext2D, scene: Scene, [x, y]: Point, coarse: boolean): void {
  const half = coarse ? 8 : 5.5;
  pen.globalAlpha = 0.85;
  round(pen, [x, y], half, scene.colours.halo, scene.colours.picked, 1);
  pen.beginPath();
  for (const [dx, dy] of [[1, 0], [0, 1]] as const) {
    pen.moveTo(x - dx * half * 0.6, y - dy * half * 0.6);
    pen.lineTo(x + dx * half * 0.6, y + dy * half * 0.6);
  }
  pen.lineWidth = 1.5;
  pen.stroke();
  pen.globalAlpha = 1;
}

export function drawSketch(pen: CanvasRenderingContext2D, scene: Scene, sight: Sight, coarse: boolean): void {
  const { sketch, colours } = scene;
  if (scene.snapped) round(pen, sight.pixel(scene.snapped), 8, "rgba(0,0,0,0)", colours.legs.look, 2.4);
  if (!sketch) return;
  const way = [...sketch.points, ...sketch.next];
  sight.inMetres(pen);
  const areas = sketch.closes && way.length > 2 ? [[way]] : sketch.areas;
  if (areas.length > 0) {
    const path = pathOf(areas);
    pen.globalAlpha = 0.35;
    pen.fillStyle = colours.zoneRim;
    pen.fill(path, "evenodd");
    pen.globalAlpha = 1;
    if (sketch.areas.length > 0) sight.stroke(pen, path, colours.zoneRim, 2, [6, 4]);
  }
  sight.inPixels(pen);
  line(pen, sight, sketch.points, colours.halo, 5, []);
  line(pen, sight, sketch.points, colours.picked, 2.4, []);
  const last = sketch.points.at(-1);
  if (last) line(pen, sight, [last, ...sketch.next], colours.picked, 1.8, [5, 4]);
  const half = coarse ? 9 : 5;
  sketch.points.forEach((at, index) => {
    const end = index === 0 || index === sketch.points.length - 1;
    round(pen, sight.pixel(at), end ? half : half * 0.7, colours.halo, colours.picked, end ? 2.4 : 1.6);
  });
}

function line(pen: CanvasRenderingContext2D, sight: Sight, points: readonly Point[], colour: string, width: number, dashes: number[]): void {
  pen.beginPath();
  points.map((at) => sight.pixel(at)).forEach(([x, y], index) => (index === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y)));
  [pen.strokeStyle, pen.lineWidth, pen.lineJoin] = [colour, width, "round"];
  pen.setLineDash(dashes);
  pen.stroke();
  pen.setLineDash([]);
}

/** The place on the route that is pointed at, and the crosshair of the keys. */
/** A pin whose tip is on the place where somebody is. */
export function drawHere(pen: CanvasRenderingContext2D, colours: Palette, [x, y]: Point): void {
  pen.beginPath();
  pen.moveTo(x, y);
  pen.lineTo(x - 7.5, y - 15);
  pen.arc(x, y - 18, 8, 0.84 * Math.PI, 0.16 * Math.PI);
  pen.closePath();
  pen.lineJoin = "round";
  [pen.strokeStyle, pen.lineWidth] = [colours.halo, 4];
  pen.stroke();
  pen.fillStyle = colours.picked;
  pen.fill();
  round(pen, [x, y - 18], 3, colours.halo, colours.halo, 0.5);
}

export function drawPointers(pen: CanvasRenderingContext2D, scene: Scene, sight: Sight): void {
  const { colours, cursor, crosshair } = scene;
  const place = scene.here && scene.way(scene.here.stage)?.at(scene.here.at_m);
  if (place) drawHere(pen, colours, sight.pixel(place.at));
  const on = cursor && scene.way(cursor.stage)?.at(cursor.at_m);
  if (on) {
    round(pen, sight.pixel(on.at), 8, colours.halo, colours.ink, 2);
    round(pen, sight.pixel(on.at), 3.4, colours.ink, colours.ink, 1);
  }
  if (!crosshair) return;
  const [x, y] = sight.pixel(crosshair);
  for (const [colour, width] of [[colours.halo, 5], [colours.picked, 2]] as const) {
    pen.beginPath();
    for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]] as const) {
      pen.moveTo(x + 5 * dx, y + 5 * dy);
      pen.lineTo(x + 18 * dx, y + 18 * dy);
    }
    [pen.strokeStyle, pen.lineWidth] = [colour, width];
    pen.stroke();
  }
}
