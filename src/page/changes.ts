/** What of a plan is another than before the last step: legs matched by their kilometres, figures by name. */

import { make } from "./dom";
import type { Leg, Planned } from "./door";
import type { Words } from "./words";

/** The leg of an earlier plan that a leg comes from: the same number, or the one that it shares the longest way with. */
export function legBefore(leg: Leg, now: Planned, before: Planned): Leg | null {
  const legs = before.legs.filter((other) => other.stage === leg.stage && other.roped === leg.roped);
  if (now.legs.length === before.legs.length) return legs.find((other) => other.leg === leg.leg) ?? null;
  const shared = (other: Leg) => Math.min(leg.end_m, other.end_m) - Math.max(leg.start_m, other.start_m);
  const best = legs.reduce<Leg | null>((a, b) => (a && shared(a) >= shared(b) ? a : b), null);
  return best && shared(best) > 0 ? best : null;
}

/** A figure of a leg with what it was. */
export interface Figured {
  /** Such as `spacing`. */
  readonly name: string;
  /** The number of the rope team. */
  readonly team: string;
  readonly value: string;
  /** Null where it is as it was, or where nothing was before. */
  readonly was: string | null;
}

export function figuresOf(leg: Leg, before: Leg | null): Figured[] {
  const known = new Map(before?.figures.map((figure) => [figure.id, figure.value]));
  return leg.figures.map(({ id, value }) => {
    const was = known.get(id) ?? null;
    const [team = "", name = ""] = id.split("-", 2);
    return { name, team, value, was: was === value ? null : was };
  });
}

/** The figures in lines, one a rope team; what was stands struck out before what is. */
export function figureLines(figures: readonly Figured[], words: Words): HTMLElement {
  const teams = [...new Set(figures.map((figure) => figure.team))];
  const lines = teams.map((team) => {
    const line = make("dl", { class: "app-figures" });
    if (teams.length > 1) line.append(make("div", {}, make("dt", {}, words("draw-team")), make("dd", {}, team)));
    for (const { name, value, was } of figures.filter((figure) => figure.team === team)) {
      const text = was === null ? [value] : [make("del", {}, was), " ", make("ins", {}, value)];
      // The others say themselves what they are.
      const dt = make("dt", { class: name === "rope" ? "" : "app-hidden" }, words(`draw-figure-${name}`));
      line.append(make("div", {}, dt, make("dd", {}, ...text)));
    }
    return line;
  });
  return make("div", { class: "app-teams" }, ...lines);
}
