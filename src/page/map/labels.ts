/** Room for labels: who comes first stands, who would lie on another goes beside it or is left out. */

import type { Html } from "../door";
import type { Point } from "./geometry/rings";
import type { Palette } from "./palette";

export const FONT = 'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", sans-serif';

/** What a label has to tell: a heading and a text, made by the program. */
export interface Told {
  readonly title: Html;
  readonly told: Html;
}

type Room = readonly [west: number, north: number, east: number, south: number];

const clash = (a: Room, b: Room): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

export class Labels {
  private readonly taken: Room[] = [];
  private readonly lines: Room[] = [];
  private readonly telling: { readonly room: Room; readonly tells: Told }[] = [];

  constructor(readonly pen: CanvasRenderingContext2D, readonly colours: Palette, private readonly wide: number, private readonly high: number) {}

  /** The first of some middles at which a box has room, which is then taken; over lines only where nothing else is left. */
  place(middles: readonly Point[], wide: number, high: number, overLines = false): Point | null {
    const box = ([x, y]: Point): Room => [x - wide / 2, y - high / 2, x + wide / 2, y + high / 2];
    const free = middles.filter((at) => {
      const room = box(at);
      const on = room[0] >= 0 && room[1] >= 0 && room[2] <= this.wide && room[3] <= this.high;
      return on && !this.taken.some((other) => clash(room, other));
    });
    const clear = free.find((at) => !this.lines.some((other) => clash(box(at), other)));
    const found = clear ?? (overLines ? free[0] : undefined);
    if (found) this.taken.push(box(found));
    return found ?? null;
  }

  /** Like `place`, and nothing stands between the label and its spot. */
  placeLed(spot: Point, far: number, wide: number, high: number): Point | null {
    const open = around(spot, far).filter((at) => {
      const way = [0.35, 0.55, 0.75].map((share): Room => {
        const [x, y] = [spot[0] + share * (at[0] - spot[0]), spot[1] + share * (at[1] - spot[1])];
        return [x - 1, y - 1, x + 1, y + 1];
      });
      return !this.taken.some((other) => way.some((step) => clash(step, other)));
    });
    return this.place(open, wide, high);
  }

  /** No label is to stand here. */
  keep([x, y]: Point, wide: number, high: number): void {
    this.taken.push([x - wide / 2, y - high / 2, x + wide / 2, y + high / 2]);
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
  avoid(line: readonly Point[], half = 4): void {
    for (let index = 1; index < line.length; index++) {
      const [a, b] = [line[index - 1]!, line[index]!];
      const steps = Math.min(400, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 7));
      for (let step = 0; step < steps; step++) {
        const [x, y] = [a[0] + ((b[0] - a[0]) * step) / steps, a[1] + ((b[1] - a[1]) * step) / steps];
        if (x > 0 && y > 0 && x < this.wide && y < this.high) this.lines.push([x - half, y - half, x + half, y + half]);
      }
    }
  }

  /** A text at the first middle with room. */
  text(says: string, middles: readonly Point[], font: string, ink: string, halo: string | null = this.colours.halo, overLines = false): boolean {
    this.pen.font = `${font} ${FONT}`;
    const wide = widthOf(this.pen, says) + 6;
    const size = Number(/(\d+)px/.exec(font)?.[1] ?? 11);
    const at = this.place(middles, wide, size + 4, overLines);
    if (at) written(this.pen, says, at, ink, halo);
    return at !== null;
  }
}

const widths = new Map<string, number>();

export function widthOf(pen: CanvasRenderingContext2D, says: string): number {
  const name = `${pen.font}|${says}`;
  const known = widths.get(name);
  if (known !== undefined) return known;
  if (widths.size > 5000) widths.clear();
  const wide = pen.measureText(says).width;
  widths.set(name, wide);
  return wide;
}

/** A text about its middle, in the font that is set. */
export function written(pen: CanvasRenderingContext2D, says: string, [x, y]: Point, ink: string, halo: string | null): void {
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
