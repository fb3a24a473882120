/** A plane in metres that is dragged, pinched and scaled; nothing of it comes from elsewhere. */

import OlMap from "ol/Map";
import View from "ol/View";
import DoubleClickZoom from "ol/interaction/DoubleClickZoom";
import DragPan from "ol/interaction/DragPan";
import type Interaction from "ol/interaction/Interaction";
import MouseWheelZoom from "ol/interaction/MouseWheelZoom";
import PinchZoom from "ol/interaction/PinchZoom";
import Kinetic from "ol/Kinetic";
import type Layer from "ol/layer/Layer";
import Projection from "ol/proj/Projection";
import type { Padding } from "./room";
import type { Box } from "./shapes";

/** Metres a pixel: the closest and the widest look. */
const CLOSEST = 0.15;
const WIDEST = 400;
/** Over maps that are not wider than this lies the row of the picked zone, so high; pixels. */
export const ROWED = 860;
export const ROW = 56;

/** Moves take `duration` milliseconds; with none nothing glides on either. */
export function planeMap(target: HTMLElement, layers: Layer[], hands: Interaction, duration: number): OlMap {
  const projection = new Projection({ code: "plane", units: "m", global: false });
  const view = new View({ projection, center: [0, 0], resolution: 20, minResolution: CLOSEST, maxResolution: WIDEST, enableRotation: false });
  const kinetic = duration > 0 ? new Kinetic(-0.005, 0.05, 100) : undefined;
  const moves = [new DragPan({ kinetic }), new PinchZoom({ duration }), new MouseWheelZoom({ duration }), new DoubleClickZoom({ duration })];
  return new OlMap({ target, view, controls: [], interactions: [...moves, hands], layers });
}

/** Shows a box whole, so far from the rims. */
export function lookAt(map: OlMap, box: Box, padding: Padding, duration: number): void {
  map.getView().fit([...box], { padding: [...padding], minResolution: 1, duration });
}

/** Moves to what would fit and is not wholly seen under a bar so high; false where it does not fit. */
export function keepSeen(map: OlMap, [west, south, east, north]: Box, bar: number): boolean {
  const view = map.getView();
  const [wide = 0, high = 0] = map.getSize() ?? [];
  const [x = 0, y = 0] = view.getCenter() ?? [];
  const resolution = view.getResolution() ?? 1;
  const [halfWide, halfHigh] = [(wide / 2) * resolution, (high / 2) * resolution];
  const row = bar * resolution;
  const seen = west > x - halfWide && east < x + halfWide && south > y - halfHigh && north < y + halfHigh - row;
  const fits = east - west < 2 * halfWide && north - south < 2 * halfHigh - row;
  if (!seen && fits) view.setCenter([(west + east) / 2, (south + north) / 2 + row / 2]);
  return seen || fits;
}

/** So long a movement takes, milliseconds; no time where the reader wants none. */
export const lasting = (milliseconds: number): number =>
  matchMedia("(prefers-reduced-motion: reduce)").matches ? 0 : milliseconds;

/** Closer by so many times two. */
export function scaleBy(map: OlMap, by: number, duration: number): void {
  const view = map.getView();
  view.animate({ zoom: (view.getZoom() ?? 0) + by, duration });
}
