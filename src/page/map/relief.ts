/** The ground as heights between the spots of a lattice, and as a shaded picture with the light from the north-west. */

import type { Relief } from "../door";
import type { Palette, Shade } from "./palette";
import { turned, type Frame, type Spot } from "./projection";

/** Elevation of the light, degrees. Habit of maps, no source. */
const LIGHT_DEG = 45;
/** Slopes are drawn so many times as steep, so that gentle ice has a shape. Our judgement. */
const STEEPER = 1.6;

export class Lattice {
  /** South-west and north-east corner in the plane. */
  readonly corners: readonly [Spot, Spot];

  constructor(private readonly relief: Relief, frame: Frame) {
    const [west, south] = frame.at(relief.south_west);
    const [, north] = frame.at(relief.north_east);
    const wide = relief.north_east[0] - relief.south_west[0];
    const degree = frame.at([relief.south_west[0] + 0.001, relief.south_west[1]])[0] - west;
    this.corners = [[west, south], [west + (wide / 0.001) * degree, north]];
  }

  /** The height between the four spots about a place; null where one of them has none. */
  height(longitude: number, latitude: number): number | null {
    const { relief } = this;
    const [west, south] = relief.south_west;
    const [east, north] = relief.north_east;
    const across = turned(longitude - west);
    const column = ((across < 0 && east > 180 ? across + 360 : across) / (east - west)) * (relief.columns - 1);
    const row = ((north - latitude) / (north - south)) * (relief.rows - 1);
    if (!(column >= 0 && row >= 0 && column <= relief.columns - 1 && row <= relief.rows - 1)) return null;
    const [left, top] = [Math.min(Math.floor(column), relief.columns - 2), Math.min(Math.floor(row), relief.rows - 2)];
    const [u, v] = [column - left, row - top];
    const [a, b] = [this.at(left, top), this.at(left + 1, top)];
    const [c, d] = [this.at(left, top + 1), this.at(left + 1, top + 1)];
    if (a === null || b === null || c === null || d === null) return null;
    return (a * (1 - u) + b * u) * (1 - v) + (c * (1 - u) + d * u) * v;
  }

  private at(column: number, row: number): number | null {
    return this.relief.heights_m[row * this.relief.columns + column] ?? null;
  }

  /** One pixel a spot of the lattice. Clear where no height is known. */
  shaded(colours: Palette): HTMLCanvasElement {
    const { columns, rows } = this.relief;
    const [[west, south], [east, north]] = this.corners;
    const [wide, high] = [(east - west) / (columns - 1), (north - south) / (rows - 1)];
    const picture = new ImageData(columns, rows);
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        const shade = this.lit(column, row, wide, high);
        if (shade !== null) picture.data.set([...toned(colours, shade), 255], 4 * (row * columns + column));
      }
    }
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [columns, rows];
    canvas.getContext("2d")?.putImageData(picture, 0, 0);
    return canvas;
  }

  /** From −1 in the shade to 1 in the light; 0 on level ground. */
  private lit(column: number, row: number, wide: number, high: number): number | null {
    const here = this.at(column, row);
    if (here === null) return null;
    const [west, east] = [this.at(column - (column > 0 ? 1 : 0), row) ?? here, this.beside(column, row) ?? here];
    const [north, south] = [this.at(column, Math.max(0, row - 1)) ?? here, this.at(column, Math.min(this.relief.rows - 1, row + 1)) ?? here];
    const [x, y] = [(STEEPER * (east - west)) / (2 * wide), (STEEPER * (north - south)) / (2 * high)];
    const light = (LIGHT_DEG * Math.PI) / 180;
    const level = Math.sin(light);
    const facing = (level + (Math.cos(light) * (x - y)) / Math.SQRT2) / Math.sqrt(1 + x * x + y * y);
    return facing >= level ? (facing - level) / (1 - level) : Math.max(-1, (facing - level) / level);
  }

  private beside(column: number, row: number): number | null {
    return this.at(Math.min(this.relief.columns - 1, column + 1), row);
  }
}

function toned({ ground: [level, light, shade] }: Palette, lit: number): number[] {
  const to: Shade = lit >= 0 ? light : shade;
  const share = Math.abs(lit) ** 0.85;
  return level.map((tone, index) => tone + (to[index]! - tone) * share);
}
