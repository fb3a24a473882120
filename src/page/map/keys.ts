/** Every act of drawing by keys: a crosshair that moves, sets spots and picks; spots of the picked zone that move. */

import type View from "ol/View";
import { middle, type Point } from "./geometry/rings";
import { moved, removed } from "./tools/acts";
import { inserted, placedAt, thinner } from "./tools/picking";
import type { Shape, Vertex } from "./shapes";
import type { Board, Tool, Touch } from "./tools/tool";

/** Steps of the crosshair and of a spot, pixels; with the shift key. */
const STEP = { crosshair: [8, 48], spot: [1, 10] } as const;
/** The crosshair sets spots on rims from so near, pixels. */
const REACH = 9;
/** Nearer to the rim than this the map moves along, pixels. */
const RIM = 40;

const ARROWS: Readonly<Record<string, Point>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

export class Keys {
  constructor(private readonly map: Board, target: HTMLElement, private readonly tool: () => Tool, private readonly view: View) {
    target.addEventListener("keydown", (event) => {
      if (event.target !== target || event.altKey || event.ctrlKey || event.metaKey || !this.pressed(event)) return;
      event.preventDefault();
      event.stopPropagation();
    });
    target.addEventListener("blur", () => this.map.store.settle());
  }

  private get resolution(): number {
    return this.view.getResolution() ?? 1;
  }

  private pressed(event: KeyboardEvent): boolean {
    const { key, shiftKey } = event;
    const arrow = ARROWS[key];
    if (arrow) return this.arrow(arrow, shiftKey ? 1 : 0);
    if (key === "Tab") return this.nextSpot(shiftKey ? -1 : 1);
    if (key === "Enter" || key === " ") return this.enter();
    if (key === "Escape") return this.escape();
    if (key === "Insert" || key === "i") return this.insert();
    if (key === "Delete" || key === "Backspace") return this.remove();
    if (key === "+" || key === "=") return this.zoom(1);
    if (key === "-") return this.zoom(-1);
    if (key === "0") return this.done(() => this.map.fit());
    return false;
  }

  private done(act: () => void): true {
    act();
    return true;
  }

  private zoom(by: number): true {
    const { crosshair } = this.map.scene;
    return this.done(() => this.view.adjustZoom(by / 2, crosshair ? [...crosshair] : undefined));
  }

  private arrow(way: Point, size: 0 | 1): true {
    const { scene } = this.map;
    if (scene.vertex && this.tool().name === "pick") return this.moveSpot(way, STEP.spot[size]);
    const step = STEP.crosshair[size] * this.resolution;
    const [x = 0, y = 0] = scene.crosshair ?? this.view.getCenter() ?? [];
    scene.crosshair = scene.crosshair ? [x + way[0] * step, y + way[1] * step] : [x, y];
    this.follow(scene.crosshair);
    this.tool().hover?.(this.touch(scene.crosshair));
    this.map.redraw();
    this.map.say("draw-say-crosshair", this.map.told(scene.crosshair));
    return true;
  }

  private touch(at: Point): Touch {
    return { at, reach: REACH * this.resolution, free: false };
  }

  /** The map moves with what the keys move. */
  private follow(at: Point): void {
    const [wide = 0, high = 0] = this.map.size;
    const [x = 0, y = 0] = this.view.getCenter() ?? [];
    const over = (away: number, half: number): number => Math.sign(away) * Math.max(0, Math.abs(away) - Math.max(0, half - RIM * this.resolution));
    const [east, north] = [over(at[0] - x, (wide / 2) * this.resolution), over(at[1] - y, (high / 2) * this.resolution)];
    if (east || north) this.view.setCenter([x + east, y + north]);
  }

  private enter(): boolean {
    const { scene } = this.map;
    const at = scene.crosshair;
    if (!at) return this.arrow([0, 0], 0);
    this.map.tapped(this.touch(at));
    return true;
  }

  /** Lets go of the nearest thing; at the end of the map itself. */
  private escape(): boolean {
    const { scene } = this.map;
    if (this.map.untold()) return true;
    if (this.tool().begun) this.map.setTool(this.tool().name);
    else if (this.tool().name !== "pick") this.map.setTool("pick");
    else if (scene.vertex) scene.vertex = null;
    else if (scene.picked !== null) this.map.pick(null);
    else if (scene.crosshair) scene.crosshair = null;
    else return false;
    this.map.store.settle();
    this.map.refresh();
    this.map.redraw();
    return true;
  }

  private get one(): Shape | null {
    return this.map.scene.find(this.map.scene.picked);
  }

  /** From spot to spot; past the last one on to what comes after the map. */
  private nextSpot(by: 1 | -1): boolean {
    const { scene } = this.map;
    if (!this.one || this.tool().name !== "pick") return false;
    const all = this.one.areas.flatMap((area, a) => area.flatMap((ring, r) => ring.map((_, spot): Vertex => ({ area: a, ring: r, spot }))));
    const now = all.findIndex((each) => scene.vertex && each.area === scene.vertex.area && each.ring === scene.vertex.ring && each.spot === scene.vertex.spot);
    const next = all[now < 0 ? (by > 0 ? 0 : all.length - 1) : now + by];
    this.map.store.settle();
    scene.vertex = next ?? null;
    this.map.refresh();
    this.map.redraw();
    if (!next) return false;
    const at = this.one.areas[next.area]![next.ring]![next.spot]!;
    this.follow(at);
    this.map.say("draw-say-spot", `${all.indexOf(next) + 1} / ${all.length}`, this.map.told(at));
    return true;
  }

  private moveSpot(way: Point, pixels: number): true {
    const { scene, store } = this.map;
    const [one, vertex] = [this.one, scene.vertex];
    const spot = vertex && one?.areas[vertex.area]?.[vertex.ring]?.[vertex.spot];
    if (!one || !vertex || !spot) return true;
    const at: Point = [spot[0] + way[0] * pixels * this.resolution, spot[1] + way[1] * pixels * this.resolution];
    const next = placedAt(one, vertex, at);
    if (!next) return true;
    store.change("draw-did-move", (state) => moved(state, one, next.areas, scene.frame), true);
    scene.vertex = next.vertex;
    this.follow(at);
    this.map.redraw();
    this.map.say("draw-did-move", this.map.told(at));
    return true;
  }

  private insert(): boolean {
    const { scene, store } = this.map;
    const [one, vertex] = [this.one, scene.vertex];
    const ring = vertex && one?.areas[vertex.area]?.[vertex.ring];
    if (!one || !vertex || !ring) return false;
    const at = middle(ring[vertex.spot]!, ring[(vertex.spot + 1) % ring.length]!);
    store.change("draw-did-insert", (state) => moved(state, one, inserted(one, vertex, at), scene.frame));
    store.settle();
    scene.vertex = { ...vertex, spot: vertex.spot + 1 };
    this.map.refresh();
    this.map.redraw();
    this.map.say("draw-did-insert", this.map.told(at));
    return true;
  }

  /** The last spot of a sketch, else the chosen spot, else the picked zone. */
  private remove(): boolean {
    if (this.tool().begun) return this.done(() => this.tool().back?.());
    return removeChosen(this.map);
  }
}

/** The chosen spot of the picked zone, else the zone. */
export function removeChosen(map: Board): boolean {
  const { scene, store } = map;
  const one = scene.find(scene.picked);
  if (!one) return false;
  if (scene.vertex) {
    const areas = thinner(one, scene.vertex);
    if (!areas) map.say("draw-say-too-few");
    else {
      store.change("draw-did-remove-spot", (state) => moved(state, one, areas, scene.frame));
      store.settle();
      scene.vertex = null;
      map.refresh();
    }
  } else {
    store.change("draw-did-delete", (state) => removed(state, one.key));
    store.settle();
  }
  return true;
}
