/** New zones, holes in zones, and cuts through them. */

import type { Point } from "../geometry/rings";
import { meets, boxOf } from "../shapes";
import { added, around, cutBy, holed } from "./acts";
import { Sketching } from "./sketching";

export class DrawTool extends Sketching {
  readonly name = "draw";
  protected readonly closes = true;

  hint(): string {
    return this.begun ? "draw-hint-drawing" : "draw-hint-draw";
  }

  protected done(points: readonly Point[]): void {
    const { store, scene } = this.bench;
    const made = added(store.state, around(points), scene);
    if (!made) return this.bench.say("draw-say-nothing");
    store.change("draw-did-draw", () => made.state);
    store.settle();
    this.bench.made(made.key);
  }
}

export class HoleTool extends Sketching {
  readonly name = "hole";
  protected readonly closes = true;

  hint(): string {
    return this.begun ? "draw-hint-drawing" : "draw-hint-hole";
  }

  protected done(points: readonly Point[]): void {
    const { store, scene } = this.bench;
    const one = scene.find(scene.picked);
    const next = one ? holed(store.state, one, points, scene.frame) : store.state;
    this.becomes(next, "draw-did-hole", "draw-say-nothing");
  }
}

/** Cuts the picked zone; where none is picked, all that the line crosses. */
export class CutTool extends Sketching {
  readonly name = "cut";
  protected readonly closes = false;

  hint(): string {
    return this.begun ? "draw-hint-cutting" : "draw-hint-cut";
  }

  protected done(points: readonly Point[]): void {
    const { store, scene } = this.bench;
    const picked = scene.find(scene.picked);
    const box = boxOf([points]);
    const zones = picked ? [picked] : scene.shapes.filter((one) => meets(box, one.box));
    this.becomes(cutBy(store.state, zones, points, scene.frame), "draw-did-cut", "draw-say-not-cut");
  }
}
