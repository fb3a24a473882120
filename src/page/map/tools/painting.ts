/** A zone painted along the route, from one kilometre to another. */

import { make, overtyped } from "../../dom";
import { shown, typed } from "../../number";
import { nearestOn, type OnRoute } from "../geometry/along";
import { corridor } from "../geometry/corridor";
import type { Area } from "../geometry/rings";
import { added } from "./acts";
import type { Bench, Tool, Touch } from "./tool";

/** To each side of the line, metres. Our judgement. */
const HALF_M = 150;
const MOST_HALF_M = 5000;
const FAR = 4;
/** A drag that begins nearer to the route than this paints, farther off it moves the map. */
const NEAR = 2;
/** Kilometres stand in the fields to the nearest ten metres: so much is lost of them at most. */
const ROUNDED_M = 5;

export class PaintTool implements Tool {
  readonly name = "paint";
  private stage: number;
  private from_m: number | null = null;
  private to_m: number | null = null;
  private half_m = HALF_M;
  private form: HTMLElement | null = null;
  /** Where a drag along the route began. */
  private held: OnRoute | null = null;
  private readonly inputs = new Map<string, HTMLInputElement | HTMLSelectElement>();

  constructor(private readonly bench: Bench) {
    this.stage = bench.scene.ways[0]?.stage.stage ?? 1;
  }

  get begun(): boolean {
    return this.from_m !== null;
  }

  get ready(): boolean {
    return this.areas(this.to_m).length > 0;
  }

  hint(): string {
    if (this.bench.scene.ways.length === 0) return "draw-hint-no-route";
    if (this.from_m === null) return "draw-hint-paint";
    return this.ready ? "draw-hint-paint-done" : "draw-hint-paint-to";
  }

  leave(): void {
    [this.from_m, this.to_m, this.form] = [null, null, null];
    this.bench.scene.sketch = null;
  }

  /** The stretch so far, for who shows it elsewhere. */
  get stretch(): { stage: number; from_m: number; to_m: number } | null {
    const { stage, from_m, to_m } = this;
    if (from_m === null || to_m === null) return null;
    return { stage, from_m: Math.min(from_m, to_m), to_m: Math.max(from_m, to_m) };
  }

  tap({ at, reach }: Touch): void {
    const on = nearestOn(this.bench.scene.ways, at, reach * FAR);
    if (!on) return this.bench.say("draw-say-not-on-route");
    if (this.from_m === null || this.to_m !== null || on.stage !== this.stage) this.begin(on);
    else this.go(on);
    this.bench.say("draw-say-kilometre", this.bench.kilometres(on.at_m));
    this.bench.refresh();
  }

  press({ at, reach }: Touch): boolean {
    this.held = nearestOn(this.bench.scene.ways, at, reach * NEAR);
    return this.held !== null;
  }

  drag({ at, reach }: Touch): void {
    const on = this.held && nearestOn(this.bench.scene.ways, at, reach * FAR);
    if (!this.held || !on || on.stage !== this.held.stage || on.at_m === this.held.at_m) return;
    if (this.from_m !== this.held.at_m) this.begin(this.held);
    this.go(on);
  }

  release(): void {
    this.held = null;
    this.bench.refresh();
  }

  hover(touch: Touch | null): void {
    if (this.from_m === null || this.to_m !== null || !touch) return;
    const on = nearestOn(this.bench.scene.ways, touch.at, touch.reach * FAR);
    this.preview(on && on.stage === this.stage ? on.at_m : null);
  }

  begin({ stage, at_m }: OnRoute): void {
    [this.stage, this.from_m, this.to_m] = [stage, at_m, null];
    this.changed();
  }

  go({ stage, at_m }: OnRoute): void {
    if (stage !== this.stage || this.from_m === null) return;
    this.to_m = at_m;
    this.changed();
  }

  private changed(): void {
    this.preview(this.to_m);
    const write = (name: string, value: number | null): void => {
      const input = this.inputs.get(name);
      if (input && input !== document.activeElement) input.value = value === null ? "" : inKilometres(value);
    };
    write("from", this.from_m);
    write("to", this.to_m);
    const stage = this.inputs.get("stage");
    if (stage) stage.value = String(this.stage);
  }

  private areas(to_m: number | null): Area[] {
    if (this.from_m === null || to_m === null) return [];
    const [start, end] = [Math.min(this.from_m, to_m), Math.max(this.from_m, to_m)];
    return corridor(this.bench.scene.way(this.stage)?.between(start, end) ?? [], this.half_m);
  }

  private preview(to_m: number | null): void {
    const { scene } = this.bench;
    const first = this.from_m === null ? null : scene.way(this.stage)?.at(this.from_m);
    scene.sketch = { points: first ? [first.at] : [], next: [], closes: false, areas: this.areas(to_m) };
    this.bench.redraw();
  }

  back(): void {
    if (this.to_m !== null) this.to_m = null;
    else this.from_m = null;
    this.changed();
    this.bench.refresh();
  }

  finish(): void {
    const { store, scene } = this.bench;
    const made = added(store.state, this.areas(this.to_m), scene);
    if (!made) return this.bench.say("draw-say-nothing");
    this.leave();
    store.change("draw-did-paint", () => made.state);
    store.settle();
    this.bench.made(made.key);
  }

  /** Made once: what is typed stays where the map is tapped. */
  fields(): HTMLElement {
    if (this.form) return this.form;
    const { words, scene } = this.bench;
    const field = (name: string, key: string, value: string, unit: string): HTMLElement => {
      const input = overtyped(make("input", { type: "text", inputmode: "decimal", size: 6, autocomplete: "off", value, input: () => this.typed(), change: () => this.written() }));
      this.inputs.set(name, input);
      return make("label", {}, `${words(key)} `, input, ` ${unit}`);
    };
    const stages = scene.ways.map(({ stage }) => make("option", { value: stage.stage }, `${stage.stage} ${stage.name ?? ""}`));
    const choice = make("select", { "aria-label": words("draw-stage"), change: () => this.typed() }, ...stages);
    if (scene.ways.length > 1) this.inputs.set("stage", choice);
    this.form = make(
      "div",
      { class: "map-fields" },
      scene.ways.length > 1 ? choice : null,
      field("from", "draw-from", "", words("draw-unit-km")),
      field("to", "draw-to", "", words("draw-unit-km")),
      field("half", "draw-half-width", shown(this.half_m), words("draw-unit-m")),
    );
    this.changed();
    return this.form;
  }

  private typed(): void {
    const read = (name: string): number | null => {
      const value = typed(this.inputs.get(name)?.value ?? "");
      return typeof value === "number" ? value : null;
    };
    const metres = (km: number | null, most: number): number | null => (km === null ? null : Math.min(most, km * 1000));
    this.stage = read("stage") ?? this.stage;
    const most = lengthOf(this.bench, this.stage);
    [this.from_m, this.to_m] = [metres(read("from"), most), metres(read("to"), most)];
    const half = read("half");
    if (half !== null && half > 0) this.half_m = Math.min(MOST_HALF_M, half);
    this.preview(this.to_m);
    this.bench.refresh();
  }

  /** Who leaves a field sees what is in force where less is than was typed: no kilometre lies behind the last one. */
  private written(): void {
    const cut = (name: string, in_force: number | null, unit: number, says: (value: number) => string): void => {
      const input = this.inputs.get(name);
      const value = typed(input?.value ?? "");
      if (input && in_force !== null && typeof value === "number" && value * unit > in_force + ROUNDED_M) input.value = says(in_force);
    };
    cut("from", this.from_m, 1000, inKilometres);
    cut("to", this.to_m, 1000, inKilometres);
    cut("half", this.half_m, 1, shown);
  }
}

const inKilometres = (metres: number): string => shown(Math.round(metres / 10) / 100);

const lengthOf = (bench: Bench, stage: number): number => bench.scene.way(stage)?.stage.length_m ?? 0;
