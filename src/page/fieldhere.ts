/** What is told of the place where somebody is: its word and its zone, and the next word on the way, in a few words each. */

import { type Desk, zoneTitle } from "./desk";
import { make, written } from "./dom";
import type { Leg, Planned, Zone } from "./door";
import { cure } from "./fieldanswer";
import { type Ahead, aheadOf, harsh, pieceAt, zonesRound } from "./fieldahead";
import { writer } from "./map/figures";
import type { State } from "./model";
import { badge, kilometre, kilometres } from "./panel";
import type { Place } from "./whereami";

export interface Here {
  /** The word and the set-up, and what to do or what comes. */
  readonly lines: readonly HTMLElement[];
  /** The word, the zones and all that comes. */
  readonly longer: readonly HTMLElement[];
}

/** A place in a leg of the plan of that state. */
export function hereIn(plan: Planned, leg: Leg, place: Place, of: State, desk: Desk): Here {
  const verdict = pieceAt(leg, place)?.verdict ?? leg.verdict;
  const ahead = aheadOf(plan, leg, place);
  const comes = () => ahead.map((one) => make("p", {}, ...coming(one, desk)));
  const zones = zonesRound(plan, place).map((zone) => make("p", {}, ...standing(zone, of, desk)));
  const own = make("p", {}, `${desk.words("draw-field-here")} `, badge(verdict, desk));
  const first = verdict === leg.verdict ? [badge(verdict, desk)] : [...own.cloneNode(true).childNodes];
  const line = make("p", {}, ...first, " ", written("span", { class: "app-set-up" }, leg.title));
  return { lines: [line, ...second(leg, verdict, ahead, desk)], longer: [own, ...zones, ...comes()] };
}

/** What to do here or ahead in this leg; where there is nothing to do how far the leg goes and what comes. */
function second(leg: Leg, verdict: Leg["verdict"], ahead: readonly Ahead[], desk: Desk): HTMLElement[] {
  const [next] = ahead;
  const due = harsh(verdict) || ahead.some((one) => one.inLeg && harsh(one.verdict));
  const todo = due ? cure(leg.told) : null;
  if (!todo) return [make("p", {}, kilometres(leg, desk)), ...(next ? [make("p", {}, ...coming(next, desk))] : [])];
  if (next?.worse && next.inLeg) todo.prepend(...coming(next, desk), " ");
  return [todo];
}

/** `in 20 m, from km 7.25: ? look` */
function coming({ verdict, at_m, away_m }: Ahead, desk: Desk): (Node | string)[] {
  const { words, language } = desk;
  const far = away_m >= 1000 ? `${writer(language, 1, 1).format(away_m / 1000)} ${words("draw-unit-km")}` : `${away_m} ${words("draw-unit-m")}`;
  const start = `${words("draw-field-from-km")} ${kilometre(at_m, desk)}`;
  return [away_m > 0 ? `${words("draw-field-in")} ${far}, ${start}: ` : `${start}: `, badge(verdict, desk)];
}

/** A zone with the gap that the plan takes there. */
function standing(zone: Zone, of: State, { words, language }: Desk): (Node | string)[] {
  const drawn = of.zones[zone.feature - 1];
  const gap = `${zone.gap_m.toLocaleString(language)}\u00a0${words("draw-unit-m")}`;
  return [make("bdi", {}, drawn ? zoneTitle(of, drawn, words) : `${words("draw-zone")} ${zone.zone}`), `: ${words(zone.gap_assumed ? "draw-field-gap-assumed" : "draw-field-gap-up-to")} ${gap}`];
}
