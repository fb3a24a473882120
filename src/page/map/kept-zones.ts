/** The drawing of the zones, kept as long as it would be the same: hundreds of spots and dashes are slow, and most acts change none of them. */

import { drawZones, wears } from "./ink-zones";
import type { Scene } from "./scene";
import type { Sight } from "./sight";

export class KeptZones {
  private readonly canvas = document.createElement("canvas");
  /** All that the drawing hangs on. */
  private signs: readonly unknown[] = [];

  draw(pen: CanvasRenderingContext2D, scene: Scene, sight: Sight): void {
    const zones = wears(scene, sight);
    if (zones.length === 0) return;
    const [x, y] = sight.middle;
    const looks = zones.flatMap(({ one, known: { met, assumed, gap_m, strike_deg }, fill }) => [one.areas, met, assumed, gap_m === null, fill, strike_deg]);
    const signs = [scene.colours, x, y, sight.resolution, sight.wide, sight.high, sight.density, ...looks];
    if (signs.length !== this.signs.length || signs.some((sign, at) => sign !== this.signs[at])) {
      this.renew(scene, sight, zones);
      this.signs = signs;
    }
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.drawImage(this.canvas, 0, 0);
  }

  private renew(scene: Scene, sight: Sight, zones: ReturnType<typeof wears>): void {
    const { canvas } = this;
    const [wide, high] = [Math.round(sight.wide * sight.density), Math.round(sight.high * sight.density)];
    if (canvas.width !== wide || canvas.height !== high) [canvas.width, canvas.height] = [wide, high];
    const pen = canvas.getContext("2d");
    pen?.setTransform(1, 0, 0, 1, 0, 0);
    pen?.clearRect(0, 0, wide, high);
    if (pen) drawZones(pen, scene, sight, zones);
  }
}
