/** Strokes on a lattice of millimetres, split wherever they meet, so that none crosses another. */

import type { Point } from "./rings";

/** Spots to the metre. */
export const LATTICE = 1000;
/** Of the lattice: a spot nearer to a stroke than this lies on it. */
const ON = 0.75;
const MOST_ROUNDS = 12;

export interface Stroke {
  readonly from: Point;
  readonly to: Point;
  /** Which input it bounds; `CUT` bounds none. */
  readonly input: number;
}

export const CUT = -1;

export const latticed = ([x, y]: Point): Point => [Math.round(x * LATTICE), Math.round(y * LATTICE)];

/** Strokes that meet at their ends alone. Rounding moves a crossing by less than a millimetre; what that crosses is split again. */
export function noded(strokes: readonly Stroke[]): Stroke[] {
  let now = strokes.filter((stroke) => length2(stroke) > 0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const splits = meetings(now);
    if (splits.size === 0) break;
    now = now.flatMap((stroke, index) => split(stroke, splits.get(index)));
  }
  return now;
}

function length2({ from, to }: Stroke): number {
  return (to[0] - from[0]) ** 2 + (to[1] - from[1]) ** 2;
}

function split(stroke: Stroke, at: readonly Point[] | undefined): Stroke[] {
  if (!at) return [stroke];
  const far = (spot: Point): number => (spot[0] - stroke.from[0]) ** 2 + (spot[1] - stroke.from[1]) ** 2;
  const way = [stroke.from, ...[...at].sort((a, b) => far(a) - far(b)), stroke.to];
  const pieces = way.slice(1).map((to, index) => ({ from: way[index]!, to, input: stroke.input }));
  return pieces.filter((piece) => length2(piece) > 0);
}

/** By the number of a stroke, where it is to be split. */
function meetings(strokes: readonly Stroke[]): Map<number, Point[]> {
  const found = new Map<number, Point[]>();
  const add = (index: number, at: Point): void => {
    const { from, to } = strokes[index]!;
    if ((at[0] === from[0] && at[1] === from[1]) || (at[0] === to[0] && at[1] === to[1])) return;
    const known = found.get(index);
    if (known) known.push(at);
    else found.set(index, [at]);
  };
  const west = (index: number): number => Math.min(strokes[index]!.from[0], strokes[index]!.to[0]);
  const east = (index: number): number => Math.max(strokes[index]!.from[0], strokes[index]!.to[0]);
  const order = strokes.map((_, index) => index).sort((a, b) => west(a) - west(b));
  order.forEach((one, place) => {
    const edge = east(one) + 1;
    for (let next = place + 1; next < order.length; next++) {
      const other = order[next]!;
      if (west(other) > edge) break;
      meet(strokes[one]!, strokes[other]!, (at) => add(one, at), (at) => add(other, at));
    }
  });
  return found;
}

function meet(a: Stroke, b: Stroke, splitA: (at: Point) => void, splitB: (at: Point) => void): void {
  if (Math.max(a.from[1], a.to[1]) + 1 < Math.min(b.from[1], b.to[1])) return;
  if (Math.max(b.from[1], b.to[1]) + 1 < Math.min(a.from[1], a.to[1])) return;
  let touched = false;
  for (const end of [b.from, b.to]) if (lies(end, a)) [touched] = [true, splitA(end)];
  for (const end of [a.from, a.to]) if (lies(end, b)) [touched] = [true, splitB(end)];
  if (touched) return;
  const [ax, ay] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const [bx, by] = [b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const turn = ax * by - ay * bx;
  if (turn === 0) return;
  const [dx, dy] = [b.from[0] - a.from[0], b.from[1] - a.from[1]];
  const [onA, onB] = [(dx * by - dy * bx) / turn, (dx * ay - dy * ax) / turn];
  if (!(onA > 0 && onA < 1 && onB > 0 && onB < 1)) return;
  const at: Point = [Math.round(a.from[0] + onA * ax), Math.round(a.from[1] + onA * ay)];
  splitA(at);
  splitB(at);
}

/** Whether a spot lies on a stroke, its ends included. */
function lies(at: Point, { from, to }: Stroke): boolean {
  const [ex, ey] = [to[0] - from[0], to[1] - from[1]];
  const [px, py] = [at[0] - from[0], at[1] - from[1]];
  const along = px * ex + py * ey;
  const square = ex * ex + ey * ey;
  if (along < 0 || along > square) return false;
  return (px * ey - py * ex) ** 2 <= ON * ON * square;
}
