/** The map: ground, ice, zones and legs, and the tools that draw on it. */

import OlMap from "ol/Map";
import View from "ol/View";
import DoubleClickZoom from "ol/interaction/DoubleClickZoom";
import DragPan from "ol/interaction/DragPan";
import MouseWheelZoom from "ol/interaction/MouseWheelZoom";
import PinchZoom from "ol/interaction/PinchZoom";
import Kinetic from "ol/Kinetic";
import Projection from "ol/proj/Projection";
import { make } from "../dom";
import type { Ground, Panel } from "../door";
import type { State, Store } from "../model";
import type { Words } from "../words";
import { Furniture } from "./furniture";
import type { Point } from "./geometry/rings";
import { nearestOn } from "./geometry/along";
import { Hands } from "./hands";
import { InkLayer, type Numbers } from "./ink";
import { zoneMiddles } from "./ink-zones";
import { Keys } from "./keys";
import style from "./map.css";
import { Needle } from "./needle";
import { palette } from "./palette";
import { PictureLayer } from "./picture";
import { Scene } from "./scene";
import type { Sight } from "./sight";
import { boxOf, type Box } from "./shapes";
import { Toolbar } from "./toolbar";
import { toolsOf } from "./tools/all";
import type { PaintTool } from "./tools/painting";
import type { Board, Tool, ToolName, Touch } from "./tools/tool";

export type { ToolName } from "./tools/tool";

export interface MapOptions {
  readonly store: Store;
  readonly ground: Ground;
  readonly words: Words;
}

/** Metres a pixel: the closest and the widest look. */
const CLOSEST = 0.15;
const WIDEST = 400;
/** The route is pointed at from so near, pixels. */
const POINTS = 24;

type Pointed = (stage: number, at_m: number | null) => void;

export class ZoneMap implements Board {
  readonly store: Store;
  readonly words: Words;
  readonly scene: Scene;
  follow = true;
  private readonly map: OlMap;
  private readonly ink: InkLayer;
  private readonly picture: PictureLayer;
  private readonly furniture: Furniture;
  private readonly needle: Needle;
  private readonly toolbar: Toolbar;
  private readonly live = make("div", { class: "map-live", role: "status" });
  private readonly tools: ReadonlyMap<ToolName, Tool>;
  private tool: Tool;
  private readonly picks = new Set<(key: number | null) => void>();
  private readonly points = new Set<Pointed>();
  private readonly drawn = new Set<() => void>();
  private readonly ends: (() => void)[] = [];
  private readonly stage = make("div", { class: "map-stage" });
  private fitted = false;

  constructor(element: HTMLElement, { store, ground, words }: MapOptions) {
    [this.store, this.words] = [store, words];
    this.scene = new Scene(ground, store.state);
    this.tools = toolsOf(this);
    this.tool = this.tools.get("pick")!;
    const numbers = numbersOf(element);
    this.ink = new InkLayer(this.scene, numbers, () => matchMedia("(pointer: coarse)").matches);
    this.picture = new PictureLayer(this.scene);
    this.furniture = new Furniture(this.scene, words, numbers.number);
    this.needle = new Needle(this);
    this.toolbar = new Toolbar(this, () => this.tool);
    const help = make("p", { class: "map-live", id: "map-help" }, words("draw-map-keys"));
    const ground2 = make("div", { class: "map-ground", tabindex: 0, role: "application", "aria-label": words("draw-map"), "aria-describedby": "map-help" });
    this.stage.append(ground2, this.furniture.element, this.needle.element, this.toolbar.hint);
    element.classList.add("zone-map");
    element.replaceChildren(make("style", {}, style), this.toolbar.element, this.stage, help, this.live);
    this.map = this.olMap(ground2);
    this.listens(ground2);
    this.dress();
  }

  private olMap(target: HTMLElement): OlMap {
    const projection = new Projection({ code: "plane", units: "m", global: false });
    const view = new View({ projection, center: [0, 0], resolution: 20, minResolution: CLOSEST, maxResolution: WIDEST, enableRotation: false });
    const hands = new Hands(() => this.tool, (touch) => this.hovered(touch));
    const kinetic = matchMedia("(prefers-reduced-motion: reduce)").matches ? undefined : new Kinetic(-0.005, 0.05, 100);
    const duration = this.duration(250);
    return new OlMap({
      target,
      view,
      controls: [],
      interactions: [new DragPan({ kinetic }), new PinchZoom({ duration }), new MouseWheelZoom({ duration }), new DoubleClickZoom({ duration }), hands],
      layers: [this.picture, this.ink],
    });
  }

  private listens(target: HTMLElement): void {
    const { map } = this;
    new Keys(this, target, () => this.tool, map.getView());
    map.on("postrender", () => this.framed());
    map.on("change:size", () => this.fitOnce());
    target.addEventListener("pointerleave", () => this.hovered(null));
    this.ends.push(this.store.listen((state) => this.changed(state)));
    const dark = matchMedia("(prefers-color-scheme: dark)");
    const dress = (): void => this.dress();
    dark.addEventListener("change", dress);
    this.ends.push(() => dark.removeEventListener("change", dress), () => map.setTarget(undefined));
    this.fitOnce();
  }

  /** Listens and draws no longer. */
  end(): void {
    this.ends.forEach((end) => end());
  }

  private dress(): void {
    this.scene.colours = palette(matchMedia("(prefers-color-scheme: dark)").matches);
    this.picture.renew();
    this.redraw();
  }

  private changed(state: State): void {
    const before = this.scene.picked;
    this.scene.read(state);
    if (before !== this.scene.picked) this.tellPick();
    this.toolbar.show();
    this.redraw();
  }

  private framed(): void {
    const { sight } = this.ink;
    if (!sight) return;
    this.furniture.scaled(sight.resolution);
    const one = this.tool.name === "strike" ? this.scene.find(this.scene.picked) : null;
    this.needle.show(one && needleSpot(zoneMiddles(one), sight));
  }

  // --- what others call ---

  show(panel: Panel): void {
    this.scene.take(panel, this.store.state);
    this.toolbar.show();
    this.redraw();
  }

  goToLeg(leg: number): void {
    this.scene.leg = leg;
    const pieces = this.scene.legs.find((one) => one.leg.leg === leg)?.pieces ?? [];
    const boxes = pieces.map((piece) => piece.box).filter((box) => box[0] <= box[2]);
    if (boxes.length > 0) this.look(boxOf(boxes.map(([west, south, east, north]): Point[] => [[west, south], [east, north]])));
    this.redraw();
  }

  pick(key: number | null): void {
    if (key === this.scene.picked) return;
    this.scene.picked = this.scene.find(key)?.key ?? null;
    this.scene.vertex = null;
    if (this.scene.picked === null && ["hole", "join", "strike"].includes(this.tool.name)) this.setTool("pick");
    this.toolbar.show();
    this.redraw();
    this.tellPick();
    const title = this.scene.find(this.scene.picked)?.zone.properties["name"];
    if (key !== null) this.say("draw-say-picked", typeof title === "string" ? title : "");
  }

  private tellPick(): void {
    for (const told of this.picks) told(this.scene.picked);
  }

  onPick(told: (key: number | null) => void): void {
    this.picks.add(told);
  }

  fit(): void {
    if (this.scene.bounds) this.look(this.scene.bounds);
  }

  focus(): void {
    this.stage.querySelector<HTMLElement>(".map-ground")?.focus({ preventScroll: true });
  }

  setTool(name: ToolName): void {
    const tool = this.tools.get(name);
    if (!tool) return;
    this.tool.leave();
    this.tool = tool;
    this.scene.handles = name === "pick";
    tool.enter?.();
    this.toolbar.show();
    this.stage.toggleAttribute("data-draws", name !== "pick");
    this.redraw();
    this.say(tool.hint());
  }

  pointAt(stage: number, at_m: number | null): void {
    this.scene.cursor = at_m === null ? null : { stage, at_m };
    const on = at_m === null ? null : this.scene.way(stage)?.at(at_m);
    this.furniture.points(on?.at ?? null);
    this.redraw();
  }

  onPoint(told: Pointed): void {
    this.points.add(told);
  }

  /** Moves so that a place of the route is in the middle. */
  goTo(stage: number, at_m: number): void {
    const on = this.scene.way(stage)?.at(at_m);
    if (on) this.map.getView().animate({ center: [...on.at], duration: this.duration(300) });
  }

  /** The tool that paints, while it is out. */
  get painter(): PaintTool | null {
    return this.tool.name === "paint" ? (this.tool as PaintTool) : null;
  }

  // --- the bench ---

  redraw(): void {
    this.ink.changed();
    for (const told of this.drawn) told();
  }

  /** Calls back whenever something that is drawn changed. */
  onDrawn(told: () => void): void {
    this.drawn.add(told);
  }

  refresh(): void {
    this.toolbar.show();
  }

  say(key: string, ...figures: string[]): void {
    this.live.textContent = [this.words(key), ...figures].filter(Boolean).join(" · ");
  }

  get size(): readonly number[] {
    return this.map.getSize() ?? [];
  }

  told(at: Point): string {
    return this.furniture.parts(at).join(" · ");
  }

  // --- looking ---

  private duration(milliseconds: number): number {
    return matchMedia("(prefers-reduced-motion: reduce)").matches ? 0 : milliseconds;
  }

  private look(box: Box, duration = this.duration(300)): void {
    const [wide = 0] = this.map.getSize() ?? [];
    const rim = Math.min(56, wide / 10);
    this.map.getView().fit([...box], { padding: [rim, rim, rim + 16, rim], minResolution: 1, duration });
  }

  private fitOnce(): void {
    const [wide = 0, high = 0] = this.map.getSize() ?? [];
    if (this.fitted || wide < 2 || high < 2 || !this.scene.bounds) return;
    this.fitted = true;
    this.look(this.scene.bounds, 0);
  }

  /** Pointing at the route shows the place in the profile too. */
  private hovered(touch: Touch | null): void {
    this.furniture.points(touch?.at ?? null);
    const most = POINTS * (this.ink.sight?.resolution ?? 1);
    const on = touch && nearestOn(this.scene.ways, touch.at, most);
    const before = this.scene.cursor;
    if (on?.stage === before?.stage && on?.at_m === before?.at_m) return;
    this.scene.cursor = on;
    this.redraw();
    for (const told of this.points) told((on ?? before)!.stage, on?.at_m ?? null);
  }
}

/** The needle takes so much room about its middle, pixels. */
const NEEDLE = 106;

/** Well inside the zone where that is seen, and never over the rim of the map. */
function needleSpot(middles: readonly Point[], sight: Sight): Point {
  const seen = middles.map((at) => sight.pixel(at));
  const room = ([x, y]: Point): number => Math.min(x, y, sight.wide - x, sight.high - y);
  const [x, y] = seen.find((at) => room(at) >= NEEDLE) ?? [...seen].sort((a, b) => room(b) - room(a))[0] ?? [sight.wide / 2, sight.high / 2];
  const within = (at: number, most: number): number => Math.min(Math.max(at, NEEDLE), Math.max(NEEDLE, most - NEEDLE));
  return [within(x, sight.wide), within(y, sight.high)];
}

/** In the language of the page. */
function numbersOf(element: HTMLElement): Numbers {
  const language = element.closest("[lang]")?.getAttribute("lang") || document.documentElement.lang || "en";
  const format = new Intl.NumberFormat(language, { maximumFractionDigits: 1, useGrouping: false });
  return { number: (value) => format.format(value), metres: (value) => `${format.format(value)} m` };
}
