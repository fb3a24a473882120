/** Zones of the file as areas in the plane and back: spots that were not touched come out as they were read. */

import type { Drawn, Geometry, Position } from "../model";
import { partsOf } from "../model";
import { open, wound, type Area, type Point, type Ring } from "./geometry/rings";
import type { Frame } from "./projection";

/** A zone as it lies in the plane. */
export interface Shape {
  readonly key: number;
  readonly zone: Drawn;
  readonly areas: readonly Area[];
  readonly path: Path2D;
  readonly box: Box;
}

export type Box = readonly [west: number, south: number, east: number, north: number];

/** Which spot of which ring of which area. */
export interface Vertex {
  readonly area: number;
  readonly ring: number;
  readonly spot: number;
}

const name = ([x, y]: Point): string => `${Math.round(x * 1000)},${Math.round(y * 1000)}`;

const isPosition = (value: unknown): value is Position =>
  Array.isArray(value) && value.length > 1 && Number.isFinite(value[0]) && Number.isFinite(value[1]);

/** The rings of each polygon, those in a collection too; none of what is no polygon. */
function polygons(geometry: Geometry | null): Position[][][] {
  const { type, coordinates } = geometry ?? { type: "", coordinates: null };
  if (type === "GeometryCollection") return partsOf(geometry).flatMap(polygons);
  const all: unknown = type === "Polygon" ? [coordinates] : type === "MultiPolygon" ? coordinates : [];
  if (!Array.isArray(all)) return [];
  const rings = (polygon: unknown): Position[][] =>
    Array.isArray(polygon) ? polygon.map((ring) => (Array.isArray(ring) ? ring.filter(isPosition) : [])) : [];
  return all.map(rings).filter((polygon) => (polygon[0]?.length ?? 0) > 2);
}

/** Null for a feature without area. */
export function shape(zone: Drawn, frame: Frame): Shape | null {
  const areas = polygons(zone.geometry).map(
    (rings): Area => rings.map((ring, index) => wound(open(frame.line(ring)), index === 0)).filter((ring, index) => index === 0 || ring.length > 2),
  );
  if (areas.length === 0) return null;
  return { key: zone.key, zone, areas, path: pathOf(areas), box: boxOf(areas.flat()) };
}

/** A geometry with these areas. Positions of `before` are kept as they stand there, heights and all digits; of two for a spot the last. */
export function geometryOf(areas: readonly Area[], frame: Frame, before: readonly (Geometry | null)[]): Geometry {
  const known = new Map<string, Position>();
  for (const position of before.flatMap(polygons).flat(2)) known.set(name(frame.at(position)), position);
  const written = (at: Point): Position => known.get(name(at)) ?? frame.place(at);
  const coordinates = areas.map((area) =>
    area.map((ring, index) => {
      const spots = wound(ring, index === 0).map(written);
      return spots[0] ? [...spots, spots[0]] : [];
    }),
  );
  const several = coordinates.length > 1 || before[0]?.type === "MultiPolygon";
  return several ? { type: "MultiPolygon", coordinates } : { type: "Polygon", coordinates: coordinates[0] };
}

/** An area of the inventory as it stands there. */
export function outlineGeometry(rings: readonly (readonly (readonly number[])[])[], frame: Frame): Geometry {
  const areas: Area = rings.map((ring) => open(frame.line(ring)));
  return geometryOf([areas], frame, [{ type: "Polygon", coordinates: rings }]);
}

export function pathOf(areas: readonly Area[]): Path2D {
  const path = new Path2D();
  for (const ring of areas.flat()) {
    ring.forEach(([x, y], index) => (index === 0 ? path.moveTo(x, y) : path.lineTo(x, y)));
    path.closePath();
  }
  return path;
}

export function lineOf(lines: readonly (readonly Point[])[]): Path2D {
  const path = new Path2D();
  for (const line of lines) line.forEach(([x, y], index) => (index === 0 ? path.moveTo(x, y) : path.lineTo(x, y)));
  return path;
}

export function boxOf(rings: readonly Ring[]): Box {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of rings.flat()) {
    [west, east] = [Math.min(west, x), Math.max(east, x)];
    [south, north] = [Math.min(south, y), Math.max(north, y)];
  }
  return [west, south, east, north];
}

export const meets = (a: Box, b: Box): boolean => a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];

/** The areas with one ring made another. */
export function reshaped(areas: readonly Area[], { area, ring }: Vertex, change: (ring: Ring) => Ring): Area[] {
  return areas.map((old, a) => (a === area ? old.map((spots, r) => (r === ring ? change(spots) : spots)) : old));
}
