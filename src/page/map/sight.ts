/** What is seen of the plane: places to pixels of the map's element and back. */

import type { Point } from "./geometry/rings";
import type { Box } from "./shapes";

export class Sight {
  /** Pixels a metre. */
  readonly scale: number;

  constructor(
    readonly middle: Point,
    readonly resolution: number,
    readonly wide: number,
    readonly high: number,
    readonly density: number,
  ) {
    this.scale = 1 / resolution;
  }

  /** Whether the same is seen. */
  isLike({ middle: [x, y], resolution, wide, high, density }: Sight): boolean {
    const same = this.resolution === resolution && this.wide === wide && this.high === high && this.density === density;
    return same && this.middle[0] === x && this.middle[1] === y;
  }

  pixel([x, y]: Point): Point {
    return [this.wide / 2 + (x - this.middle[0]) * this.scale, this.high / 2 - (y - this.middle[1]) * this.scale];
  }

  place([x, y]: Point): Point {
    return [this.middle[0] + (x - this.wide / 2) * this.resolution, this.middle[1] - (y - this.high / 2) * this.resolution];
  }

  /** The ground seen, and so many pixels round it. */
  box(more = 0): Box {
    const [west, south] = this.place([-more, this.high + more]);
    const [east, north] = this.place([this.wide + more, -more]);
    return [west, south, east, north];
  }

  sees([x, y]: Point, more = 0): boolean {
    return x >= -more && y >= -more && x <= this.wide + more && y <= this.high + more;
  }

  /** From here on a pen draws in pixels. */
  inPixels(pen: CanvasRenderingContext2D): void {
    pen.setTransform(this.density, 0, 0, this.density, 0, 0);
  }

  /** From here on a pen draws in metres, north up; a pixel is `resolution` wide. */
  inMetres(pen: CanvasRenderingContext2D): void {
    const scale = this.density * this.scale;
    const [x, y] = this.pixel([0, 0]);
    pen.setTransform(scale, 0, 0, -scale, x * this.density, y * this.density);
  }

  /** A line with these pixels of width and dashes, drawn in metres. */
  stroke(pen: CanvasRenderingContext2D, path: Path2D, colour: string, width: number, dashes: readonly number[] = []): void {
    pen.strokeStyle = colour;
    pen.lineWidth = width * this.resolution;
    pen.setLineDash(dashes.map((dash) => dash * this.resolution));
    pen.stroke(path);
    pen.setLineDash([]);
  }
}
