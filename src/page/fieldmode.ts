/** On the ice: big targets for what turned out otherwise, the answer in a few lines, all of it taken back by one button. */

import type { Desk, Part } from "./desk";
import { button, fill, make, written } from "./dom";
import type { Ground, Html, Leg, Panel, Planned, Trip, TripDoor, TripRope } from "./door";
import { faultList } from "./faults";
import { Answer, firstOf } from "./fieldanswer";
import { hereIn } from "./fieldhere";
import { type Slot, slots, turnPerson, turnRope } from "./fieldfolk";
import { GapHere } from "./fieldgap";
import { type Field, group, numberField } from "./fields";
import { type Person, people, ropes, withPeople } from "./folk";
import type { State } from "./model";
import { shown, typed, withMember } from "./number";
import { Fold } from "./fold";
import { kilometre } from "./panel";
import { since } from "./since";
import { TakeBack } from "./takeback";
import { Ways } from "./ways";
import { type Place, atHeight, atKilometre } from "./whereami";

/** Who is out is drawn as missing. */
const slotClass = ({ out }: Slot<unknown>): string => `app-button app-big${out ? " app-out" : ""}`;

/** Where somebody said they are: in another language too. */
const typedAt = new WeakMap<Desk, { km: string; height: string }>();

export class FieldMode implements Part {
  readonly element = make("div", { class: "app-field-mode" });
  private readonly answer: Answer;
  private readonly where = make("div", { class: "app-where" });
  private readonly gap: GapHere;
  private readonly folk = make("div", { class: "app-acts" });
  private readonly snow = make("div", { class: "app-acts" });
  private readonly ways: Ways;
  private readonly table = make("div");
  private readonly fold: Fold;
  private readonly back: HTMLButtonElement;
  private readonly typedIn: { km: string; height: string };
  private stage = 1;
  private plan: Planned | null = null;
  /** What it is the plan of. */
  private of: State;
  private offered = "";
  /** The places that are offered. */
  private placed = "";
  private place: Place | null = null;
  private readonly taken = new TakeBack();
  private door: TripDoor | null = null;

  constructor(private readonly desk: Desk) {
    const { words } = desk;
    this.of = desk.store.state;
    this.typedIn = typedAt.get(desk) ?? { km: "", height: "" };
    typedAt.set(desk, this.typedIn);
    this.gap = new GapHere(desk, (did, change, going) => this.change(did, change, going));
    this.fold = new Fold(true, () => desk.ask());
    this.back = button("", () => this.restore(), { class: "app-button app-big app-wide" });
    this.answer = new Answer(words("draw-leg"), this.back);
    this.ways = new Ways(desk, { class: "app-button app-big" });
    this.element.append(
      this.answer.pinned,
      group(words("draw-field-where"), this.places(), this.where),
      this.answer.longer,
      group(words("draw-field-gap"), this.gap.element),
      group(words("draw-field-party"), this.folk, this.ways.element),
      group(words("draw-field-snow"), this.snow),
      this.table,
    );
    this.sync(desk.store.state);
  }

  sync(state: State): void {
    this.taken.come(state);
    this.offerBack(state);
    this.buttons(state);
    this.gap.sync();
    this.ways.sync(state);
  }

  lie(ground: Ground | null): void {
    this.gap.lie(ground);
    this.locate();
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
    else this.refuse(panel);
    const field = this.plan?.parts.find((part) => part.id === "field");
    if (field) this.fold.show(field.title, field.html);
    if ((this.table.firstElementChild !== null) !== !!field) fill(this.table, field ? this.fold.element : null);
  }

  wants(): readonly string[] {
    return this.fold.element.open && !this.element.closest("[hidden]") ? ["field"] : [];
  }

  /** The word and the set-up of the leg here, and what to do there; before anything is said the question. All that is longer stands apart. */
  private tell(plan: Planned): void {
    const { words } = this.desk;
    const leg = this.leg(plan);
    const changes = this.changes();
    const stands = changes.length > 0 ? [...written("div", {}, plan.head).querySelectorAll<HTMLElement>(".stands")] : [];
    if (!leg || !this.place) return this.answer.say([make("p", {}, words(this.placed === "" ? "draw-field-nowhere" : "draw-field-which"))], [...stands, ...changes]);
    const { lines, longer } = hereIn(plan, leg, this.place, this.of, this.desk);
    this.answer.say(lines, [...longer, this.wayTo(leg.told), written("p", {}, leg.told), ...stands, ...changes]);
  }

  /** What to do where there is no plan, and what stands in its way. */
  private refuse({ faults }: Panel): void {
    const [first] = faults;
    if (!first) return;
    const says = written("p", { class: "app-set-up" }, first.says);
    const lines = first.hint === null ? [says] : [make("p", { class: "app-cure" }, firstOf(written("div", {}, first.hint))), says];
    this.answer.say(lines, [faultList(faults.slice(0, 1), this.desk, this.of), this.wayTo(first.hint ?? ""), ...this.changes()]);
  }

  /** Beside what tells of the ways there is one to them. */
  private wayTo(told: Html): HTMLElement | null {
    const name = this.desk.words("draw-ways");
    return told.includes(name) ? this.big(name, () => this.ways.open()) : null;
  }

  /** What was done here, in a few words each. */
  private since(state: State): string[] {
    return since(this.taken.without(state), state, this.desk, this.door);
  }

  /** The way back says what it takes back. */
  private offerBack(state: State): void {
    const said = this.since(state);
    this.back.hidden = said.length === 0;
    fill(this.back, `${this.desk.words("draw-field-back")}: `, make("bdi", {}, said.join(" · ")));
  }

  /** What was done here and is in the plan, in one line. */
  private changes(): HTMLElement[] {
    const said = this.since(this.of);
    return said.length > 0 ? [make("p", { class: "app-since" }, make("bdi", {}, said.join(" · ")))] : [];
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
    this.gap.show(plan, this.of, this.place);
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

  /** Made anew only where they are others: who presses one of them stays there. */
  private buttons(state: State): void {
    const { trip } = state;
    const was = this.taken.without(state);
    const [folk, all] = [slots(people(was.trip), people(trip)), slots(ropes(was.trip), ropes(trip))];
    const sign = JSON.stringify([folk, all, trip.snow, this.door?.terms["snow"]]);
    if (sign === this.offered) return;
    this.offered = sign;
    for (const row of [this.folk, this.snow]) {
      const at = [...row.children].indexOf(document.activeElement ?? row);
      fill(row, ...(row === this.folk ? this.folkButtons(folk, all, was) : this.snowButtons(trip)));
      if (at >= 0) (row.children[Math.min(at, row.children.length - 1)] as HTMLElement | undefined)?.focus();
    }
  }

  private big(text: string, press: () => void, marks = {}): HTMLButtonElement {
    return button(text, press, { class: "app-button app-big", ...marks });
  }

  /** Who was left out stands where they stood, and comes back from there. */
  private folkButtons(folk: readonly Slot<Person>[], all: readonly Slot<TripRope>[], was: State): HTMLButtonElement[] {
    const { words } = this.desk;
    const persons = folk.map((slot, at) => {
      const did = slot.out ? "draw-did-field-join" : "draw-did-field-leave";
      const turn = () => this.change(did, (state) => turnPerson(state, was, slot));
      return this.big(`${slot.out ? "+" : "−"} ${slot.one.name || `${words("draw-person")} ${at + 1}`}`, turn, { class: slotClass(slot) });
    });
    const more = this.big(words("draw-field-one-more"), () => this.join());
    const lines = all.map((slot) => {
      const name = shown(slot.one["name"]) || `${shown(slot.one.length_m)} ${words("draw-unit-m")}`;
      const did = slot.out ? "draw-did-field-rope-again" : "draw-did-field-rope";
      const turn = () => this.change(did, (state) => turnRope(state, slot));
      return this.big(`${slot.out ? "+" : "−"} ${words("draw-field-rope")} ${name}`, turn, { class: slotClass(slot) });
    });
    // Behind the button that lets them in, which stays under the hand.
    const before = people(was.trip).length;
    return [...persons.slice(0, before), more, ...persons.slice(before), ...lines];
  }

  private snowButtons(trip: Trip): HTMLButtonElement[] {
    const press = (name: string) => this.change("draw-did-field-snow", (now) => ({ ...now, trip: withMember(now.trip, "snow", name) }));
    const snows = this.door?.terms["snow"] ?? [];
    return snows.map(({ name, means }) => this.big(means || name, () => press(name), { "aria-pressed": String(trip.snow === name) }));
  }

  private join(): void {
    this.change("draw-did-field-join", (state) => ({ ...state, trip: withPeople(state.trip, [...people(state.trip), { name: "" }]) }));
  }

  private change(did: string, change: (state: State) => State, going = false): void {
    const { store } = this.desk;
    const made = (state: State) => {
      const next = change(state);
      this.taken.add(state, next);
      return next;
    };
    store.change(did, made, going);
  }

  private restore(): void {
    const { store } = this.desk;
    const next = this.taken.without(store.state);
    this.taken.forget();
    store.change("draw-did-field-back", () => next);
    this.folk.querySelector("button")?.focus();
  }
}
