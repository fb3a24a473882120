/** The measure of a height profile: metres walked and heights as pixels, and the edge of the hill kept between drawings. */

export type Sample = readonly [at_m: number, height_m: number | null];

/** Free room at the rims, pixels. */
export const LEFT = 42;
export const RIGHT = 12;
export const TOP = 24;
/** Zones and kilometres under the hill, pixels. */
export const BAND = 14;
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
