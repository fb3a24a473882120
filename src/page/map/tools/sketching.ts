/** Lines and rings drawn spot by spot: by taps, by the crosshair, along rims. */

import type { State } from "../../model";
import type { Point } from "../geometry/rings";
import { traced, type OnRim } from "../geometry/tracing";
import { stuck } from "./snapping";
import type { Bench, Tool, ToolName, Touch } from "./tool";

interface Step {
  /** Spots of a rim that lead here, then the spot itself. */
  readonly way: readonly Point[];
  readonly rim: OnRim | null;
}

export abstract class Sketching implements Tool {
  private steps: Step[] = [];
  /** Given up last. */
  private gone: Step[] = [];
  abstract readonly name: ToolName;
  protected abstract readonly closes: boolean;

  constructor(protected readonly bench: Bench) {}

  abstract hint(): string;
  /** What the spots make. */
  protected abstract done(points: readonly Point[]): void;

  get begun(): boolean {
    return this.steps.length > 0;
  }

  private get points(): Point[] {
    return this.steps.flatMap((step) => step.way);
  }

  enter(): void {
    this.show(null);
  }

  leave(): void {
    if (this.begun) this.gone = this.steps;
    this.steps = [];
    this.bench.scene.sketch = null;
    this.bench.scene.snapped = null;
  }

  tap(touch: Touch): void {
    if (this.ends(touch)) return this.finish();
    const { at, rim } = stuck(this.bench.scene, touch);
    this.steps.push({ way: [...this.along(rim), at], rim });
    this.show(null);
    this.bench.say("draw-say-point", String(this.steps.length), this.bench.told(at));
    this.bench.refresh();
  }

  /** On the first spot of a ring, or again on the last one. */
  private ends({ at, reach }: Touch): boolean {
    const points = this.points;
    const near = (spot: Point | undefined): boolean => !!spot && Math.hypot(spot[0] - at[0], spot[1] - at[1]) <= reach;
    const least = this.closes ? 3 : 2;
    return points.length >= least && (near(points.at(-1)) || (this.closes && near(points[0])));
  }

  /** Nothing where the last spot and this one stick to different rims. */
  private along(rim: OnRim | null): Point[] {
    const last = this.steps.at(-1)?.rim;
    if (!this.bench.follow || !last || !rim || last.ring !== rim.ring) return [];
    return traced(last, rim);
  }

  hover(touch: Touch | null): void {
    this.show(touch);
  }

  private show(touch: Touch | null): void {
    const { scene } = this.bench;
    const target = touch && stuck(scene, touch);
    scene.snapped = target?.rim ? target.at : null;
    const next = target && this.begun ? [...this.along(target.rim), target.at] : [];
    scene.sketch = { points: this.points, next, closes: this.closes, areas: [] };
    this.bench.redraw();
  }

  /** The drawing becomes another one, and the picking goes on; `nothing` is said where it stays the same. */
  protected becomes(next: State, did: string, nothing: string): void {
    const { store } = this.bench;
    if (next === store.state) return this.bench.say(nothing);
    store.change(did, () => next);
    store.settle();
    this.bench.setTool("pick");
  }

  get left(): boolean {
    return !this.begun && this.gone.length > 0;
  }

  again(): void {
    [this.steps, this.gone] = [this.gone, []];
    this.show(null);
    this.bench.say("draw-say-point", String(this.steps.length));
    this.bench.refresh();
  }

  back(): void {
    this.steps.pop();
    this.show(null);
    this.bench.say("draw-say-back", String(this.steps.length));
    this.bench.refresh();
  }

  finish(): void {
    const points = this.points;
    if (points.length < (this.closes ? 3 : 2)) {
      this.bench.say("draw-say-too-few");
      return;
    }
    const { state } = this.bench.store;
    this.leave();
    this.done(points);
    // What came to nothing can be taken up again.
    if (this.bench.store.state !== state) this.gone = [];
    this.bench.refresh();
  }
}
