/** The panel of the trip: who goes, with which ropes, when and how, and the figures of the rules. */

import { Assumptions } from "./assume";
import type { Desk, Part } from "./desk";
import { button, fill, make } from "./dom";
import type { Trip, TripDoor, TripRope } from "./door";
import { goesOnByEnter } from "./enter";
import { type Field, type Value, choiceField, group, numberField, textField } from "./fields";
import { type Person, changed, people, ropes, withPeople, withRopes, without } from "./folk";
import type { State } from "./model";
import { shown, typed, withMember } from "./number";
import { Ways } from "./ways";
import { keyOf } from "./words";

/** Members that are texts, with how they look. */
const DAY = [
  ["date", "2027-08-21"],
  ["utc_offset", "+02:00"],
  ["start", "04:30"],
  ["bridges_until", "10:00"],
  ["back_by", "16:00"],
] as const;

/** Members that are one of some words. */
const WORDS = ["travel", "snow", "knots", "undrawn_ice", "cover", "reserve", "pace"] as const;

/** What is listed in rows, each with its members: their words, and the unit of those that are numbers. */
interface Rows<One> {
  readonly name: string;
  readonly of: (trip: Trip) => readonly One[];
  readonly put: (trip: Trip, all: readonly One[]) => Trip;
  readonly members: readonly (readonly [name: string, words: string, unit: string | null])[];
}

const PEOPLE: Rows<Person> = {
  name: "person",
  of: people,
  put: withPeople,
  members: [["name", "draw-person", null], ["mass_kg", "draw-person-mass", "draw-unit-kg"]],
};
const ROPES: Rows<TripRope> = {
  name: "rope",
  of: ropes,
  put: withRopes,
  members: [["name", "draw-rope-name", null], ["length_m", "draw-rope-length", "draw-unit-m"], ["diameter_mm", "draw-rope-diameter", "draw-unit-mm"]],
};

export class TripForm implements Part {
  readonly element = make("div", { class: "app-trip" });
  private readonly folk = make("div", { class: "app-rows" });
  private readonly ropes = make("div", { class: "app-rows" });
  private readonly chosen = make("div");
  private readonly assumptions: Assumptions;
  private readonly ways: Ways;
  private fixed: Field[] = [];
  private rows: Field[] = [];
  private choices: Field[] = [];
  private built = "";
  /** The trip that the fields show. */
  private of: Trip | null = null;

  constructor(private readonly desk: Desk) {
    const { words } = desk;
    this.assumptions = new Assumptions(desk);
    this.ways = new Ways(desk);
    const add = (name: string, rows: HTMLElement, press: () => void) => {
      const more = button(words(name), press);
      goesOnByEnter(rows, () => more.focus());
      return more;
    };
    this.element.append(
      group(words("draw-people"), this.folk, add("draw-person-add", this.folk, () => this.addPerson())),
      group(words("draw-ropes"), this.ropes, add("draw-rope-add", this.ropes, () => this.addRope())),
      this.ways.element,
      group(words("draw-day"), this.keep(textField(words("draw-trip-name"), this.text("name"))), make("div", { class: "app-columns" }, ...this.day())),
      group(words("draw-how"), this.chosen, this.keep(this.gap())),
      this.assumptions.element,
    );
    this.sync(desk.store.state);
  }

  sync(state: State): void {
    this.ways.sync(state);
    if (state.trip === this.of) return;
    this.of = state.trip;
    const kind = `${people(state.trip).length} ${ropes(state.trip).length}`;
    if (kind !== this.built) this.build(state.trip, kind);
    for (const field of [...this.fixed, ...this.rows, ...this.choices]) field.sync();
    this.assumptions.sync(state);
  }

  know(door: TripDoor): void {
    if (this.choices.length === 0) this.choose(door);
    this.assumptions.know(door);
  }

  private choose(door: TripDoor): void {
    const { words } = this.desk;
    const named = door.practices.map(({ name, means }) => ({ name, means: means ? `${name}: ${means}` : name }));
    const of = (name: string) => choiceField(words(keyOf("draw-trip", name)), door.terms[name] ?? [], words("draw-not-given"), this.text(name));
    const known = WORDS.filter((name) => door.terms[name]);
    this.choices = [choiceField(words("draw-trip-practice"), named, words("draw-not-given"), this.text("practice")), ...known.map(of)];
    fill(this.chosen, ...this.choices.map((field) => field.element));
  }

  private keep(field: Field): HTMLElement {
    this.fixed.push(field);
    return field.element;
  }

  private day(): HTMLElement[] {
    return DAY.map(([name, looks]) =>
      this.keep(textField(this.desk.words(keyOf("draw-trip", name)), this.text(name), { placeholder: looks })),
    );
  }

  private gap(): Field {
    const { words } = this.desk;
    const value = this.value("draw-did-trip", (trip) => shown(trip.gap_m), (trip, text) => withMember(trip, "gap_m", typed(text)));
    return numberField(words("draw-trip-gap-m"), words("draw-unit-m"), value);
  }

  private text(name: string): Value {
    const set = (trip: Trip, text: string) => withMember(trip, name, text === "" ? undefined : text);
    return this.value("draw-did-trip", (trip) => shown(trip[name]), set);
  }

  private value(did: string, get: (trip: Trip) => string, set: (trip: Trip, text: string) => Trip): Value {
    const { store } = this.desk;
    return {
      get: () => get(store.state.trip),
      set: (text, going) => this.change(did, (trip) => set(trip, text), going),
      settle: () => store.settle(),
    };
  }

  private change(did: string, change: (trip: Trip) => Trip, going = false): void {
    this.desk.store.change(
      did,
      (state) => {
        const trip = change(state.trip);
        return trip === state.trip ? state : { ...state, trip };
      },
      going,
    );
  }

  private build(trip: Trip, kind: string): void {
    this.built = kind;
    this.rows = [];
    fill(this.folk, ...people(trip).map((_, at) => this.row(PEOPLE, this.folk, at)));
    fill(this.ropes, ...ropes(trip).map((_, at) => this.row(ROPES, this.ropes, at)));
  }

  private row<One extends object>(kind: Rows<One>, rows: HTMLElement, at: number): HTMLElement {
    const { words } = this.desk;
    const [did, drops] = [`draw-did-${kind.name}`, `${words(`draw-${kind.name}-drop`)} ${at + 1}`];
    const fields = kind.members.map(([name, label, unit]) => {
      const get = (trip: Trip) => shown((kind.of(trip)[at] as Readonly<Record<string, unknown>> | undefined)?.[name]);
      const value = this.value(keyOf(did, name), get, (trip, text) => kind.put(trip, changed(kind.of(trip), at, name, text, unit !== null)));
      return unit === null ? textField(`${words(label)} ${at + 1}`, value) : numberField(words(label), words(unit), value);
    });
    this.rows.push(...fields);
    const drop = () => this.change(`${did}-drop`, (trip) => kind.put(trip, kind.of(trip).filter((_, i) => i !== at)));
    const cross = make("button", { type: "button", class: "app-drop", "aria-label": drops, title: drops, click: () => this.dropped(rows, at, drop) }, "✕");
    return make("div", { class: "app-row" }, ...fields.map((field) => field.element), cross);
  }

  /** Whoever took out a row is on the one that came in its place, on the last one, or on the way to a new one. */
  private dropped(rows: HTMLElement, at: number, drop: () => void): void {
    drop();
    const row = rows.children[Math.min(at, rows.children.length - 1)] ?? rows.parentElement;
    row?.querySelector<HTMLElement>("button")?.focus();
  }

  private addPerson(): void {
    this.change("draw-did-person-add", (trip) => withPeople(trip, [...people(trip), { name: "" }]));
    this.lastInput(this.folk);
  }

  private addRope(): void {
    // A length is not guessed: until it is typed the program says what is missing.
    this.change("draw-did-rope-add", (trip) => without({ ...trip, rope: [...ropes(trip), {}] }));
    this.lastInput(this.ropes, 1);
  }

  private lastInput(rows: HTMLElement, at = 0): void {
    rows.lastElementChild?.querySelectorAll("input")[at]?.focus();
  }
}
