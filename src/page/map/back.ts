/** Which spots of a route lie on a way that was walked before in the other direction: they are drawn to its right. */

import { nearest, type Point } from "./geometry/rings";

/** A way back is at most so far from the way out, metres, and runs against it at more than a slant. Our judgement. */
const FAR = 30;
const AGAINST = -0.4;
/** Ground just walked does not count: a bend is no way back. Metres. */
const LATELY = 120;
const CELL = 64;

interface Edge {
  readonly from: Point;
  readonly to: Point;
  readonly walked: number;
}

/** Edges walked so far, found by place. */
export class Walked {
  private readonly cells = new Map<number, Edge[]>();
  private walked = 0;

  /** Whether each spot of the next stretch lies on a way back; the stretch then counts as walked. */
  next(line: readonly Point[]): boolean[] {
    const back = line.map((at, index) => {
      const [a, b] = index + 1 < line.length ? [at, line[index + 1]!] : [line[index - 1] ?? at, at];
      const way: Point = [b[0] - a[0], b[1] - a[1]];
      const found = this.isBack(at, way);
      if (index + 1 < line.length) this.add(a, b);
      return found;
    });
    return back;
  }

  private add(from: Point, to: Point): void {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    this.walked += length;
    const edge = { from, to, walked: this.walked };
    const steps = Math.min(2000, Math.ceil(length / CELL));
    let last = NaN;
    for (let step = 0; step <= steps; step++) {
      const share = steps > 0 ? step / steps : 0;
      const cell = numbered(...cellOf(from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])));
      if (cell === last) continue;
      last = cell;
      const known = this.cells.get(cell);
      if (known) known.push(edge);
      else this.cells.set(cell, [edge]);
    }
  }

  private isBack(at: Point, way: Point): boolean {
    const [column, row] = cellOf(...at);
    for (let x = -1; x <= 1; x++) {
      for (let y = -1; y <= 1; y++) {
        const near = this.cells.get(numbered(column + x, row + y));
        if (near?.some((edge) => this.runsAgainst(edge, at, way))) return true;
      }
    }
    return false;
  }

  private runsAgainst({ from, to, walked }: Edge, at: Point, way: Point): boolean {
    if (this.walked - walked < LATELY) return false;
    const [x, y] = [to[0] - from[0], to[1] - from[1]];
    const lengths = Math.hypot(x, y) * Math.hypot(...way);
    return lengths > 0 && (x * way[0] + y * way[1]) / lengths < AGAINST && nearest(from, to, at).away <= FAR;
  }
}

/** More cells in a row than the earth has. */
const ROW = 2 ** 24;
const numbered = (column: number, row: number): number => row * ROW + column;

const cellOf = (x: number, y: number): [number, number] => [Math.floor(x / CELL), Math.floor(y / CELL)];

/** The line with its ways back moved to their right, metres. */
export function beside(line: readonly Point[], back: readonly boolean[], metres: number): readonly Point[] {
  if (!back.includes(true)) return line;
  return line.map((at, index): Point => {
    if (!back[index]) return at;
    const [a, b] = [line[Math.max(0, index - 1)]!, line[Math.min(line.length - 1, index + 1)]!];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    return [at[0] + ((b[1] - a[1]) / length) * metres, at[1] - ((b[0] - a[0]) / length) * metres];
  });
}
