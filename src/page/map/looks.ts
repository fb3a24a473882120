/** What of the plane is looked at: all of it at first, and then never without a zone that was just made. */

import type OlMap from "ol/Map";
import { keepSeen, lasting, lookAt } from "./plane";
import type { Scene } from "./scene";
import type { Box } from "./shapes";

export class Looks {
  /** Made last, for as long as it is picked: it is seen in whatever room the map has. */
  newest: number | null = null;
  private fitted = false;

  constructor(private readonly map: OlMap, private readonly scene: Scene) {}

  at(box: Box, duration = lasting(300)): void {
    lookAt(this.map, box, this.scene.picked !== null, duration);
  }

  /** In a smaller map the picked zone is still seen. */
  sized(): void {
    this.once();
    const one = this.scene.find(this.scene.picked);
    if (one && !keepSeen(this.map, one.box) && one.key === this.newest) this.at(one.box, 0);
  }

  /** All at first, as soon as there is room. */
  once(): void {
    const [wide = 0, high = 0] = this.map.getSize() ?? [];
    if (this.fitted || wide < 2 || high < 2 || !this.scene.bounds) return;
    this.fitted = true;
    this.at(this.scene.bounds, 0);
  }
}
