/** The plan of before where there is none of now: greyed, never without the word that it is of before, and nothing in it to press. */

import type { Desk } from "./desk";
import { make, report, written } from "./dom";
import type { Planned } from "./door";
import { badge, kilometres } from "./panel";

export function stale(plan: Planned, desk: Desk): HTMLElement {
  const { words } = desk;
  const legs = plan.legs.map((leg) =>
    make(
      "li",
      { class: `app-leg app-line-${leg.verdict}` },
      written("span", { class: "app-leg-title" }, leg.title),
      make("span", { class: "app-leg-where" }, kilometres(leg, desk)),
      make("span", { class: "app-leg-verdict" }, badge(leg.verdict, desk)),
    ),
  );
  return make(
    "section",
    { class: "app-before", "aria-label": words("draw-before") },
    make("p", { class: "app-before-word" }, words("draw-before")),
    make(
      "div",
      { class: "app-stale", role: "group", "aria-disabled": "true", "aria-label": words("draw-before") },
      report(plan.title, { class: "app-head" }, written("div", {}, plan.head)),
      make("h2", { class: "app-title" }, words("draw-legs")),
      make("ol", { class: "app-legs" }, ...legs),
    ),
  );
}
