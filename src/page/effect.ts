/** What the last step made of the plan, in one line above every tab: the legs whose word is another one. */

import { type Figured, figuresOf, legBefore } from "./changes";
import type { Desk, Part } from "./desk";
import { fill, make, report, written } from "./dom";
import type { Leg, Panel, Planned } from "./door";
import { rank } from "./fieldahead";
import { placeSaid } from "./fieldwhere";
import type { State } from "./model";
import { badge } from "./panel";
import { passed } from "./passed";
import { actsOf } from "./takeback";

/** A leg, and what it was. */
interface Known {
  readonly leg: Leg;
  readonly was: Leg | null;
}

export class Effect implements Part {
  readonly element = make("div", { "aria-live": "polite" });
  private readonly line: HTMLElement;
  /** There was a plan before. */
  private had = false;
  /** The last plan of what was not entered on the ice. */
  private given: Planned | null = null;

  constructor(private readonly desk: Desk) {
    this.line = report(desk.words("draw-effect"), { class: "app-effect", hidden: true });
    this.element.append(this.line);
    passed(this.line, () => this.element.parentElement?.querySelector(".app-panel:not([hidden])") ?? null);
  }

  show(panel: Panel, before: Planned | null, of: State): void {
    const planned = "verdict" in panel;
    const onIce = actsOf(of).length > 0;
    if (planned && !onIce) this.given = panel;
    const said = planned ? before && this.said(panel, before, onIce) : this.refused(panel);
    this.had ||= planned;
    const next = make("p", {}, ...(said ?? []));
    this.line.hidden = said === null;
    // On the ice the first fault is told in its place.
    this.line.classList.toggle("app-refused", !planned);
    // What is said already is not said again.
    if (next.outerHTML === this.line.innerHTML) return;
    fill(this.line, next);
    this.line.scrollTop = 0;
  }

  /** That there is no plan any more, and the first reason: who types in another tab sees it beside the field. */
  private refused({ faults }: Panel): (Node | string)[] | null {
    const [first] = faults;
    return first && this.had ? [`${this.desk.words("draw-no-plan")}: `, written("span", {}, first.says)] : null;
  }

  private said(plan: Planned, before: Planned, onIce: boolean): (Node | string)[] {
    const turned = this.turned(plan, before);
    if (turned.length > 0) return turned.flatMap((word) => [word, " "]);
    const { words: say } = this.desk;
    // What the step before made worse is not as before for who stands there.
    const since = onIce && this.given ? this.turned(plan, this.given) : [];
    if (since.length > 0) return [`${say("draw-effect-ice")} `, ...since.flatMap((word) => [word, " "])];
    const asBefore = onIce && !this.given ? "draw-effect-figures-too" : "draw-effect-figures";
    return [this.others(plan, before, asBefore) || say("draw-effect-none")];
  }

  /** The legs whose word is another one, those that came and those that went. */
  private turned(plan: Planned, before: Planned): HTMLElement[] {
    const known = pairs(plan, before);
    const kept = new Set(known.map(({ was }) => was));
    const gone = before.legs.filter((leg) => leg.roped && !kept.has(leg));
    const matters = ({ leg, was }: Known) => was?.verdict !== leg.verdict && (was || leg.roped) && (isHere(leg) || !placeSaid().place || !was || rank(leg.verdict) > rank(was.verdict));
    // Who stands somewhere reads that as an all-clear which is milder elsewhere.
    const other = known.filter(matters).sort((a, b) => Number(isHere(b.leg)) - Number(isHere(a.leg)));
    const alike = new Map<string, Known[]>();
    for (const one of other) {
      const sign = `${one.was?.verdict} ${one.leg.verdict}`;
      alike.set(sign, [...(alike.get(sign) ?? []), one]);
    }
    return [...[...alike.values()].flatMap((legs) => this.turn(legs)), ...gone.map((leg) => make("del", {}, this.of([leg], badge(leg.verdict, this.desk))))];
  }

  /** The legs with other figures, and those of which something else is told. */
  private others(plan: Planned, before: Planned, figuresSay: string): string {
    const { words } = this.desk;
    const known = pairs(plan, before);
    const changed = known.map((one) => ({ ...one, figures: figuresOf(one.leg, one.was).filter(({ was }) => was !== null) }));
    const [figures, same] = [changed.filter((one) => one.figures.length > 0), changed.filter((one) => one.figures.length === 0)];
    const told = same.filter((one) => one.was && (one.was.told !== one.leg.told || one.was.act !== one.leg.act));
    const named = (key: string, legs: readonly Known[]) => (legs.length > 0 ? [`${words(key)} ${legs.map(({ leg }) => leg.leg).join(", ")}`] : []);
    const turned = ({ name, was, value }: Figured) => `${name === "rope" ? `${words("draw-figure-rope")} ` : ""}${was} → ${value}`;
    const ofHere = figures.filter(({ leg }) => isHere(leg)).slice(0, 1).map((one) => `${words("draw-leg")} ${one.leg.leg}: ${one.figures.map(turned).join(", ")}`);
    return [...named(figuresSay, figures), ...ofHere, ...named("draw-effect-told", told)].join(" · ");
  }

  /** Legs that all had one word and all have another one now. */
  private turn(known: readonly Known[]): HTMLElement[] {
    const legs = known.map(({ leg }) => leg);
    return known.slice(0, 1).map(({ leg, was }) => {
      const now = badge(leg.verdict, this.desk);
      if (!was) return make("span", {}, make("ins", {}, this.of(legs, now)));
      return this.of(legs, make("del", {}, badge(was.verdict, this.desk)), " ", make("ins", {}, now));
    });
  }

  private of(legs: readonly Leg[], ...says: (Node | string)[]): HTMLElement {
    return make("span", {}, `${this.desk.words("draw-leg")} ${legs.map(({ leg }) => leg).join(", ")}: `, ...says);
  }
}

/** Whether somebody stands on the leg: that one is told first. */
function isHere({ stage, start_m, end_m }: Leg): boolean {
  const { place } = placeSaid();
  return place !== null && place.stage === stage && start_m <= place.at_m && place.at_m <= end_m;
}

const pairs = (plan: Planned, before: Planned): Known[] => plan.legs.map((leg) => ({ leg, was: legBefore(leg, plan, before) }));
