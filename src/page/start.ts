/** What stands where the map will be as long as there is no route: three steps to a plan, and what is needed for them. */

import type { Desk } from "./desk";
import { button, make, newId } from "./dom";

export function start(desk: Desk): HTMLElement {
  const { words } = desk;
  const open = button(words("draw-open"), () => desk.chooseFiles(), { class: "app-button app-main app-big" });
  const trip = button(words("draw-start-trip"), () => goToTrip(desk), { class: "app-button app-big" });
  const step = (name: string, ...acts: HTMLElement[]) =>
    make("li", {}, make("h3", {}, words(`draw-start-${name}`)), make("p", {}, words(`draw-start-${name}-how`)), ...acts);
  const drops = make("p", { class: "app-drops" }, words("draw-start-drop"));
  const title = make("h2", { id: newId() }, words("draw-start"));
  const steps = make("ol", { class: "app-steps" }, step("route", drops, open), step("ice"), step("party", trip));
  return make("section", { class: "app-start", "aria-labelledby": title.id }, title, steps);
}

/** On a narrow screen the steps make room for the trip: whoever went there is there. */
function goToTrip(desk: Desk): void {
  desk.openTab("trip");
  document.querySelector<HTMLElement>('[role="tab"][aria-selected="true"]')?.focus();
}
