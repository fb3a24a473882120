/** Longitude and latitude as a plane in metres, linear in both: a stroke straight in one is straight in the other. */

import type { LonLat } from "../door";

/** East and north of the frame's middle, metres. */
export type Spot = [x: number, y: number];

/** WGS 84. */
const EQUATOR_M = 6378137;
const FLATTENING = 1 / 298.257223563;
const SQUARED_ECCENTRICITY = FLATTENING * (2 - FLATTENING);
const RADIANS = Math.PI / 180;
/** Digits of a position as it is written, a centimetre. */
const DIGITS = 1e7;

/** The plane about one place. Longitudes are taken the short way round from its middle, so nothing tears at 180 degrees. */
export class Frame {
  private readonly east: number;
  private readonly north: number;

  constructor(private readonly middle: LonLat) {
    const latitude = Math.min(89, Math.max(-89, middle[1])) * RADIANS;
    const curved = 1 - SQUARED_ECCENTRICITY * Math.sin(latitude) ** 2;
    this.east = (RADIANS * EQUATOR_M * Math.cos(latitude)) / Math.sqrt(curved);
    this.north = (RADIANS * EQUATOR_M * (1 - SQUARED_ECCENTRICITY)) / curved ** 1.5;
  }

  /** The frame about the middle of some places; of the Alps where there are none. */
  static about(places: Iterable<readonly number[]>): Frame {
    let first: number | null = null;
    let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const [longitude, latitude] of places) {
      if (longitude === undefined || latitude === undefined) continue;
      first ??= longitude;
      const near = first + turned(longitude - first);
      [west, east] = [Math.min(west, near), Math.max(east, near)];
      [south, north] = [Math.min(south, latitude), Math.max(north, latitude)];
    }
    return new Frame(first === null ? [8, 46] : [turned((west + east) / 2), (south + north) / 2]);
  }

  at(place: readonly number[]): Spot {
    const [longitude = 0, latitude = 0] = place;
    return [turned(longitude - this.middle[0]) * this.east, (latitude - this.middle[1]) * this.north];
  }

  line(places: readonly (readonly number[])[]): Spot[] {
    return places.map((place) => this.at(place));
  }

  /** Where a spot lies, to the centimetre. */
  place(spot: readonly number[]): [number, number] {
    const [x = 0, y = 0] = spot;
    const longitude = turned(this.middle[0] + x / this.east);
    const latitude = this.middle[1] + y / this.north;
    return [Math.round(longitude * DIGITS) / DIGITS, Math.round(latitude * DIGITS) / DIGITS];
  }
}

/** The same direction between −180 and 180 degrees. */
export function turned(degrees: number): number {
  if (degrees >= -180 && degrees <= 180) return degrees;
  return degrees - 360 * Math.round(degrees / 360);
}
