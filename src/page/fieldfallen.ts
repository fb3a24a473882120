/** Somebody has fallen in: where that is, whom to call, and what this set-up leaves to those who hold. */

import type { Desk } from "./desk";
import { fill, make, report, written } from "./dom";
import type { Ground, Leg } from "./door";
import { alone } from "./map/geometry/along";
import { placeParts } from "./map/furniture";
import type { State } from "./model";
import { kilometre } from "./panel";
import type { Place } from "./whereami";

export class Fallen {
  readonly element: HTMLDetailsElement;
  private readonly body = make("div", { class: "app-fallen" });
  private ground: Ground | null = null;
  /** Of what it tells; written where it is unfolded. */
  private about: readonly [leg: Leg | null, place: Place | null, of: State, planned: boolean];

  constructor(private readonly desk: Desk) {
    this.about = [null, null, desk.store.state, false];
    this.element = make("details", { class: "app-fold app-fallen-fold", toggle: () => this.write() }, make("summary", {}, desk.words("draw-field-fallen")), this.body);
  }

  lie(ground: Ground | null): void {
    this.ground = ground;
  }

  /** Of a leg and a place in it; of no leg where there is no plan, or nobody said where. */
  show(leg: Leg | null, place: Place | null, of: State, planned = true): void {
    this.about = [leg, place, of, planned];
    this.write();
  }

  /** What stands there already is not written again. */
  private write(): void {
    if (!this.element.open) return;
    const { words } = this.desk;
    const [leg, place, of, planned] = this.about;
    const where = place ? [make("p", {}, `${words("draw-field-fallen-call")} `, make("strong", {}, this.spot(place)))] : [];
    const rescue = leg?.rescue ? report(words("draw-field-fallen"), {}, written("div", {}, leg.rescue)) : make("p", { class: "app-quiet" }, words(!place ? "draw-field-fallen-where" : planned ? "draw-field-fallen-unroped" : "draw-no-plan"));
    const next = make("div", {}, make("p", {}, words("draw-field-fallen-first")), ...where, ...calls(of), rescue);
    if (next.innerHTML !== (this.body.firstElementChild?.innerHTML ?? "")) fill(this.body, next);
  }

  /** For who is called: kilometre, height, degrees, grid. */
  private spot({ stage, at_m }: Place): string {
    const { words } = this.desk;
    const km = `${kilometre(at_m, this.desk)} ${words("draw-unit-km")}`;
    const line = alone(this.ground, stage);
    const found = line?.way.at(at_m);
    if (!line || !found) return km;
    const [longitude, latitude] = line.frame.place(found.at);
    const high = found.height_m === null ? [] : [`${Math.round(found.height_m)} ${words("draw-unit-m")}`];
    return [km, ...high, ...placeParts(longitude, latitude, words)].filter(Boolean).join(" · ");
  }
}

/** Whom to call, as the trip says. */
function calls({ trip }: State): HTMLElement[] {
  const contacts = Array.isArray(trip.emergency) ? trip.emergency : [];
  return contacts.map(({ name, contact, note }) => make("p", {}, `${name}: `, make("strong", {}, contact), note ? ` (${note})` : ""));
}
