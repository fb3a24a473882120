/** What the program says is wrong, each with a way to the zone that it is about. */

import { type Desk, faultyKey } from "./desk";
import { button, make, written } from "./dom";
import type { Fault } from "./door";

/** The faults as a list; those of one feature only where `only` names it. */
export function faultList(faults: readonly Fault[], desk: Desk, only: number | null = null): HTMLElement {
  const list = make("ul", { class: "app-faults" });
  for (const fault of faults) {
    const key = faultyKey(fault, desk.store.state);
    if (only !== null && key !== only) continue;
    const item = make("li", { class: "app-fault" }, written("p", { class: "app-says" }, fault.says));
    if (fault.hint) item.append(written("p", { class: "app-hint" }, fault.hint));
    if (key !== null && only === null) item.append(button(desk.words("draw-fault-go"), () => go(key, desk)));
    list.append(item);
  }
  return list;
}

function go(key: number, desk: Desk): void {
  desk.pick(key);
  desk.openTab("zone");
}
