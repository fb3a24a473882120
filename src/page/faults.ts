/** What the program says is wrong, each with a way to the zone that it is about. */

import { type Desk, faulty, isPolygon, zoneTitle } from "./desk";
import { button, make, written } from "./dom";
import type { Fault } from "./door";
import type { Drawn, State } from "./model";

/** So many zones are named with one fault. */
const MOST = 12;

/** What is only not said yet, which before the first plan is no alarm. */
const needed = ({ code, feature, property }: Fault): boolean =>
  ["gap-not-given", "no-zones", "alone"].includes(code) || isPartyless({ code, feature, property });

/** Nobody was named yet. */
const isPartyless = ({ code, feature, property }: Pick<Fault, "code" | "feature" | "property">): boolean =>
  code === "bad-trip" && feature === null && property === null;

/** Whether all that there is no plan for is only not said yet. */
export const allNeeded = (faults: readonly Fault[]): boolean => faults.every(needed);

/**
 * The faults of a plan of that state as a list; those of one feature only where `only` names it. Lists that lead to other
 * zones are written otherwise: their buttons hold the keys. Before the `first` plan what is needed for it is no alarm.
 */
export function faultList(faults: readonly Fault[], desk: Desk, state: State, only: number | null = null, first = false): HTMLElement {
  const list = make("ul", { class: "app-faults" });
  for (const fault of faults) {
    const about = faulty(fault, state);
    if (only !== null && !about.some((zone) => zone.key === only)) continue;
    const calm = needed(fault) && (first || only !== null);
    const item = make("li", { class: calm ? "app-fault app-needed" : "app-fault" }, written("p", { class: "app-says" }, fault.says));
    if (fault.hint) item.append(written("p", { class: "app-hint" }, fault.hint));
    const ways = only === null ? waysOut(fault, about, desk, state) : [];
    if (ways.length > 0) item.append(make("div", { class: "app-acts" }, ...ways));
    list.append(item);
  }
  return list;
}

/** To the zones that it is about, or to where the party is said. */
function waysOut(fault: Fault, about: readonly Drawn[], desk: Desk, state: State): HTMLElement[] {
  if (fault.code === "alone" || isPartyless(fault)) return [button(`→ ${desk.words("draw-start-trip")}`, () => desk.openTab("trip"))];
  return about.slice(0, MOST).map((zone) => button(`→ ${called(zone, fault, state, desk)}`, () => go(zone.key, desk), { "data-key": zone.key }));
}

/** As the list calls it; with its number in the file, where that is another, or where the program goes by it in the sentence. */
function called(zone: Drawn, fault: Fault, state: State, { words }: Desk): string {
  const [feature, number] = [state.zones.indexOf(zone), state.zones.filter(isPolygon).indexOf(zone)];
  const file = feature === number && fault.feature !== null ? "" : ` (${words("draw-feature")} ${feature + 1})`;
  return `${zoneTitle(state, zone, words)}${file}`;
}

/** Not to a zone that is gone by now. */
function go(key: number, desk: Desk): void {
  if (!desk.store.state.zones.some((zone) => zone.key === key)) return;
  desk.pick(key);
  desk.openTab("zone");
}
