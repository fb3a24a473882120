/** The panel of the trip: who goes, with which ropes, when and how, and the figures of the rules. */

import { Assumptions } from "./assume";
import type { Desk, Part } from "./desk";
import { button, fill, make } from "./dom";
import type { Trip, TripDoor, TripRope } from "./door";
import { type Field, type Value, choiceField, group, numberField, textField } from "./fields";
import { type Person, changed, people, ropes, withPeople, withRopes, without } from "./folk";
import type { State } from "./model";
import { shown, typed, withMember } from "./number";
import { Listed } from "./listed";
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
  private readonly folk: Listed;
  private readonly ropes: Listed;
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
    this.ways = new Ways(desk, (did, change) => desk.store.change(did, change));
    this.folk = new Listed(words("draw-person-drop"), button(words("draw-person-add"), () => this.addPerson()));
    this.ropes = new Listed(words("draw-rope-drop"), button(words("draw-rope-add"), () => this.addRope()));
    this.element.append(
      group(words("draw-people"), this.folk.element),
      group(words("draw-ropes"), this.ropes.element),
      this.ways.element,
      group(words("draw-day"), this.keep(textField(words("draw-trip-name"), this.text("name"))), make("div", { class: "app-columns" }, ...this.day())),
      group(words("draw-how"), this.chosen, this.keep(this.number("gap_m", "draw-unit-m"))),
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
    return DAY.flatMap(([name, looks]) => {
      const field = this.keep(textField(this.desk.words(keyOf("draw-trip", name)), this.text(name), { placeholder: looks }));
      // An hour on the way goes with where that was said.
      return name === "start" ? [field, this.keep(this.number("start_at_km", "draw-unit-km"))] : [field];
    });
  }

  private number(name: string, unit: string): Field {
    const { words } = this.desk;
    const value = this.value("draw-did-trip", (trip) => shown(trip[name]), (trip, text) => withMember(trip, name, typed(text)));
    return numberField(words(keyOf("draw-trip", name)), words(unit), value);
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
    this.folk.fill(people(trip).map((_, at) => this.row(PEOPLE, at)), (at) => this.drop(PEOPLE, at));
    this.ropes.fill(ropes(trip).map((_, at) => this.row(ROPES, at)), (at) => this.drop(ROPES, at));
  }

  private row<One extends object>(kind: Rows<One>, at: number): HTMLElement {
    const { words } = this.desk;
    const did = `draw-did-${kind.name}`;
    const fields = kind.members.map(([name, label, unit]) => {
      const get = (trip: Trip) => shown((kind.of(trip)[at] as Readonly<Record<string, unknown>> | undefined)?.[name]);
      const value = this.value(keyOf(did, name), get, (trip, text) => kind.put(trip, changed(kind.of(trip), at, name, text, unit !== null)));
      return unit === null ? textField(`${words(label)} ${at + 1}`, value) : numberField(words(label), words(unit), value);
    });
    this.rows.push(...fields);
    return make("div", { class: "app-row" }, ...fields.map((field) => field.element));
  }

  private drop<One extends object>(kind: Rows<One>, at: number): void {
    this.change(`draw-did-${kind.name}-drop`, (trip) => kind.put(trip, kind.of(trip).filter((_, i) => i !== at)));
  }

  private addPerson(): void {
    this.change("draw-did-person-add", (trip) => withPeople(trip, [...people(trip), { name: "" }]));
    this.folk.lastInput();
  }

  private addRope(): void {
    // A length is not guessed: until it is typed the program says what is missing.
    this.change("draw-did-rope-add", (trip) => without({ ...trip, rope: [...ropes(trip), {}] }));
    this.ropes.lastInput(1);
  }
}
