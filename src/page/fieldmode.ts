/** On the ice: big targets for what turned out otherwise, the answer in two lines, all of it undone by one button. */

import { type Desk, type Part, zoneTitle } from "./desk";
import { button, fill, make, written } from "./dom";
import type { Leg, Panel, Planned, Trip, TripDoor, Zone } from "./door";
import { type Field, group, numberField, sliderField } from "./fields";
import { people, ropes, withPeople, withRopes } from "./folk";
import { type Drawn, type State, touched } from "./model";
import { about, shown, typed, withMember } from "./number";
import { badge, fold, kilometre, kilometres } from "./panel";
import { type Place, atHeight, atKilometre } from "./whereami";

/** A zone so near counts as here where none is drawn at the place itself, metres: nobody knows their place better. Our judgement. */
const NEAR_M = 50;
const WIDER = { least: 0, most: 40, step: 0.5 };

export class FieldMode implements Part {
  readonly element = make("div", { class: "app-field-mode" });
  private readonly answer = make("div", { class: "app-answer", role: "status" });
  private readonly where = make("div", { class: "app-where" });
  private readonly gap = make("div");
  private readonly folk = make("div", { class: "app-acts" });
  private readonly snow = make("div", { class: "app-acts" });
  private readonly table = make("div");
  private readonly back: HTMLButtonElement;
  private readonly typedIn = { km: "", height: "" };
  private stage = 1;
  private slider: Field | null = null;
  private sliderOf = "";
  private plan: Planned | null = null;
  /** What it is the plan of. */
  private of: State;
  private offered = "";
  /** The places that are offered. */
  private placed = "";
  private place: Place | null = null;
  private asPlanned: State | null = null;
  private door: TripDoor | null = null;

  constructor(private readonly desk: Desk) {
    const { words } = desk;
    this.of = desk.store.state;
    this.back = button(words("draw-field-back"), () => this.restore(), { class: "app-button app-big app-wide" });
    this.element.append(
      this.answer,
      this.back,
      group(words("draw-field-where"), this.places(), this.where),
      group(words("draw-field-gap"), this.gap),
      group(words("draw-field-party"), this.folk),
      group(words("draw-field-snow"), this.snow),
      this.table,
    );
    this.sync(desk.store.state);
  }

  sync(state: State): void {
    // Who took everything back by steps is there already.
    if (state === this.asPlanned) this.asPlanned = null;
    this.back.hidden = this.asPlanned === null;
    this.buttons(state);
    this.slider?.sync();
  }

  know(door: TripDoor): void {
    this.door = door;
    this.buttons(this.desk.store.state);
  }

  show(panel: Panel, _: Planned | null, of: State): void {
    this.plan = "verdict" in panel ? panel : null;
    this.of = of;
    this.locate();
    if (this.plan) this.tell(this.plan);
    else this.say(panel.faults.slice(0, 2).map((fault) => written("p", {}, fault.says)));
    const field = this.plan?.parts.find((part) => part.id === "field");
    fill(this.table, field ? fold(field.title, field.html, true) : null);
  }

  /** Two lines: the word and the set-up of the leg here; the worst of the whole where no place is given. */
  private tell(plan: Planned): void {
    const leg = this.leg(plan);
    if (!leg) {
      return this.say([make("p", {}, badge(plan.verdict, this.desk)), make("p", {}, this.desk.words(this.placed === "" ? "draw-field-nowhere" : "draw-field-which"))]);
    }
    const title = written("p", { class: "app-set-up" }, leg.title);
    this.say([make("p", {}, badge(leg.verdict, this.desk), ` ${kilometres(leg, this.desk)}`), title]);
  }

  /** What stands there already is not said again. */
  private say(lines: readonly HTMLElement[]): void {
    const same = lines.map((line) => line.outerHTML).join("") === this.answer.innerHTML;
    if (!same) fill(this.answer, ...lines);
  }

  private leg(plan: Planned): Leg | null {
    const { place } = this;
    if (!place) return null;
    return plan.legs.find((leg) => leg.stage === place.stage && place.at_m >= leg.start_m && place.at_m <= leg.end_m) ?? null;
  }

  private places(): HTMLElement {
    const { words } = this.desk;
    const value = (name: "km" | "height", other: "km" | "height") => ({
      get: () => this.typedIn[name],
      set: (text: string) => {
        this.typedIn[name] = text;
        if (text !== "") this.typedIn[other] = "";
        for (const field of fields) field.sync();
        this.locate();
        if (this.plan) this.tell(this.plan);
      },
      settle: () => {},
    });
    const fields: Field[] = [
      numberField(words("draw-field-km"), words("draw-unit-km"), value("km", "height")),
      numberField(words("draw-field-height"), words("draw-unit-m"), value("height", "km")),
    ];
    return make("div", { class: "app-row" }, ...fields.map((field) => field.element));
  }

  /** Finds the place again; a height may fit several, which are then offered. */
  private locate(): void {
    const { plan } = this;
    const [km, height] = [typed(this.typedIn.km), typed(this.typedIn.height)];
    const found: readonly Place[] = !plan
      ? []
      : typeof km === "number"
        ? atKilometre(plan, km, this.stage)
        : typeof height === "number"
          ? atHeight(plan, height)
          : [];
    // One of several places of a height is not taken for the one where somebody is.
    const only = found.length === 1 || typeof km === "number" ? found[0] : undefined;
    const same = found.find((one) => one.stage === this.place?.stage && Math.abs(one.at_m - this.place.at_m) < 50);
    this.place = plan ? (same ?? only ?? null) : this.place;
    this.offer(found);
    this.buildGap();
  }

  private offer(found: readonly Place[]): void {
    const { words } = this.desk;
    if (found.length < 2) {
      this.placed = "";
      const wrong = this.plan && found.length === 0 && (this.typedIn.km || this.typedIn.height);
      fill(this.where, wrong ? make("p", {}, words("draw-field-not-there")) : null);
      return;
    }
    const sign = JSON.stringify(found);
    if (sign !== this.placed) fill(this.where, make("div", { class: "app-acts" }, ...found.map((place) => this.choice(place))));
    this.placed = sign;
    const buttons = this.where.querySelectorAll("button");
    found.forEach((place, at) => buttons[at]?.setAttribute("aria-pressed", String(place === this.place)));
  }

  private choice(place: Place): HTMLButtonElement {
    const press = () => {
      this.place = place;
      this.stage = place.stage;
      this.locate();
      if (this.plan) this.tell(this.plan);
    };
    const { words } = this.desk;
    const several = new Set(this.plan?.legs.map((leg) => leg.stage)).size > 1;
    const stage = several ? `${words("draw-stage")} ${place.stage}, ` : "";
    return this.big(`${stage}${kilometre(place.at_m, this.desk)} ${words("draw-unit-km")}`, press);
  }

  /** The zones at the place, else the nearest one close by. What lies farther along the leg nobody has seen from here. */
  private zonesHere(): Drawn[] {
    const { plan, place } = this;
    if (!plan || !place) return [];
    const away = ({ crossings }: Zone) =>
      Math.min(...crossings.filter((c) => c.stage === place.stage).map((c) => Math.max(c.enter_m - place.at_m, place.at_m - c.exit_m, 0)));
    const near = plan.zones.map((zone) => ({ zone, far: away(zone) })).filter(({ far }) => far <= NEAR_M);
    const here = near.filter(({ far }) => far === 0);
    const found = here.length > 0 ? here : near.sort((a, b) => a.far - b.far).slice(0, 1);
    return found.flatMap(({ zone }) => this.of.zones[zone.feature - 1] ?? []);
  }

  private buildGap(): void {
    const { words, store } = this.desk;
    if (this.gap.contains(document.activeElement)) return;
    const here = this.zonesHere();
    const keys = here.map((zone) => zone.key);
    if (this.slider && keys.join() === this.sliderOf) return;
    this.sliderOf = keys.join();
    const zones = () => store.state.zones.filter((zone) => keys.includes(zone.key));
    const value = {
      get: () => shown(widest(zones())),
      set: (text: string, going: boolean) => this.change("draw-did-field-gap", (state) => withGap(state, keys, text), going),
      settle: () => store.settle(),
    };
    this.slider = keys.length > 0 ? sliderField(words("draw-field-gap-here"), words("draw-unit-m"), words("draw-not-given"), value, WIDER) : null;
    const names = here.map((zone) => make("p", {}, make("bdi", {}, zoneTitle(this.of, zone, words))));
    fill(this.gap, ...names, this.slider?.element ?? make("p", { class: "app-quiet" }, words("draw-field-no-zone")));
  }

  /** Made anew only where they are others: who presses one of them stays there. */
  private buttons({ trip }: State): void {
    const sign = JSON.stringify([people(trip), ropes(trip), trip.snow, this.door?.terms["snow"]]);
    if (sign === this.offered) return;
    this.offered = sign;
    for (const row of [this.folk, this.snow]) {
      const at = [...row.children].indexOf(document.activeElement ?? row);
      fill(row, ...(row === this.folk ? this.folkButtons(trip) : this.snowButtons(trip)));
      if (at >= 0) (row.children[Math.min(at, row.children.length - 1)] as HTMLElement | undefined)?.focus();
    }
  }

  private big(text: string, press: () => void, marks = {}): HTMLButtonElement {
    return button(text, press, { class: "app-button app-big", ...marks });
  }

  private folkButtons(trip: Trip): HTMLButtonElement[] {
    const { words } = this.desk;
    const fewer = people(trip).map((person, at) => this.big(`− ${person.name || `${words("draw-person")} ${at + 1}`}`, () => this.leave(at)));
    const more = this.big(words("draw-field-one-more"), () => this.join());
    const all = ropes(trip);
    const lost = all.map((rope, at) => {
      const name = shown(rope["name"]) || `${shown(rope.length_m)} ${words("draw-unit-m")}`;
      return this.big(`${words("draw-field-rope-lost")} ${name}`, () => this.lose(at));
    });
    // A trip that names no rope is held against none: the plan would look better without the last one.
    return [...fewer, more, ...(all.length > 1 ? lost : [])];
  }

  private snowButtons(trip: Trip): HTMLButtonElement[] {
    const press = (name: string) => this.change("draw-did-field-snow", (now) => ({ ...now, trip: withMember(now.trip, "snow", name) }));
    const snows = this.door?.terms["snow"] ?? [];
    return snows.map(({ name, means }) => this.big(means || name, () => press(name), { "aria-pressed": String(trip.snow === name) }));
  }

  private leave(at: number): void {
    this.change("draw-did-field-leave", (state) => {
      const folk = people(state.trip).filter((_, i) => i !== at);
      return { ...state, trip: withPeople(state.trip, folk) };
    });
  }

  private join(): void {
    this.change("draw-did-field-join", (state) => ({ ...state, trip: withPeople(state.trip, [...people(state.trip), { name: "" }]) }));
  }

  private lose(at: number): void {
    this.change("draw-did-field-rope", (state) => ({ ...state, trip: withRopes(state.trip, ropes(state.trip).filter((_, i) => i !== at)) }));
  }

  private change(did: string, change: (state: State) => State, going = false): void {
    this.asPlanned ??= this.desk.store.state;
    this.desk.store.change(did, change, going);
  }

  private restore(): void {
    const { asPlanned } = this;
    this.asPlanned = null;
    if (asPlanned) this.desk.store.change("draw-did-field-back", () => asPlanned);
    this.folk.querySelector("button")?.focus();
  }
}

/** The widest gap of zones, as it stands there. */
function widest(zones: readonly Drawn[]): unknown {
  const values = zones.map(({ properties }) => properties["gap_max_m"] ?? properties["gap_m"]);
  return values.reduce((a, b) => ((about(b) ?? -1) > (about(a) ?? -1) ? b : a), undefined);
}

/** The state with that gap in the zones; a range keeps its lower end where it lies below. */
function withGap(state: State, keys: readonly number[], text: string): State {
  const value = typed(text);
  return keys.reduce(
    (now, key) =>
      touched(now, key, ({ properties }) => {
        const name = "gap_max_m" in properties ? "gap_max_m" : "gap_m";
        const low = about(properties["gap_min_m"]);
        const given = withMember(withMember(properties, name, value), "gap_assumed", undefined);
        const under = low !== null && typeof value === "number" && low > value;
        return { properties: under ? withMember(given, "gap_min_m", undefined) : given };
      }),
    state,
  );
}
