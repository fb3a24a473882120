/** What of the plane is looked at: all of it at first, and then never without a zone that was just made. */

import type OlMap from "ol/Map";
import { keepSeen, lasting, lookAt } from "./plane";
import { coverOf, paddingFor } from "./room";
import type { Scene } from "./scene";
import type { Box } from "./shapes";

export class Looks {
  /** Made last, for as long as it is picked: it is seen in whatever room the map has. */
  newest: number | null = null;
  /** Where the map was after all of it was shown; nobody has moved it as long as it is there. */
  private whole: { readonly center: readonly number[] | undefined; readonly resolution: number | undefined } | null = null;

  constructor(private readonly map: OlMap, private readonly scene: Scene, private readonly stage: HTMLElement) {}

  at(box: Box, duration = lasting(300)): void {
    const { map, scene } = this;
    const [wide = 0, high = 0] = map.getSize() ?? [];
    // Out of sight there is nothing to fit into: it is looked at once there is room again.
    if (wide < 2 || high < 2) return;
    const picked = scene.find(scene.picked)?.areas.flat(2) ?? [];
    const line = [...picked, ...scene.ways.flatMap((way) => way.runs.flatMap((run) => run.map((spot) => spot.at)))];
    lookAt(map, box, paddingFor(box, line, [wide, high], coverOf(this.stage)), duration);
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
    if (moved) return;
    this.at(this.scene.bounds, 0);
    this.whole = { center: view.getCenter(), resolution: view.getResolution() };
  }
}
