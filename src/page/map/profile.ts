/** The height profile of a stage with legs on it and zones under it; what is pointed at there is pointed at on the map. */

import { make } from "../dom";
import type { Ground, Panel } from "../door";
import type { Words } from "../words";
import type { ZoneMap } from "./map";
import type { Shown } from "./ink-bands";
import { drawProfile } from "./ink-profile";
import { Ruler, type Sample } from "./ruler";

export interface ProfileOptions {
  readonly ground: Ground;
  readonly words: Words;
  readonly map: ZoneMap;
}

type Pointed = (stage: number, at_m: number | null) => void;

export class ProfileStrip {
  private readonly canvas = make("canvas", {});
  private readonly strip: HTMLElement;
  private readonly choice: HTMLSelectElement;
  private readonly points = new Set<Pointed>();
  private stage: number;
  private at_m: number | null = null;
  private samples = new Map<number, readonly Sample[]>();
  private pending = 0;
  private size: readonly [wide: number, high: number] = [0, 0];
  private measure: Ruler | null = null;
  /** All that the last drawing hangs on. */
  private drawn: readonly unknown[] = [];
  private readonly watch = new ResizeObserver(([entry]) => {
    if (entry) this.size = [Math.round(entry.contentRect.width), Math.round(entry.contentRect.height)];
    this.soon();
  });

  constructor(private readonly element: HTMLElement, private readonly options: ProfileOptions) {
    const { ground, words, map } = options;
    this.stage = ground.stages[0]?.stage ?? 1;
    this.strip = make("div", { class: "profile-strip", tabindex: 0, role: "slider", "aria-label": words("draw-profile"), "aria-valuemin": 0, "aria-valuenow": 0 }, this.canvas);
    const choices = ground.stages.map(({ stage, name }) => make("option", { value: stage }, `${stage} ${name ?? ""}`));
    this.choice = make("select", { "aria-label": words("draw-stage"), hidden: ground.stages.length < 2, change: () => this.turn(Number(this.choice.value)) }, ...choices);
    element.classList.add("zone-profile");
    element.replaceChildren(this.choice, this.strip);
    element.hidden = ground.stages.length === 0;
    for (const stage of ground.stages) {
      const last = stage.runs.at(-1);
      const runs = stage.runs.flatMap((run): Sample[] => [...run.map((spot): Sample => [spot[2], spot[3]]), ...(run === last ? [] : [[run.at(-1)?.[2] ?? 0, null] as const])]);
      this.samples.set(stage.stage, runs);
    }
    this.listen(map);
    this.watch.observe(this.strip);
    this.told();
  }

  private listen(map: ZoneMap): void {
    map.onDrawn(() => this.soon());
    const { strip } = this;
    strip.addEventListener("pointerdown", (event) => this.down(event));
    strip.addEventListener("pointermove", (event) => this.move(event));
    strip.addEventListener("pointerup", (event) => this.up(event));
    strip.addEventListener("pointerleave", (event) => {
      if (event.pointerType === "mouse" && !strip.hasPointerCapture(event.pointerId)) this.point(null);
    });
    strip.addEventListener("keydown", (event) => this.key(event));
  }

  /** Listens no longer. */
  end(): void {
    this.watch.disconnect();
  }

  show(panel: Panel): void {
    // Kept where they are the same, and with them what was drawn of them.
    if ("profiles" in panel) for (const { stage, samples } of panel.profiles) if (!alike(samples, this.samples.get(stage))) this.samples.set(stage, samples);
    // What is read of the place that is pointed at is of the new plan too.
    if (this.at_m !== null) this.told();
    this.soon();
  }

  pointAt(stage: number, at_m: number | null): void {
    if (at_m !== null && stage !== this.stage) this.turn(stage);
    if (stage === this.stage) this.at_m = at_m;
    this.told();
    this.soon();
  }

  onPoint(told: Pointed): void {
    this.points.add(told);
  }

  private turn(stage: number): void {
    [this.stage, this.at_m] = [stage, null];
    this.choice.value = String(stage);
    this.soon();
  }

  private point(at_m: number | null): void {
    this.pointAt(this.stage, at_m);
    for (const told of this.points) told(this.stage, at_m);
  }

  // --- hand and keys ---

  /** Made anew where heights, stage or size are others: to ask an element for its size is slow. */
  private get ruler(): Ruler {
    const samples = this.samples.get(this.stage) ?? [];
    const [wide, high] = this.size;
    const { measure } = this;
    if (measure?.samples === samples && measure.wide === wide && measure.high === high) return measure;
    const length = this.options.map.scene.way(this.stage)?.stage.length_m ?? 0;
    return (this.measure = new Ruler(samples, length, wide, high));
  }

  private at(event: PointerEvent): number {
    return this.ruler.metres(event.clientX - this.strip.getBoundingClientRect().left);
  }

  private down(event: PointerEvent): void {
    this.strip.setPointerCapture(event.pointerId);
    const at_m = this.at(event);
    this.options.map.painter?.begin({ stage: this.stage, at_m });
    this.point(at_m);
    this.start = event.clientX;
  }

  private start = 0;

  private move(event: PointerEvent): void {
    const held = this.strip.hasPointerCapture(event.pointerId);
    if (!held && event.pointerType !== "mouse") return;
    const at_m = this.at(event);
    if (held) this.options.map.painter?.go({ stage: this.stage, at_m });
    this.point(at_m);
  }

  /** A tap moves the map; a drag only points, or paints. */
  private up(event: PointerEvent): void {
    const { map } = this.options;
    // A finger that has painted points at nothing any more.
    if (map.painter && event.pointerType !== "mouse") this.point(null);
    if (map.painter) map.refresh();
    else if (Math.abs(event.clientX - this.start) < 6) map.goTo(this.stage, this.at(event));
  }

  private key(event: KeyboardEvent): void {
    const length = this.options.map.scene.way(this.stage)?.stage.length_m ?? 0;
    const step = (event.shiftKey ? 0.05 : 0.005) * length;
    const now = this.at_m ?? 0;
    const next = { ArrowLeft: now - step, ArrowDown: now - step, ArrowRight: now + step, ArrowUp: now + step, PageUp: now + 10 * step, PageDown: now - 10 * step, Home: 0, End: length }[event.key];
    if (event.key === "Enter" && this.isEnd) this.options.map.painter?.finish();
    else if (event.key === "Enter" && this.at_m !== null) this.entered(this.at_m);
    else if (event.key === "Escape") this.point(null);
    else if (next === undefined) return;
    else this.point(Math.min(length, Math.max(0, next)));
    event.preventDefault();
  }

  /** Whether a stretch was painted and nobody points elsewhere since. */
  private get isEnd(): boolean {
    const stretch = this.options.map.painter?.stretch;
    if (!stretch) return false;
    const { from_m, to_m } = stretch;
    return this.at_m === null || [from_m, to_m].some((end) => Math.abs(end - this.at_m!) < 1);
  }

  /** While the painter is out: where it begins, then where it ends. */
  private entered(at_m: number): void {
    const { map } = this.options;
    const place = { stage: this.stage, at_m };
    if (!map.painter) map.goTo(this.stage, at_m);
    else if (!map.painter.begun || map.painter.stretch) map.painter.begin(place);
    else map.painter.go(place);
    map.refresh();
  }

  private told(): void {
    const { map, words } = this.options;
    const length = map.scene.way(this.stage)?.stage.length_m ?? 0;
    const at = this.at_m;
    this.strip.setAttribute("aria-valuemax", (length / 1000).toFixed(2));
    this.strip.setAttribute("aria-valuenow", ((at ?? 0) / 1000).toFixed(2));
    const verdict = at === null ? null : map.scene.verdictAt({ stage: this.stage, at_m: at });
    const height = at === null ? null : this.ruler.height(at);
    const parts = at === null ? ["–"] : [`${map.kilometres(at)} ${words("draw-unit-km")}`, height === null ? "" : `${Math.round(height)} ${words("draw-unit-m")}`, verdict ? words(`draw-verdict-${verdict}`) : ""];
    this.strip.setAttribute("aria-valuetext", parts.filter(Boolean).join(" · "));
  }

  private soon(): void {
    this.pending ||= requestAnimationFrame(() => {
      this.pending = 0;
      this.draw();
    });
  }

  private draw(): void {
    const { map, words } = this.options;
    const density = devicePixelRatio || 1;
    const { canvas, ruler } = this;
    const language = this.element.closest("[lang]")?.getAttribute("lang") || document.documentElement.lang || "en";
    const shown: Shown = { scene: map.scene, stage: this.stage, at_m: this.at_m, painted: map.painter?.stretch ?? null, language, words, density };
    const { painted } = shown;
    // Without a plan zones stand in it as they are drawn.
    const signs = [ruler, map.scene.plan ?? map.scene.shapes, map.scene.here, map.scene.colours, this.stage, this.at_m, painted?.stage, painted?.from_m, painted?.to_m, language, density];
    // Nothing of it changed.
    if (signs.every((sign, at) => sign === this.drawn[at])) return;
    const [wide, high] = [Math.round(ruler.wide * density), Math.round(ruler.high * density)];
    if (wide < 2 || high < 2) return;
    if (canvas.width !== wide || canvas.height !== high) [canvas.width, canvas.height] = [wide, high];
    const pen = canvas.getContext("2d");
    if (!pen) return;
    pen.setTransform(density, 0, 0, density, 0, 0);
    pen.clearRect(0, 0, ruler.wide, ruler.high);
    drawProfile(pen, ruler, shown);
    this.drawn = signs;
  }
}

const alike = (some: readonly Sample[], others: readonly Sample[] = []): boolean =>
  some.length === others.length && some.every(([at_m, height], index) => others[index]?.[0] === at_m && others[index]?.[1] === height);
