/** Picks zones, drags their spots, pulls new ones out of edges, joins zones, takes outlines of the inventory. */

import { middle, within, wound, type Area, type Point, type Ring } from "../geometry/rings";
import type { Scene } from "../scene";
import { outlineGeometry, reshaped, type Shape, type Vertex } from "../shapes";
import { button } from "../../dom";
import { moved, nowOf, stuckTo, taken, unite } from "./acts";
import { stuck } from "./snapping";
import type { Bench, Tool, ToolName, Touch } from "./tool";

const far = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Zones at a place, the smallest first. */
export function zonesAt(scene: Scene, at: Point): Shape[] {
  const size = ({ box }: Shape): number => (box[2] - box[0]) * (box[3] - box[1]);
  return scene.shapes.filter((one) => one.areas.some((area) => within(area, at))).sort((a, b) => size(a) - size(b));
}

export class PickTool implements Tool {
  readonly name: ToolName = "pick";
  /** What is dragged: a spot of the picked zone. */
  private held: Vertex | null = null;
  private did = "draw-did-move";
  /** It lies on a rim of a neighbour. */
  private sticks = false;
  /** The next tap puts the chosen spot there: for who does not drag. */
  private puts = false;
  /** Made once, so that it is not taken away from whoever is on it. */
  private putting: HTMLButtonElement | null = null;

  constructor(private readonly bench: Bench) {}

  hint(): string {
    const { picked, vertex, shapes } = this.bench.scene;
    if (picked === null) return shapes.length > 0 ? "draw-hint-pick" : "draw-hint-first";
    return vertex ? "draw-hint-vertex" : "draw-hint-picked";
  }

  leave(): void {
    this.release();
    this.puts = false;
    this.bench.scene.vertex = null;
    this.bench.scene.snapped = null;
  }

  /** A spot is chosen; else the next zone below the finger is. */
  tap(touch: Touch): void {
    const { scene } = this.bench;
    if (this.puts) return this.put(touch);
    const spot = this.spotAt(touch);
    if (spot && !spot.between) {
      scene.vertex = spot.vertex;
      this.bench.refresh();
      this.bench.redraw();
      return;
    }
    const found = zonesAt(scene, touch.at);
    const place = found.findIndex((one) => one.key === scene.picked);
    const next = found[place + 1] ?? found[0];
    const spotted = scene.vertex !== null;
    scene.vertex = null;
    if (next?.key === scene.picked && spotted) return this.bench.refresh();
    this.bench.pick(next?.key ?? null);
  }

  claims(touch: Touch): boolean {
    return this.puts || this.spotAt(touch) !== null;
  }

  private put(touch: Touch): void {
    const { vertex } = this.bench.scene;
    this.held = vertex;
    [this.did, this.puts] = ["draw-did-move", false];
    this.drag(touch);
    this.release();
  }

  /** Only while a spot is chosen. */
  fields(): HTMLElement | null {
    if (this.name !== "pick" || !this.bench.scene.vertex) return null;
    this.putting ??= button(this.bench.words("draw-put"), () => this.turnPuts(), { class: "map-act" });
    this.putting.setAttribute("aria-pressed", String(this.puts));
    return this.putting;
  }

  private turnPuts(): void {
    this.puts = !this.puts;
    this.bench.refresh();
  }

  press(touch: Touch): boolean {
    if (this.puts) return false;
    const spot = this.spotAt(touch);
    const { scene, store } = this.bench;
    const one = scene.find(scene.picked);
    if (!spot || !one) return false;
    [this.did, this.sticks] = [spot.between ? "draw-did-insert" : "draw-did-move", false];
    if (spot.between) {
      const grown = inserted(one, spot.vertex, touch.at);
      store.change("draw-did-insert", (state) => moved(state, one, grown, scene.frame));
      this.held = { ...spot.vertex, spot: spot.vertex.spot + 1 };
    } else this.held = spot.vertex;
    scene.vertex = this.held;
    return true;
  }

  /** One step of undo however long it is dragged: it goes on with what began it. */
  drag(touch: Touch): void {
    const { scene, store } = this.bench;
    const one = this.held && scene.picked !== null ? nowOf(store.state, scene.picked, scene.frame) : null;
    if (!one || !this.held) return;
    const { at, rim } = stuck(scene, touch, new Set(scene.find(one.key)?.areas.flat()));
    scene.snapped = rim ? at : null;
    const next = placedAt(one, this.held, at);
    if (!next) return;
    this.sticks = rim !== null;
    store.change(this.did, (state) => moved(state, one, next.areas, scene.frame), true);
    this.held = scene.vertex = next.vertex;
  }

  release(): void {
    if (!this.held) return;
    const { scene, store } = this.bench;
    const one = scene.find(scene.picked);
    if (this.sticks && one) store.change(this.did, (state) => stuckTo(state, one, scene), true);
    [this.held, this.sticks, scene.snapped] = [null, false, null];
    store.settle();
    this.bench.refresh();
    this.bench.redraw();
  }

  /** The spot of the picked zone within reach, or the middle of one of its edges. */
  private spotAt({ at, reach }: Touch): { vertex: Vertex; between: boolean } | null {
    const one = this.bench.scene.find(this.bench.scene.picked);
    let best: { vertex: Vertex; between: boolean; away: number } | null = null;
    one?.areas.forEach((area, a) =>
      area.forEach((ring, r) =>
        ring.forEach((spot, s) => {
          const vertex = { area: a, ring: r, spot: s };
          const next = ring[(s + 1) % ring.length]!;
          const away = far(spot, at);
          if (away <= reach && away < (best?.away ?? Infinity)) best = { vertex, between: false, away };
          // Middles count a little less, so that close spots can be had.
          const half = far(middle(spot, next), at) * 1.3;
          if (far(spot, next) > 2 * reach && half <= reach && half < (best?.away ?? Infinity)) best = { vertex, between: true, away: half };
        }),
      ),
    );
    return best;
  }
}

/** The areas with a new spot after one. */
export const inserted = (one: Shape, vertex: Vertex, at: Point) =>
  reshaped(one.areas, vertex, (ring) => [...ring.slice(0, vertex.spot + 1), at, ...ring.slice(vertex.spot + 1)]);

/** Spots of a ring keep this distance, metres: closer they would be written as one. */
const LEAST_M = 0.03;

/** The areas with a spot elsewhere, and its number then: a ring that is turned over runs the other way. Null on a neighbour. */
export function placedAt(one: Shape, vertex: Vertex, at: Point): { areas: Area[]; vertex: Vertex } | null {
  const before = one.areas[vertex.area]?.[vertex.ring] ?? [];
  const count = before.length;
  const beside = [before[(vertex.spot + 1) % count], before[(vertex.spot + count - 1) % count]];
  if (beside.some((spot) => !spot || far(spot, at) < LEAST_M)) return null;
  const ring = before.map((spot, index): Point => (index === vertex.spot ? at : spot));
  const over = wound(ring, vertex.ring === 0) !== ring;
  const spot = over ? count - 1 - vertex.spot : vertex.spot;
  return { areas: reshaped(one.areas, vertex, () => ring), vertex: { ...vertex, spot } };
}

/** The areas without a spot; without its whole hole where two would be left; null where that would leave no zone. */
export function thinner(one: Shape, vertex: Vertex) {
  const ring: Ring = one.areas[vertex.area]?.[vertex.ring] ?? [];
  if (ring.length > 3) return reshaped(one.areas, vertex, (spots) => spots.filter((_, index) => index !== vertex.spot));
  if (vertex.ring === 0) return null;
  return one.areas.map((area, index) => (index === vertex.area ? area.filter((_, r) => r !== vertex.ring) : area));
}

/** A second zone, tapped, becomes one with the picked one. */
export class JoinTool implements Tool {
  readonly name = "join";

  constructor(private readonly bench: Bench) {}

  hint = (): string => "draw-hint-join";

  leave(): void {}

  tap({ at }: Touch): void {
    const { scene, store } = this.bench;
    const one = scene.find(scene.picked);
    const other = zonesAt(scene, at).find((zone) => zone.key !== scene.picked);
    if (!one || !other) return this.bench.say("draw-say-no-zone");
    store.change("draw-did-join", (state) => unite(state, one, other, scene.frame));
    store.settle();
    this.bench.setTool("pick");
  }
}

/** The ice of the inventory under the finger becomes a zone, spot for spot. */
export class OutlineTool implements Tool {
  readonly name = "outline";

  constructor(private readonly bench: Bench) {}

  hint = (): string => (this.bench.scene.ice.length > 0 ? "draw-hint-outline" : "draw-hint-no-outline");

  leave(): void {
    this.bench.scene.sketch = null;
  }

  hover(touch: Touch | null): void {
    const { scene } = this.bench;
    const ice = touch && this.at(touch.at);
    scene.sketch = ice ? { points: [], next: [], closes: false, areas: [ice.area] } : null;
    this.bench.redraw();
  }

  private at(at: Point) {
    const [x, y] = at;
    const found = this.bench.scene.ice.filter(({ box }) => x >= box[0] && y >= box[1] && x <= box[2] && y <= box[3]);
    const hit = found.filter(({ area }) => within(area, at));
    return hit.sort((a, b) => (a.box[2] - a.box[0]) * (a.box[3] - a.box[1]) - (b.box[2] - b.box[0]) * (b.box[3] - b.box[1]))[0] ?? null;
  }

  tap({ at }: Touch): void {
    const { store, scene } = this.bench;
    const ice = this.at(at);
    if (!ice) return this.bench.say("draw-say-no-ice");
    const made = taken(store.state, outlineGeometry(ice.rings, scene.frame));
    store.change("draw-did-outline", () => made.state);
    store.settle();
    this.bench.made(made.key);
  }
}
