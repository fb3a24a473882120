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

/** Metres a pixel: the closest and the widest look. */
const CLOSEST = 0.15;
const WIDEST = 400;

/** Moves take `duration` milliseconds; with none nothing glides on either. */
export function planeMap(target: HTMLElement, layers: Layer[], hands: Interaction, duration: number): OlMap {
  const projection = new Projection({ code: "plane", units: "m", global: false });
  const view = new View({ projection, center: [0, 0], resolution: 20, minResolution: CLOSEST, maxResolution: WIDEST, enableRotation: false });
  const kinetic = duration > 0 ? new Kinetic(-0.005, 0.05, 100) : undefined;
  const moves = [new DragPan({ kinetic }), new PinchZoom({ duration }), new MouseWheelZoom({ duration }), new DoubleClickZoom({ duration })];
  return new OlMap({ target, view, controls: [], interactions: [...moves, hands], layers });
}
