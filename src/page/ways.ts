/** Ways to split the party and to use the ropes at hand, side by side, as the program weighs them; any of them can be planned with. */

import { answer, broken, said } from "./answers";
import { assumed } from "./assume";
import { waysOf } from "./calls";
import type { Desk, Part } from "./desk";
import { type Marks, button, fill, make, report, written } from "./dom";
import type { Card, Carried, Html, Trip, TripRope, Weighed, Ways as Said } from "./door";
import { faultList } from "./faults";
import { joinedName, ropeTitle, ropes, withRopes } from "./folk";
import type { State } from "./model";
import { withMember } from "./number";
import type { Words } from "./words";

/** So many are compared at a glance; the others are a press away. */
const AT_ONCE = 3;

/** Plans with a way. */
type Take = (did: string, change: (state: State) => State) => void;

export class Ways implements Part {
  readonly element = make("section", { class: "app-ways" });
  private readonly answer = make("div");
  private readonly button: HTMLButtonElement;
  private of: State | null = null;

  /** `still` where the page is not to move under the one who asks. */
  constructor(private readonly desk: Desk, private readonly take: Take, marks: Marks = {}, private readonly still = false) {
    this.button = button(desk.words("draw-ways"), () => void this.weigh(!this.still), marks);
    this.element.append(this.button, this.answer);
  }

  /** What was weighed for another state is not shown beside this one. */
  sync(state: State): void {
    if (this.of !== null && this.of !== state) this.forget();
  }

  /** Shows them to somebody who asked elsewhere. */
  open(): void {
    this.button.focus();
    void this.weigh(true);
  }

  private forget(): void {
    this.of = null;
    fill(this.answer);
  }

  private async weigh(goes: boolean): Promise<void> {
    const { store: { state }, words } = this.desk;
    this.of = state;
    fill(this.answer, make("p", { class: "app-fine", role: "status" }, words("draw-ways-waits")));
    if (goes) this.element.scrollIntoView({ block: "start" });
    const ways = await this.weighed(state);
    if (this.of !== state) return;
    fill(this.answer, ways);
    if (goes) this.element.scrollIntoView({ block: "start" });
  }

  private async weighed(state: State): Promise<HTMLElement> {
    const { engine, words, language } = this.desk;
    try {
      const came = await engine.over(state, waysOf(state, language));
      const ways = answer<Weighed>(came);
      if (ways && "ways" in ways) return report(words("draw-ways"), {}, ...this.shown(ways));
      const { faults } = ways ?? broken(came, engine.gone, words);
      return faultList(faults, this.desk, state);
    } catch (error) {
      return make("p", { class: "app-fault" }, said(error, words));
    }
  }

  private shown({ head, ways, foot }: Said): (HTMLElement | null)[] {
    const list = (some: readonly Card[], start: number) => make("ol", { class: "ways", start }, ...some.map((card) => this.card(card)));
    const others = ways.slice(AT_ONCE);
    const more = make("summary", {}, `${this.desk.words("draw-ways-more")} (${others.length})`);
    return [
      written("div", {}, head),
      list(ways.slice(0, AT_ONCE), 1),
      others.length > 0 ? make("details", { class: "app-fold" }, more, list(others, AT_ONCE + 1)) : null,
      written("div", {}, foot),
    ];
  }

  private card({ html, holds, trip, took }: Card): HTMLElement {
    const { words } = this.desk;
    const card = written("li", {}, html);
    if (!holds) return card;
    if (!trip) return card;
    const isNow = Object.keys(trip).length === 0;
    const home = left(this.of?.trip ?? {}, trip.ropes).map((rope) => ropeTitle(rope, words));
    if (home.length > 0) card.append(make("p", {}, `${words("draw-ways-leaves")}: ${home.join(", ")}`));
    const take = () => button(words("draw-ways-take"), () => this.plan(trip, took), { class: "app-button app-big app-wide", "data-leads": true });
    card.append(isNow ? make("p", { class: "app-fine" }, words("draw-ways-now")) : take());
    return card;
  }

  private plan(way: NonNullable<Card["trip"]>, took: Html): void {
    // Where the cards were something else comes to stand: the page goes back to what brought them.
    this.forget();
    this.button.focus({ preventScroll: true });
    this.button.scrollIntoView({ block: "center" });
    this.take("draw-did-way", (state) => ({ ...state, trip: taken(state.trip, way, this.desk.words) }));
    // Until something else changes it says what the plan is made with now.
    this.of = this.desk.store.state;
    fill(this.answer, written("p", { class: "app-took", role: "status" }, took));
  }
}

/** The ropes at hand that a way does not carry. */
function left(trip: Trip, carried: readonly Carried[] | undefined): TripRope[] {
  const taken = carried?.flatMap(({ rope, joined_to }) => [rope, joined_to]);
  return taken ? ropes(trip).filter((_, at) => !taken.includes(at + 1)) : [];
}

/** The ropes of a trip that a way carries; two that are joined are one. */
function carriedOf(trip: Trip, carried: readonly Carried[], words: Words): TripRope[] {
  const all = ropes(trip);
  return carried.flatMap(({ rope, joined_to, length_m, diameter_mm }) => {
    const [own, other] = [all[rope - 1], joined_to === undefined ? undefined : all[joined_to - 1]];
    if (!own || !other) return own ?? [];
    return { ...own, name: joinedName(ropeTitle(own, words), ropeTitle(other, words)), length_m, ...(diameter_mm === undefined ? {} : { diameter_mm }), joined: true };
  });
}

/** The trip with what a way does otherwise. */
function taken(trip: Trip, { teams, practice, assume, ropes: carried }: NonNullable<Card["trip"]>, words: Words): Trip {
  let next = trip;
  if (teams) next = withMember(next, "teams", teams);
  if (practice) next = withMember(next, "practice", practice);
  if (assume) next = withMember(next, "assume", Object.entries(assume).reduce((all, [name, value]) => assumed(all, name, value), next.assume ?? {}));
  return carried ? withRopes(next, carriedOf(next, carried, words)) : next;
}
