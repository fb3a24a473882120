/** Acts on zones, each from one state to the next. A feature that becomes two keeps its properties in both. */

import { drawn, touched, type Drawn, type Geometry, type State } from "../../model";
import { cut, joined, merged, without } from "../geometry/overlay";
import { signedArea, type Area, type Point, type Ring } from "../geometry/rings";
import type { Frame } from "../projection";
import type { Scene } from "../scene";
import { boxOf, geometryOf, meets, shape, type Shape } from "../shapes";

const bySize = (a: Area, b: Area): number => signedArea(b[0] ?? []) - signedArea(a[0] ?? []);

/** A new zone; a stroke that crosses itself holds all that it goes round. Null where it holds nothing. */
export function added(state: State, areas: readonly Area[], scene: Scene): { state: State; key: number } | null {
  if (areas.length === 0) return null;
  const zone = drawn(geometryOf(areas, scene.frame, [null, ...neighbours(areas, scene)]));
  return { state: { ...state, zones: [...state.zones, zone] }, key: zone.key };
}

/** What lies about some areas. Spots that stick to a neighbour are the neighbour's, to its last digit. */
function neighbours(areas: readonly Area[], { shapes, ice }: Scene): (Geometry | null)[] {
  const box = boxOf(areas.flat());
  const zones = shapes.filter((one) => meets(box, one.box)).map((one) => one.zone.geometry);
  return [...zones, ...ice.filter((one) => meets(box, one.box)).map(({ rings }) => ({ type: "Polygon", coordinates: rings }))];
}

export const around = (ring: Ring): Area[] => merged([ring]);

export function taken(state: State, geometry: Drawn["geometry"]): { state: State; key: number } {
  const zone = drawn(geometry ?? { type: "Polygon" });
  return { state: { ...state, zones: [...state.zones, zone] }, key: zone.key };
}

/** Pieces in place of a zone: the first keeps its key, the others stand after it. */
function replaced(state: State, one: Shape, pieces: readonly (readonly Area[])[], frame: Frame): State {
  const written = pieces.map((areas) => geometryOf(areas, frame, [one.zone.geometry]));
  const [first, ...others] = written;
  const next = touched(state, one.key, () => ({ geometry: first ?? null }));
  const more = others.map((geometry) => drawn(geometry, { ...one.zone.properties }));
  return { ...next, zones: next.zones.flatMap((zone) => (zone.key === one.key ? [zone, ...more] : [zone])) };
}

/** Zones cut by a line; the same state where it cuts none. */
export function cutBy(state: State, zones: readonly Shape[], line: readonly Point[], frame: Frame): State {
  let now = state;
  for (const one of zones) {
    const pieces = one.areas.map((area) => cut(area, line).sort(bySize));
    if (pieces.every((parts) => parts.length < 2)) continue;
    // What the line leaves whole stays as it is, rims and all.
    const main = one.areas.map((area, index) => (pieces[index]!.length > 1 ? pieces[index]![0]! : area));
    const off = pieces.flatMap((parts) => parts.slice(1)).map((part) => [part]);
    now = replaced(now, one, [main, ...off], frame);
  }
  return now;
}

/** A hole in a zone; the same state where the ring does not meet it. */
export function holed(state: State, one: Shape, ring: Ring, frame: Frame): State {
  const left = without(one.areas, merged([ring]).map((area) => area[0] ?? []));
  const ground = (areas: readonly Area[]): number => areas.flat().reduce((sum, r) => sum + signedArea(r), 0);
  const before = ground(without(one.areas, []));
  if (left.length === 0 || Math.abs(before - ground(left)) < 0.01) return state;
  return touched(state, one.key, () => ({ geometry: geometryOf(left, frame, [one.zone.geometry]) }));
}

/** Each area of a zone as a zone of its own. */
export function split(state: State, one: Shape, frame: Frame): State {
  if (one.areas.length < 2) return state;
  const areas = [...one.areas].sort(bySize).map((area) => [area]);
  const written = areas.map((area) => geometryOf(area, frame, [one.zone.geometry]));
  const polygon = (geometry: (typeof written)[number]): (typeof written)[number] =>
    geometry.type === "Polygon" ? geometry : { type: "Polygon", coordinates: (geometry.coordinates as unknown[])[0] };
  const next = touched(state, one.key, () => ({ geometry: polygon(written[0]!) }));
  const more = written.slice(1).map((geometry) => drawn(polygon(geometry), { ...one.zone.properties }));
  return { ...next, zones: next.zones.flatMap((zone) => (zone.key === one.key ? [zone, ...more] : [zone])) };
}

/** Two zones as one with the properties of the first. */
export function unite(state: State, one: Shape, other: Shape, frame: Frame): State {
  const areas = joined([...one.areas, ...other.areas]);
  const geometry = geometryOf(areas, frame, [one.zone.geometry, other.zone.geometry]);
  const next = touched(state, one.key, () => ({ geometry }));
  return { ...next, zones: next.zones.filter((zone) => zone.key !== other.key) };
}

export const removed = (state: State, key: number): State => ({ ...state, zones: state.zones.filter((zone) => zone.key !== key) });

/** The zone with spots that lie on those of its neighbours written as theirs. */
export function stuckTo(state: State, one: Shape, scene: Scene): State {
  return touched(state, one.key, (zone) => ({ geometry: geometryOf(one.areas, scene.frame, [zone.geometry, ...neighbours(one.areas, scene)]) }));
}

/** The zone with other areas. */
export function moved(state: State, one: Shape, areas: readonly Area[], frame: Frame): State {
  return touched(state, one.key, (zone) => ({ geometry: geometryOf(areas, frame, [zone.geometry, one.zone.geometry]) }));
}

/** A zone of the state as it lies in the plane now. */
export function nowOf(state: State, key: number, frame: Frame): Shape | null {
  const zone = state.zones.find((each) => each.key === key);
  return zone ? shape(zone, frame) : null;
}
