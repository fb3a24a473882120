/** The drawing of a height profile: the hill, the legs along its edge, zones under it, kilometres below. */

import type { Words } from "../words";
import { writer } from "./figures";
import type { Point } from "./geometry/rings";
import { stroke } from "./ink-legs";
import { FONT, Labels, widthOf } from "./labels";
import { onFill, zoneFill } from "./palette";
import type { Scene } from "./scene";
import { Sight } from "./sight";

export type Sample = readonly [at_m: number, height_m: number | null];

const LEFT = 42;
const RIGHT = 12;
const TOP = 24;
/** Zones and kilometres under the hill, pixels. */
const BAND = 14;
const UNDER = 38;

const MOST_EDGES = 500;

/** Metres walked and heights to pixels. */
export class Ruler {
  readonly low: number;
  readonly top: number;
  private readonly edges = new Map<string, Path2D>();
  private hill: Path2D | null = null;

  constructor(readonly samples: readonly Sample[], readonly length_m: number, readonly wide: number, readonly high: number) {
    let [low, top] = [Infinity, -Infinity];
    for (const [, height] of samples) if (height !== null) [low, top] = [Math.min(low, height), Math.max(top, height)];
    const room = Math.max(20, top - low);
    [this.low, this.top] = low <= top ? [low - 0.06 * room, Math.max(top, low + room)] : [0, 1];
  }

  get known(): boolean {
    return this.samples.some(([, height]) => height !== null);
  }

  get floor(): number {
    return this.high - UNDER;
  }

  x(at_m: number): number {
    return LEFT + (at_m / Math.max(1, this.length_m)) * (this.wide - LEFT - RIGHT);
  }

  y(height_m: number): number {
    return this.floor - ((height_m - this.low) / (this.top - this.low)) * (this.floor - TOP);
  }

  metres(x: number): number {
    const share = (x - LEFT) / Math.max(1, this.wide - LEFT - RIGHT);
    return Math.min(1, Math.max(0, share)) * this.length_m;
  }

  height(at_m: number): number | null {
    const next = this.samples.findIndex(([at], index) => index > 0 && at >= at_m);
    const [a, b] = [this.samples[next - 1], this.samples[next]];
    if (!a || !b || a[1] === null || b[1] === null) return b?.[1] ?? null;
    const share = b[0] > a[0] ? (at_m - a[0]) / (b[0] - a[0]) : 0;
    return a[1] + share * (b[1] - a[1]);
  }

  /** The edge of the hill from one place to another, kept: most legs end where they did. */
  edge(from_m: number, to_m: number): Path2D {
    const name = `${from_m} ${to_m}`;
    const known = this.edges.get(name);
    if (known) return known;
    if (this.edges.size > MOST_EDGES) this.edges.clear();
    const path = this.edgeOf(from_m, to_m);
    this.edges.set(name, path);
    return path;
  }

  /** The hill down to the floor, in as many pieces as jumps leave. */
  get ground(): Path2D {
    return (this.hill ??= this.groundOf());
  }

  private groundOf(): Path2D {
    const whole = new Path2D();
    let start: number | null = null;
    let last = 0;
    const close = (): void => {
      if (start === null) return;
      const path = this.edgeOf(start, last);
      path.lineTo(this.x(last), this.floor);
      path.lineTo(this.x(start), this.floor);
      path.closePath();
      whole.addPath(path);
      start = null;
    };
    for (const [at, height] of this.samples) {
      if (height === null) close();
      else [start, last] = [start ?? at, at];
    }
    close();
    return whole;
  }

  private edgeOf(from_m: number, to_m: number): Path2D {
    const path = new Path2D();
    let pen = false;
    const to = (at_m: number, height: number | null): void => {
      if (height === null) pen = false;
      else if (pen) path.lineTo(this.x(at_m), this.y(height));
      else [pen] = [true, path.moveTo(this.x(at_m), this.y(height))];
    };
    to(from_m, this.flat(from_m));
    for (const [at, height] of this.samples) if (at > from_m && at < to_m) to(at, this.known ? height : this.flat(at));
    to(to_m, this.flat(to_m));
    return path;
  }

  /** Without heights the route is a level line. */
  private flat(at_m: number): number | null {
    return this.known ? this.height(at_m) : this.low + 0.3;
  }
}

export interface Shown {
  readonly scene: Scene;
  readonly stage: number;
  readonly at_m: number | null;
  readonly painted: { readonly stage: number; readonly from_m: number; readonly to_m: number } | null;
  readonly language: string;
  readonly words: Words;
  readonly density: number;
}

export function drawProfile(pen: CanvasRenderingContext2D, ruler: Ruler, shown: Shown): void {
  const { colours } = shown.scene;
  const labels = new Labels(pen, colours, ruler.wide, ruler.high);
  heights(pen, ruler, shown);
  hill(pen, ruler, shown);
  painted(pen, ruler, shown);
  zones(pen, ruler, shown);
  legs(pen, ruler, shown);
  widths(labels, ruler, shown);
  letters(labels, ruler, shown);
  cursor(labels, ruler, shown);
  kilometres(labels, ruler, shown);
}

function steps(from: number, to: number, most: number): number[] {
  const room = (to - from) / most;
  const power = 10 ** Math.floor(Math.log10(room));
  const step = [1, 2, 5, 10].map((times) => times * power).find((each) => each >= room) ?? room;
  const found: number[] = [];
  for (let at = Math.ceil(from / step) * step; at <= to + 1e-9; at += step) found.push(Number(at.toFixed(6)));
  return found;
}

function heights(pen: CanvasRenderingContext2D, ruler: Ruler, { scene: { colours } }: Shown): void {
  if (!ruler.known) return;
  pen.font = `11px ${FONT}`;
  [pen.textAlign, pen.textBaseline, pen.fillStyle] = ["right", "middle", colours.soft];
  for (const height of steps(ruler.low, ruler.top, Math.max(2, (ruler.floor - TOP) / 26))) {
    const y = Math.round(ruler.y(height)) + 0.5;
    [pen.strokeStyle, pen.lineWidth] = [colours.dark ? "rgba(255,255,255,0.12)" : "rgba(27,36,48,0.12)", 1];
    pen.beginPath();
    pen.moveTo(LEFT, y);
    pen.lineTo(ruler.wide - RIGHT, y);
    pen.stroke();
    pen.fillText(String(height), LEFT - 6, y);
  }
}

function hill(pen: CanvasRenderingContext2D, ruler: Ruler, { scene: { colours } }: Shown): void {
  if (!ruler.known) return;
  pen.fillStyle = colours.dark ? "rgba(150,170,195,0.2)" : "rgba(110,125,145,0.2)";
  pen.fill(ruler.ground);
}

function painted(pen: CanvasRenderingContext2D, ruler: Ruler, { scene: { colours }, stage, painted: stretch }: Shown): void {
  if (!stretch || stretch.stage !== stage) return;
  pen.globalAlpha = 0.3;
  pen.fillStyle = colours.zoneRim;
  pen.fillRect(ruler.x(stretch.from_m), TOP - 8, ruler.x(stretch.to_m) - ruler.x(stretch.from_m), ruler.floor - TOP + 8 + BAND);
  pen.globalAlpha = 1;
}

function zones(pen: CanvasRenderingContext2D, ruler: Ruler, { scene, stage }: Shown): void {
  const { colours } = scene;
  for (const zone of scene.plan?.zones ?? []) {
    for (const { enter_m, exit_m } of zone.crossings.filter((each) => each.stage === stage)) {
      const [left, right] = [ruler.x(enter_m), ruler.x(exit_m)];
      const wide = Math.max(1.5, right - left);
      pen.fillStyle = zone.gap_m === null ? colours.halo : zoneFill(colours, zone.gap_m);
      pen.fillRect(left, ruler.floor + 1, wide, BAND);
      [pen.strokeStyle, pen.lineWidth] = [colours.zoneRim, 1];
      pen.setLineDash(zone.gap_m === null || zone.gap_assumed ? [3, 2] : []);
      pen.strokeRect(left + 0.5, ruler.floor + 1.5, wide - 1, BAND - 1);
      pen.setLineDash([]);
    }
  }
}

/** The widest gaps first; a bar too narrow for its figure has it above. */
function widths(labels: Labels, ruler: Ruler, { scene, stage, language, words }: Shown): void {
  const { pen, colours } = labels;
  const number = writer(language, 0, 1);
  const gap = ({ gap_m }: { gap_m: number | null }): number => gap_m ?? Infinity;
  for (const zone of [...(scene.plan?.zones ?? [])].sort((a, b) => (gap(a) === gap(b) ? 0 : gap(b) - gap(a)))) {
    for (const { enter_m, exit_m } of zone.crossings.filter((each) => each.stage === stage)) {
      const [left, right] = [ruler.x(enter_m), ruler.x(exit_m)];
      const says = zone.gap_m === null ? "?" : `${zone.gap_assumed ? "? " : ""}${number.format(zone.gap_m)} ${words("draw-unit-m")}`;
      const middle = (left + right) / 2;
      if (widthOf(pen, "600 10.5px", says) + 2 < right - left) {
        labels.text(says, [[middle, ruler.floor + 1 + BAND / 2]], "600 10.5px", onFill(colours, zone.gap_m).ink, null);
        continue;
      }
      const above = [7, 19, 31].flatMap((up) => [0, 6, -6, 12, -12].map((by): Point => [middle + by, ruler.floor - up]));
      labels.text(says, above, "600 10.5px", colours.ink);
    }
  }
}

function legs(pen: CanvasRenderingContext2D, ruler: Ruler, { scene, stage, density }: Shown): void {
  const { colours } = scene;
  const plain = new Sight([0, 0], 1, ruler.wide, ruler.high, density);
  pen.lineJoin = "round";
  const own = (scene.plan?.legs ?? []).filter((leg) => leg.stage === stage);
  if (own.length === 0) plain.stroke(pen, ruler.edge(0, ruler.length_m), colours.soft, 2);
  for (const leg of own) {
    const pieces = leg.pieces.length > 0 ? leg.pieces : [{ verdict: leg.verdict, from_m: leg.start_m, to_m: leg.end_m }];
    for (const { verdict, from_m, to_m } of pieces) stroke(pen, plain, colours, verdict, ruler.edge(from_m, to_m));
  }
}

function letters(labels: Labels, ruler: Ruler, { scene, stage }: Shown): void {
  const { pen, colours } = labels;
  for (const { letter, at_m, stage: its } of scene.plan?.changes ?? []) {
    if (its !== stage) continue;
    const x = ruler.x(at_m);
    const height = ruler.height(at_m);
    [pen.strokeStyle, pen.lineWidth] = [colours.change, 1];
    pen.globalAlpha = 0.5;
    pen.beginPath();
    pen.moveTo(x, 17);
    pen.lineTo(x, height === null ? ruler.floor : ruler.y(height));
    pen.stroke();
    pen.globalAlpha = 1;
    labels.text(letter, [0, 5, -5, 10, -10].map((by) => [x + by, 10]), "700 11px", colours.change);
  }
}

function cursor(labels: Labels, ruler: Ruler, { scene: { colours }, at_m, language, words }: Shown): void {
  if (at_m === null) return;
  const { pen } = labels;
  const [x, height] = [ruler.x(at_m), ruler.height(at_m)];
  [pen.strokeStyle, pen.lineWidth] = [colours.ink, 1.4];
  pen.beginPath();
  pen.moveTo(x, TOP - 6);
  pen.lineTo(x, ruler.floor + BAND + 2);
  pen.stroke();
  if (height !== null) {
    pen.beginPath();
    pen.arc(x, ruler.y(height), 5, 0, 2 * Math.PI);
    pen.fillStyle = colours.ink;
    pen.fill();
  }
  const km = writer(language, 2, 2).format(at_m / 1000);
  const says = `${km} ${words("draw-unit-km")}${height === null ? "" : ` · ${Math.round(height)} ${words("draw-unit-m")}`}`;
  pen.font = `700 12px ${FONT}`;
  const half = pen.measureText(says).width / 2 + 8;
  const middle = Math.min(ruler.wide - half, Math.max(half, x));
  pen.fillStyle = colours.ink;
  pen.beginPath();
  pen.roundRect(middle - half, 1, 2 * half, 19, 9);
  pen.fill();
  [pen.textAlign, pen.textBaseline, pen.fillStyle] = ["center", "middle", colours.halo];
  pen.fillText(says, middle, 11);
}

function kilometres(labels: Labels, ruler: Ruler, { scene: { colours }, language, words }: Shown): void {
  const { pen } = labels;
  const number = writer(language, 0, 2);
  const y = ruler.floor + BAND + 3;
  [pen.strokeStyle, pen.lineWidth] = [colours.soft, 1];
  const km = ruler.length_m / 1000;
  for (const at of km > 0 ? steps(0, km, Math.max(2, (ruler.wide - LEFT) / 70)) : []) {
    const x = ruler.x(at * 1000);
    pen.beginPath();
    pen.moveTo(x, y);
    pen.lineTo(x, y + 4);
    pen.stroke();
    labels.text(at === 0 ? `0 ${words("draw-unit-km")}` : number.format(at), [[x, y + 12], [Math.min(x, ruler.wide - 14), y + 12]], "11px", colours.soft, null);
  }
}
