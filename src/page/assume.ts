/** The figures of the rules: searchable, each with its standing and bounds, to be put another way and back. */

import type { Desk } from "./desk";
import { button, fill, make } from "./dom";
import type { Figure, Trip, TripDoor } from "./door";
import { type Field, numberField } from "./fields";
import type { State } from "./model";
import { shown, typed, withMember } from "./number";

type Assumed = Readonly<Record<string, unknown>>;

/** One figure as it is listed. */
interface Row {
  readonly figure: Figure;
  readonly element: HTMLElement;
  readonly field: Field;
  readonly back: HTMLButtonElement;
}

export class Assumptions {
  readonly element: HTMLDetailsElement;
  private readonly search = make("input", { type: "search", class: "app-input", input: () => this.filter() });
  private readonly list = make("ul", { class: "app-assume" });
  private rows: Row[] = [];
  /** What the rows show; null before they show anything. */
  private of: Trip["assume"] | null = null;

  constructor(private readonly desk: Desk) {
    const { words } = desk;
    const label = make("label", { class: "app-field" }, make("span", { class: "app-label" }, words("draw-assume-search")), this.search);
    this.element = make("details", { class: "app-fold" }, make("summary", {}, words("draw-assume")), label, this.list);
  }

  know(door: TripDoor): void {
    this.rows = door.figures.map((figure) => this.row(figure));
    fill(this.list, ...this.rows.map((row) => row.element));
    this.of = null;
    this.sync(this.desk.store.state);
  }

  sync(state: State): void {
    if (state.trip.assume === this.of) return;
    this.of = state.trip.assume;
    for (const { figure, element, field, back } of this.rows) {
      const set = get(state.trip, figure.name) !== undefined;
      field.sync();
      back.hidden = !set;
      element.classList.toggle("app-set", set);
    }
    this.filter();
  }

  private row(figure: Figure): Row {
    const { words, store } = this.desk;
    const change = (value: unknown, going: boolean) =>
      store.change(
        "draw-did-assume",
        (state) => {
          const assume = assumed(state.trip.assume ?? {}, figure.name, value);
          return { ...state, trip: withMember(state.trip, "assume", Object.keys(assume).length > 0 ? assume : undefined) };
        },
        going,
      );
    const value = {
      get: () => shown(get(store.state.trip, figure.name) ?? figure.value),
      set: (text: string, going: boolean) => change(typed(text), going),
      settle: () => store.settle(),
    };
    const field = numberField(figure.says, figure.unit === "1" ? "" : figure.unit, value);
    const back = button(`${words("draw-assume-back")} ${shown(figure.value)}`, () => change(undefined, false));
    const bounds = `${shown(figure.least)} – ${shown(figure.most)}`;
    const fine = make("p", { class: "app-fine" }, `${figure.standing} · ${bounds} · `, make("code", {}, figure.name));
    return { figure, field, back, element: make("li", {}, field.element, fine, back) };
  }

  /** Those that hold every word that is looked for; those that the trip sets stay in sight. */
  private filter(): void {
    const wanted = this.search.value.toLowerCase().split(/\s+/).filter(Boolean);
    for (const { figure, element } of this.rows) {
      const text = `${figure.says} ${figure.name} ${figure.standing}`.toLowerCase();
      element.hidden = !wanted.every((word) => text.includes(word)) && !element.classList.contains("app-set");
    }
  }
}

/** The value of a name; names with dots may be tables. */
function get(trip: Trip, name: string): unknown {
  const assume: Assumed = trip.assume ?? {};
  if (name in assume) return assume[name];
  const [first = "", ...rest] = name.split(".");
  const inner = assume[first];
  if (rest.length === 0 || typeof inner !== "object" || inner === null) return undefined;
  return get({ assume: inner as Assumed }, rest.join("."));
}

/** With the value under the name, in the table where it stood already. */
export function assumed(assume: Assumed, name: string, value: unknown): Assumed {
  const [first = "", ...rest] = name.split(".");
  const inner = assume[first];
  if (name in assume || rest.length === 0 || typeof inner !== "object" || inner === null) {
    return withMember(assume, name, value);
  }
  const table = assumed(inner as Assumed, rest.join("."), value);
  return withMember(assume, first, Object.keys(table).length > 0 ? table : undefined);
}
