/** Where somebody is: typed as a kilometre or a height, which may fit several places, and kept while the page is in use. */

import type { Desk } from "./desk";
import { button, fill, make } from "./dom";
import type { Leg, Planned } from "./door";
import { type Field, group, numberField } from "./fields";
import { typed } from "./number";
import { kilometre } from "./panel";
import { type Place, atHeight, atKilometre } from "./whereami";

/** What was typed, and the place that it led to. */
export interface Said {
  readonly km: string;
  readonly height: string;
  readonly place: Place | null;
}

/** Of the one who has the page in hand: in another language too, and kept with the work. */
let said: Said = { km: "", height: "", place: null };

export const placeSaid = (): Said => said;

export function sayPlace(again: Said): void {
  said = again;
}

export class Where {
  readonly element: HTMLElement;
  private readonly found = make("div", { class: "app-where" });
  private plan: Planned | null = null;
  /** The places that are offered. */
  private offered = "";

  /** Takes who is told of another place. */
  constructor(private readonly desk: Desk, private readonly moved: () => void) {
    this.element = group(desk.words("draw-field-where"), this.fields(), this.found);
  }

  get place(): Place | null {
    return said.place;
  }

  /** Several places are that high, of which none was chosen. */
  get open(): boolean {
    return this.offered !== "";
  }

  /** The leg of a plan that the place lies in. */
  leg(plan: Planned): Leg | null {
    const { place } = this;
    if (!place) return null;
    return plan.legs.find((leg) => leg.stage === place.stage && place.at_m >= leg.start_m && place.at_m <= leg.end_m) ?? null;
  }

  /** Finds the place again in a plan; without one it stays what it was. */
  locate(plan: Planned | null): void {
    this.plan = plan;
    const found = plan ? this.places(plan) : [];
    const { place } = said;
    // One of several places of a height is not taken for the one where somebody is.
    const only = found.length === 1 || typeof typed(said.km) === "number" ? found[0] : undefined;
    const same = found.find((one) => one.stage === place?.stage && Math.abs(one.at_m - place.at_m) < 50);
    const km = typed(said.km);
    // Without a plan a kilometre is a place all the same: who calls for help says it.
    const unplanned = typeof km === "number" ? { stage: place?.stage ?? 1, at_m: km * 1000 } : null;
    said = { ...said, place: plan ? (same ?? only ?? null) : (unplanned ?? place) };
    this.offer(found);
    this.desk.stands(said.place);
  }

  private places(plan: Planned): readonly Place[] {
    const [km, height] = [typed(said.km), typed(said.height)];
    if (typeof km === "number") return atKilometre(plan, km, said.place?.stage ?? 1);
    return typeof height === "number" ? atHeight(plan, height) : [];
  }

  private fields(): HTMLElement {
    const { words } = this.desk;
    const value = (name: "km" | "height", other: "km" | "height") => ({
      get: () => said[name],
      set: (text: string) => {
        said = { ...said, [name]: text, ...(text === "" ? {} : { [other]: "" }) };
        for (const field of fields) field.sync();
        this.say();
      },
      settle: () => {},
    });
    const fields: Field[] = [
      numberField(words("draw-field-km"), words("draw-unit-km"), value("km", "height")),
      numberField(words("draw-field-height"), words("draw-unit-m"), value("height", "km")),
    ];
    return make("div", { class: "app-row" }, ...fields.map((field) => field.element));
  }

  private say(): void {
    this.locate(this.plan);
    this.moved();
    this.desk.keepSoon();
  }

  private offer(found: readonly Place[]): void {
    if (found.length < 2) {
      this.offered = "";
      const wrong = this.plan && found.length === 0 && (said.km || said.height);
      return fill(this.found, wrong ? make("p", {}, `${this.desk.words("draw-field-not-there")} ${this.end()}`) : null);
    }
    const texts = found.map((place) => this.called(place));
    const sign = JSON.stringify([found, texts]);
    if (sign !== this.offered) fill(this.found, make("div", { class: "app-acts" }, ...found.map((place, at) => this.choice(place, texts[at] ?? ""))));
    this.offered = sign;
    const buttons = this.found.querySelectorAll("button");
    found.forEach((place, at) => buttons[at]?.setAttribute("aria-pressed", String(place === said.place)));
  }

  /** How long the stages of the line are. */
  private end(): string {
    const ends = new Map((this.plan?.legs ?? []).map(({ stage, end_m }) => [stage, end_m]));
    return `${[...ends.values()].map((end_m) => `${kilometre(end_m, this.desk)} ${this.desk.words("draw-unit-km")}`).join(", ")}.`;
  }

  /** Kilometre, leg, and whether the way goes up there. */
  private called(place: Place): string {
    const { words } = this.desk;
    const legs = this.plan?.legs ?? [];
    const stage = new Set(legs.map((leg) => leg.stage)).size > 1 ? `${words("draw-stage")} ${place.stage}` : null;
    const leg = legs.find((one) => one.stage === place.stage && place.at_m >= one.start_m && place.at_m <= one.end_m);
    const km = `${kilometre(place.at_m, this.desk)} ${words("draw-unit-km")}`;
    const slope = place.slope === "up" || place.slope === "down" ? words(`draw-field-${place.slope}`) : null;
    return [stage, km, leg ? `${words("draw-leg")} ${leg.leg}` : null, slope].filter((part) => part !== null).join(", ");
  }

  private choice(place: Place, text: string): HTMLButtonElement {
    const press = () => {
      said = { ...said, place };
      this.say();
    };
    return button(text, press, { class: "app-button app-big" });
  }
}
