/** What the program says is wrong, each with a way to the zone that it is about. */

import { type Desk, faulty, isPolygon, zoneTitle } from "./desk";
import { button, make, written } from "./dom";
import type { Fault } from "./door";
import type { Drawn, State } from "./model";

/** So many zones are named with one fault. */
const MOST = 12;

/**
 * The faults of a plan of that state as a list; those of one feature only where `only` names it. Lists that lead to other
 * zones are written otherwise: their buttons hold the keys.
 */
export function faultList(faults: readonly Fault[], desk: Desk, state: State, only: number | null = null): HTMLElement {
  const list = make("ul", { class: "app-faults" });
  for (const fault of faults) {
    const about = faulty(fault, state);
    if (only !== null && !about.some((zone) => zone.key === only)) continue;
    const item = make("li", { class: "app-fault" }, written("p", { class: "app-says" }, fault.says));
    if (fault.hint) item.append(written("p", { class: "app-hint" }, fault.hint));
    if (only === null && about.length > 0) {
      const ways = about.slice(0, MOST).map((zone) => button(`→ ${called(zone, state, desk)}`, () => go(zone.key, desk), { "data-key": zone.key }));
      item.append(make("div", { class: "app-acts" }, ...ways));
    }
    list.append(item);
  }
  return list;
}

/** As the list calls it; with its number in the file, which the program goes by, where that is another. */
function called(zone: Drawn, state: State, { words }: Desk): string {
  const [feature, number] = [state.zones.indexOf(zone), state.zones.filter(isPolygon).indexOf(zone)];
  const file = feature === number ? "" : ` (${words("draw-feature")} ${feature + 1})`;
  return `${zoneTitle(state, zone, words)}${file}`;
}

/** Not to a zone that is gone by now. */
function go(key: number, desk: Desk): void {
  if (!desk.store.state.zones.some((zone) => zone.key === key)) return;
  desk.pick(key);
  desk.openTab("zone");
}
