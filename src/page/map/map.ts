/** The map: ground, ice, zones and legs, and the tools that draw on it. */

import type OlMap from "ol/Map";
import { make } from "../dom";
import type { Ground, Panel } from "../door";
import type { State, Store } from "../model";
import type { Words } from "../words";
import { numbersOf } from "./figures";
import { Furniture, zoomButtons } from "./furniture";
import type { Point } from "./geometry/rings";
import { nearestOn, type OnRoute } from "./geometry/along";
import { Hands } from "./hands";
import { InkLayer } from "./ink";
import { zoneMiddles } from "./ink-zones";
import { Keys } from "./keys";
import style from "./map.css";
import { legend } from "./legend";
import { Looks } from "./looks";
import { Needle, needleSpot } from "./needle";
import { Note } from "./note";
import { palette } from "./palette";
import { PictureLayer } from "./picture";
import { lasting, planeMap, scaleBy } from "./plane";
import { Scene } from "./scene";
import { Toolbar } from "./toolbar";
import { toolsOf } from "./tools/all";
import type { PaintTool } from "./tools/painting";
import { zonesAt } from "./tools/picking";
import { MAKES, type Board, type Tool, type ToolName, type Touch } from "./tools/tool";

export interface MapOptions {
  readonly store: Store;
  readonly ground: Ground;
  readonly words: Words;
  /** A tap is meant for a zone rather than for a label on it. */
  readonly zonesFirst?: () => boolean;
}

/** The route is pointed at from so near, pixels. */
const POINTS = 24;
type Pointed = (stage: number, at_m: number | null) => void;

export class ZoneMap implements Board {
  readonly store: Store;
  readonly words: Words;
  readonly scene: Scene;
  readonly kilometres: (at_m: number) => string;
  follow = true;
  private readonly map: OlMap;
  private readonly ink: InkLayer;
  private readonly picture: PictureLayer;
  private readonly furniture: Furniture;
  private readonly needle: Needle;
  private readonly note: Note;
  private readonly toolbar: Toolbar;
  private readonly live = make("div", { class: "map-live", role: "status" });
  private readonly tools: ReadonlyMap<ToolName, Tool>;
  private tool: Tool;
  private readonly picks = new Set<(key: number | null) => void>();
  private readonly points = new Set<Pointed>();
  private readonly drawn = new Set<() => void>();
  private readonly ends: (() => void)[] = [];
  private readonly stage = make("div", { class: "map-stage" });
  private readonly zonesFirst: () => boolean;
  private readonly makes = new Set<() => void>();
  private readonly looks: Looks;

  constructor(element: HTMLElement, { store, ground, words, zonesFirst }: MapOptions) {
    [this.store, this.words, this.zonesFirst] = [store, words, zonesFirst ?? (() => false)];
    this.scene = new Scene(ground, store.state);
    this.tools = toolsOf(this);
    this.tool = this.tools.get("pick")!;
    const numbers = numbersOf(element, words);
    this.kilometres = numbers.kilometres;
    this.ink = new InkLayer(this.scene, numbers, () => matchMedia("(pointer: coarse)").matches);
    this.picture = new PictureLayer(this.scene);
    this.furniture = new Furniture(this.scene, words, numbers);
    this.needle = new Needle(this);
    this.note = new Note(words, () => this.focus());
    this.toolbar = new Toolbar(this, () => this.tool);
    const help = make("p", { class: "map-live", id: "map-help" }, words("draw-map-keys"));
    const target = make("div", { class: "map-ground", tabindex: 0, role: "application", "aria-label": words("draw-map"), "aria-describedby": "map-help" });
    this.stage.append(target, this.furniture.element, this.needle.element, this.toolbar.hint, zoomButtons(this.words, (by) => this.scaleBy(by)), this.note.element);
    element.classList.add("zone-map");
    element.replaceChildren(make("style", {}, style), this.toolbar.element, this.stage, help, this.live);
    const hands = new Hands(() => this.tool, (touch) => this.tapped(touch), (touch) => this.hovered(touch));
    this.map = planeMap(target, [this.picture, this.ink], hands, lasting(250));
    this.looks = new Looks(this.map, this.scene, this.stage);
    this.listens(target);
    this.dress();
  }

  private listens(target: HTMLElement): void {
    const { map } = this;
    new Keys(this, target, () => this.tool, map.getView());
    map.on("postrender", () => this.framed());
    map.on("change:size", () => this.looks.sized());
    target.addEventListener("pointerleave", () => this.hovered(null));
    this.ends.push(this.store.listen((state) => this.changed(state)));
    const dark = matchMedia("(prefers-color-scheme: dark)");
    const dress = (): void => this.dress();
    dark.addEventListener("change", dress);
    this.ends.push(() => dark.removeEventListener("change", dress), () => map.setTarget(undefined));
    this.looks.once();
  }

  /** Listens and draws no longer. */
  end(): void {
    this.stage.closest(".app-body")?.removeAttribute("data-draws");
    this.ends.forEach((end) => end());
  }

  private dress(): void {
    this.scene.colours = palette(matchMedia("(prefers-color-scheme: dark)").matches);
    this.picture.renew();
    this.redraw();
  }

  private changed(state: State): void {
    const { picked, shapes } = this.scene;
    const moved = this.scene.read(state);
    if (picked !== this.scene.picked) this.tellPick();
    this.toolbar.show();
    // Outlines and the needle follow the hand; figures come with their plan, which is better than twice.
    if (moved || this.tool.name === "strike") this.redraw();
    else if (shapes !== this.scene.shapes) this.ink.soon();
  }

  private framed(): void {
    const { sight } = this.ink;
    if (!sight) return;
    this.furniture.scaled(sight.resolution);
    const one = this.tool.name === "strike" ? this.scene.find(this.scene.picked) : null;
    this.needle.show(one && needleSpot(zoneMiddles(one), sight));
  }

  /** The plan of a state, which may be an older one than what is drawn now. */
  show(panel: Panel, of: State): void {
    this.scene.take(panel, of);
    this.note.outdated();
    this.toolbar.show();
    this.redraw();
  }

  goToLeg(leg: number): void {
    this.scene.leg = leg;
    this.looks.over((this.scene.legs.find((one) => one.leg.leg === leg)?.pieces ?? []).map((piece) => piece.box));
    this.redraw();
  }

  pick(key: number | null): void {
    if (key === this.scene.picked) return;
    if (key !== null && MAKES.includes(this.tool.name)) this.setTool("pick");
    this.scene.picked = this.scene.find(key)?.key ?? null;
    if (this.scene.picked !== this.looks.newest) this.looks.newest = null;
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

  made(key: number): void {
    this.setTool("pick");
    this.looks.newest = key;
    this.pick(key);
    this.looks.sized();
    for (const told of this.makes) told();
  }

  /** Calls back whenever a zone was made here. */
  onMade(told: () => void): void {
    this.makes.add(told);
  }

  fit(): void {
    if (this.scene.bounds) this.looks.at(this.scene.bounds);
  }

  focus(): void {
    this.stage.querySelector<HTMLElement>(".map-ground")?.focus({ preventScroll: true });
  }

  scaleBy(times: number): void {
    scaleBy(this.map, times, lasting(200));
  }

  legend(): void {
    this.note.showOwn(legend(this.scene.colours, this.words));
  }

  setTool(name: ToolName): void {
    const tool = this.tools.get(name);
    if (!tool) return;
    this.note.show(null);
    this.tool.leave();
    this.tool = tool;
    // What is drawn is another zone: none is picked meanwhile.
    if (MAKES.includes(name)) this.pick(null);
    this.scene.handles = name === "pick";
    tool.enter?.();
    this.toolbar.show();
    for (const one of [this.stage, this.stage.closest(".app-body")]) one?.toggleAttribute("data-draws", name !== "pick");
    this.redraw();
    this.say(tool.hint());
  }

  pointAt(stage: number, at_m: number | null): void {
    this.scene.cursor = at_m === null ? null : { stage, at_m };
    this.furniture.points((at_m === null ? null : this.scene.way(stage)?.at(at_m))?.at ?? null);
    this.redraw();
  }

  /** Marks where somebody is. */
  mark(here: OnRoute | null): void {
    this.scene.here = here;
    this.redraw();
  }

  onPoint(told: Pointed): void {
    this.points.add(told);
  }

  /** Moves so that a place of the route is in the middle. */
  goTo(stage: number, at_m: number): void {
    const on = this.scene.way(stage)?.at(at_m);
    if (on) this.map.getView().animate({ center: [...on.at], duration: lasting(300) });
  }

  /** The tool that paints, while it is out. */
  get painter(): PaintTool | null {
    return this.tool.name === "paint" ? (this.tool as PaintTool) : null;
  }

  redraw(): void {
    this.stage.toggleAttribute("data-picked", this.scene.picked !== null);
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

  /** A label tells what it stands for; beside labels the tool acts. */
  tapped(touch: Touch): void {
    const { sight, labels } = this.ink;
    const another = this.zonesFirst() && zonesAt(this.scene, touch.at).some((one) => one.key !== this.scene.picked);
    const asks = this.tool.name === "pick" && !another && !this.tool.claims?.(touch);
    const told = asks && sight ? labels?.toldAt(sight.pixel(touch.at), Math.max(0, touch.reach * sight.scale - 9)) : null;
    this.note.show(told ?? null);
    if (!told) this.tool.tap(touch);
  }

  /** Closes what is told; whether there was something. */
  untold(): boolean {
    const { open } = this.note;
    this.note.show(null);
    return open;
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
