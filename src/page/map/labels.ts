/** Room for labels: who comes first stands, who would lie on another goes beside it or is left out. */

import type { Html } from "../door";
import type { Point } from "./geometry/rings";
import { clash, Grid, type Room } from "./grid";
import type { Palette } from "./palette";

export const FONT = 'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", sans-serif';

/** From one box on the way of a leader to the next, pixels. */
const LED = 3;

/** What a label has to tell: a heading and a text, made by the program. */
export interface Told {
  readonly title: Html;
  readonly told: Html;
}

/** Lines that labels keep off. */
export class Lines {
  private readonly grid: Grid;

  constructor(private readonly wide: number, private readonly high: number) {
    this.grid = new Grid(wide, high);
  }

  /** One more, so many pixels to each side. */
  add(line: readonly Point[], half = 4): void {
    for (let index = 1; index < line.length; index++) {
      const [a, b] = [line[index - 1]!, line[index]!];
      const steps = Math.min(400, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 7));
      for (let step = 0; step < steps; step++) {
        const [x, y] = [a[0] + ((b[0] - a[0]) * step) / steps, a[1] + ((b[1] - a[1]) * step) / steps];
        if (x > 0 && y > 0 && x < this.wide && y < this.high) this.grid.add([x - half, y - half, x + half, y + half]);
      }
    }
  }

  on(room: Room): boolean {
    return this.grid.hits(room);
  }
}

export class Labels {
  private readonly taken: Grid;
  /** What is picked, beside the lines that stay. */
  private readonly picked: Lines;
  private readonly telling: { readonly room: Room; readonly tells: Told }[] = [];

  constructor(
    readonly pen: CanvasRenderingContext2D,
    readonly colours: Palette,
    private readonly wide: number,
    private readonly high: number,
    private readonly lines: Lines | null = null,
    /** Free of boxes round the picture, pixels: what is drawn round a box is seen whole there. */
    private readonly rim = 0,
  ) {
    this.taken = new Grid(wide, high);
    this.picked = new Lines(wide, high);
  }

  /** The first of some middles at which a box has room, which is then taken; over lines only where nothing else is left. */
  place(middles: readonly Point[], wide: number, high: number, overLines = false): Point | null {
    const box = ([x, y]: Point): Room => [x - wide / 2, y - high / 2, x + wide / 2, y + high / 2];
    let found: Point | null = null;
    let over: Point | null = null;
    for (const at of middles) {
      const room = box(at);
      const on = room[0] >= this.rim && room[1] >= this.rim && room[2] <= this.wide - this.rim && room[3] <= this.high - this.rim;
      if (!on || this.taken.hits(room)) continue;
      if (overLines) over ??= at;
      if (this.lines?.on(room) || this.picked.on(room)) continue;
      found = at;
      break;
    }
    found ??= over;
    if (found) this.taken.add(box(found));
    return found;
  }

  /** Like `place`, and nothing stands between the label and its spot, nor will. */
  placeLed(spot: Point, far: number, wide: number, high: number): Point | null {
    const open = around(spot, far).filter((at) => !leads(spot, at, wide, high).some((step) => this.taken.hits(step)));
    const found = this.place(open, wide, high);
    if (found) for (const step of leads(spot, found, wide, high)) this.taken.add(step);
    return found;
  }

  /** No label is to stand here. */
  keep([x, y]: Point, wide: number, high: number): void {
    this.taken.add([x - wide / 2, y - high / 2, x + wide / 2, y + high / 2]);
  }

  /** Who taps a label is told. */
  tells([x, y]: Point, wide: number, high: number, tells: Told): void {
    this.telling.push({ room: [x - wide / 2, y - high / 2, x + wide / 2, y + high / 2], tells });
  }

  /** What the label at a pixel tells, so many pixels beside it too. */
  toldAt([x, y]: Point, more: number): Told | null {
    const spot: Room = [x - more, y - more, x + more, y + more];
    const near = this.telling.filter(({ room }) => clash(room, spot));
    const away = ({ room }: { room: Room }): number => Math.hypot((room[0] + room[2]) / 2 - x, (room[1] + room[3]) / 2 - y);
    return near.sort((a, b) => away(a) - away(b))[0]?.tells ?? null;
  }

  /** A line that labels keep off, so many pixels to each side. */
  avoid(line: readonly Point[], half: number): void {
    this.picked.add(line, half);
  }

  /** A text at the first middle with room. */
  text(says: string, middles: readonly Point[], font: string, ink: string, halo: string | null = this.colours.halo, overLines = false): boolean {
    const size = Number(/(\d+)px/.exec(font)?.[1] ?? 11);
    const at = this.place(middles, widthOf(this.pen, font, says) + 6, size + 4, overLines);
    if (at) written(this.pen, font, says, at, ink, halo);
    return at !== null;
  }
}

/** Where the way from a spot to the middle of a label meets the rim of the label. */
export function rimOf(spot: Point, [x, y]: Point, wide: number, high: number): Point {
  const [east, south] = [x - spot[0], y - spot[1]];
  const inside = Math.min(1, wide / 2 / Math.max(Math.abs(east), 1e-6), high / 2 / Math.max(Math.abs(south), 1e-6));
  return [x - inside * east, y - inside * south];
}

/** The way from a spot to the rim of its label, in small boxes; close to the spot it is the spot's. */
function leads(spot: Point, at: Point, wide: number, high: number): Room[] {
  const rim = rimOf(spot, at, wide, high);
  const far = Math.hypot(rim[0] - spot[0], rim[1] - spot[1]);
  const steps: Room[] = [];
  for (let gone = Math.max(LED, 0.2 * far); gone < far - LED / 2; gone += LED) {
    const [x, y] = [spot[0] + (gone / far) * (rim[0] - spot[0]), spot[1] + (gone / far) * (rim[1] - spot[1])];
    steps.push([x - 1.5, y - 1.5, x + 1.5, y + 1.5]);
  }
  return steps;
}

const widths = new Map<string, number>();

/** How wide a text is; weight and size of the font stand before its family. Measured once, since to set a font is slow. */
export function widthOf(pen: CanvasRenderingContext2D, font: string, says: string): number {
  const name = `${font}|${says}`;
  const known = widths.get(name);
  if (known !== undefined) return known;
  if (widths.size > 5000) widths.clear();
  pen.font = `${font} ${FONT}`;
  const wide = pen.measureText(says).width;
  widths.set(name, wide);
  return wide;
}

/** A text about its middle. */
export function written(pen: CanvasRenderingContext2D, font: string, says: string, [x, y]: Point, ink: string, halo: string | null): void {
  pen.font = `${font} ${FONT}`;
  pen.textAlign = "center";
  pen.textBaseline = "middle";
  if (halo) {
    pen.lineJoin = "round";
    pen.lineWidth = 3.5;
    pen.strokeStyle = halo;
    pen.strokeText(says, x, y + 0.5);
  }
  pen.fillStyle = ink;
  pen.fillText(says, x, y + 0.5);
}

/** Places of a box close beside a spot, so that it leaves the spot free. */
export function beside([x, y]: Point, wide: number, high: number, gap: number): Point[] {
  const turns: readonly Point[] = [[0, -1], [1, -1], [-1, -1], [1, 0], [-1, 0], [0, 1], [1, 1], [-1, 1]];
  return turns.map(([east, south]): Point => [x + east * (wide / 2 + gap), y + south * (high / 2 + gap)]);
}

/** Places about one, nearest first: beside, above and below, then farther out. */
export function around([x, y]: Point, far: number): Point[] {
  const turns = [-0.5, 0, 1, 0.5, -0.25, -0.75, 0.25, 0.75];
  return [1, 1.6, 2.3].flatMap((times) =>
    turns.map((turn): Point => [x + Math.cos(turn * Math.PI) * far * times, y + Math.sin(turn * Math.PI) * far * times]),
  );
}
