/** What of the plane is looked at: all of it at first, and then never without a zone that was just made. */

import type OlMap from "ol/Map";
import { nearestOn } from "./geometry/along";
import type { Point } from "./geometry/rings";
import { keepSeen, lasting, lookAt, ROW, ROWED } from "./plane";
import { coverOf, paddingFor, roomier } from "./room";
import type { Scene } from "./scene";
import { type Box, boxOf, meets } from "./shapes";

/** So far within the rim of the map something is still seen, pixels. Our judgement. */
const RIM = 40;

/** A map so high has room to spare, pixels. Our judgement. */
const ROOMY = 300;

export class Looks {
  /** Made last, for as long as it is picked: it is seen in whatever room the map has. */
  newest: number | null = null;
  /** Where the map was after all of it was shown, and how large; nobody has moved it as long as it is there. */
  private whole: { readonly center: readonly number[] | undefined; readonly resolution: number | undefined; readonly size: string } | null = null;

  constructor(private readonly map: OlMap, private readonly scene: Scene, private readonly stage: HTMLElement) {
    map.on("moveend", () => this.held());
  }

  at(box: Box, duration = lasting(300)): void {
    const { map, scene } = this;
    const [wide = 0, high = 0] = map.getSize() ?? [];
    // Out of sight there is nothing to fit into: it is looked at once there is room again.
    if (wide < 2 || high < 2) return;
    const picked = scene.find(scene.picked)?.areas.flat(2) ?? [];
    const line = [...picked, ...scene.ways.flatMap((way) => way.runs.flatMap((run) => run.map((spot) => spot.at)))];
    const seen = coverOf(this.stage);
    // Room for the row of the picked zone, so that it may come and go.
    const top = Math.max(seen.top, wide <= ROWED && high >= ROOMY ? ROW : 0);
    const cover = box === scene.bounds ? roomier(box, line, [wide, high], { ...seen, top }) : { ...seen, top };
    this.put(cover.corner?.left ?? false);
    lookAt(map, box, paddingFor(box, line, [wide, high], cover), duration);
  }

  /** The buttons, in one of the upper corners. */
  private put(left: boolean): void {
    this.scene.buttonsLeft = left;
    this.stage.toggleAttribute("data-buttons-left", left);
  }

  /** At all of some boxes; those that hold nothing left out. */
  over(boxes: readonly Box[]): void {
    const full = boxes.filter((box) => box[0] <= box[2]);
    if (full.length > 0) this.at(boxOf(full.map(([west, south, east, north]): Point[] => [[west, south], [east, north]])));
  }

  /** In a smaller map the picked zone is still seen. */
  sized(): void {
    this.once();
    const one = this.scene.find(this.scene.picked);
    if (one && !keepSeen(this.map, one.box, coverOf(this.stage).top) && one.key === this.newest) this.at(one.box, 0);
  }

  /** All at first, as soon as there is room, and in whatever room there is until somebody moves it. */
  once(): void {
    const [wide = 0, high = 0] = this.map.getSize() ?? [];
    if (wide < 2 || high < 2 || !this.scene.bounds) return;
    const view = this.map.getView();
    const moved = this.whole && (view.getResolution() !== this.whole.resolution || String(view.getCenter()) !== String(this.whole.center));
    // In the same room it stays, whatever comes to lie over its rims.
    if (moved || this.whole?.size === `${wide} ${high}`) return;
    this.at(this.scene.bounds, 0);
    this.whole = { center: view.getCenter(), resolution: view.getResolution(), size: `${wide} ${high}` };
  }

  /** Whoever moves on past all that is drawn has some of route or zones at the rim. */
  private held(): void {
    const { map, scene } = this;
    const view = map.getView();
    const [wide = 0, high = 0] = map.getSize() ?? [];
    const resolution = view.getResolution() ?? 1;
    const [x = 0, y = 0] = view.getCenter() ?? [];
    const [halfWide, halfHigh] = [wide / 2, high / 2].map((half) => Math.max(0, half - Math.min(RIM, half / 2)) * resolution) as [number, number];
    const seen: Box = [x - halfWide, y - halfHigh, x + halfWide, y + halfHigh];
    const passes = scene.ways.some(({ runs }) => runs.some((run) => run.some(({ at: [east, north] }) => meets([east, north, east, north], seen))));
    if (wide < 2 || high < 2 || passes || scene.shapes.some(({ box }) => meets(box, seen))) return;
    const near = nearestOf(scene, [x, y]);
    if (!near) return;
    const over = (away: number, half: number): number => Math.sign(away) * Math.max(0, Math.abs(away) - half);
    const [east, north] = [over(near[0] - x, halfWide), over(near[1] - y, halfHigh)];
    if (Math.hypot(east, north) > resolution) view.animate({ center: [x + east, y + north], duration: lasting(200) });
  }
}

/** The place of the route that is nearest to a spot; where there is no route the nearest corner of a zone. */
function nearestOf({ ways, shapes }: Scene, spot: Point): Point | null {
  const on = nearestOn(ways, spot, Infinity);
  if (on) return ways.find((way) => way.stage.stage === on.stage)?.at(on.at_m)?.at ?? null;
  const far = ([x, y]: Point): number => Math.hypot(x - spot[0], y - spot[1]);
  return shapes.flatMap((one) => one.areas.flat(2)).reduce<Point | null>((best, at) => (best && far(best) <= far(at) ? best : at), null);
}
