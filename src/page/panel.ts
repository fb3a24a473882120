/** The plan as it follows: what stops first, the legs, the field table, and the rest of the report folded. */

import { figureLines, figuresOf, legBefore } from "./changes";
import type { Desk, Part } from "./desk";
import { fill, make, newId, report, written } from "./dom";
import type { Leg, Panel, Planned, Verdict } from "./door";
import { allNeeded, faultList } from "./faults";
import { Fold } from "./fold";
import { Kept } from "./kept";
import { writer } from "./map/figures";
import { SIGNS } from "./map/palette";
import type { State } from "./model";
import { stale } from "./stale";

/** Parts that stand elsewhere in the panel. */
const ELSEWHERE = new Set(["legs", "field", "map", "profile", "notes", "ropes"]);

/** The word of a leg with its sign. */
export function badge(verdict: Verdict, desk: Desk, says = desk.words(`draw-verdict-${verdict}`)): HTMLElement {
  const sign = make("span", { "aria-hidden": "true" }, SIGNS[verdict]);
  return make("span", { class: `app-verdict app-${verdict}` }, sign, says);
}

/** Metres walked in kilometres, as the language writes them. */
export const kilometre = (at_m: number, { language }: Desk): string => writer(language, 2, 2).format(at_m / 1000);

/** So many metres, with their unit on the same line. */
export const metres = (m: number, { words, language }: Desk): string => `${m.toLocaleString(language)}\u00a0${words("draw-unit-m")}`;

/** From–to of a leg. */
export const kilometres = (leg: Leg, desk: Desk): string => `${leg.from_to} ${desk.words("draw-unit-km")}`;

/** What stops and what to look at, then the hours: a start that is too late stands before what to carry, and first where nothing stops. */
function head(plan: Planned): HTMLElement {
  const whole = written("div", {}, plan.head);
  const [first, hours] = [whole.querySelector(".first"), whole.querySelectorAll(".hours")];
  const stands = [...(first?.querySelectorAll(".stands") ?? [])].at(-1);
  // Where nothing stops, a start that is too late is the gravest there is.
  const late = whole.querySelector(".hours.late") && first?.matches(".look, .inside, .unroped");
  // What a frozen crust stops stands with what stops.
  stands?.after(...whole.querySelectorAll(".falls-on"));
  if (stands && !late) stands.after(...hours);
  else first?.prepend(...hours);
  return whole;
}

export class PlanPanel implements Part {
  readonly element = make("div", { class: "app-plan" });
  private opened: number | null = null;
  private readonly kept = new Kept();
  private readonly legs = new Kept();
  private readonly folds = new Map<string, Fold>();
  private readonly unfolded = new Set(["field"]);
  private readonly noticed = make("div");
  private readonly notices: HTMLDetailsElement;
  /** What the ropes of the open leg look like there. */
  private roped = "";
  private panel: Panel | null = null;
  private before: Planned | null = null;
  private of: State;

  constructor(private readonly desk: Desk) {
    this.of = desk.store.state;
    this.notices = make("details", { class: "app-fold", toggle: () => this.notice() }, make("summary", {}, desk.words("draw-notices")), this.noticed);
    this.element.append(this.waiting());
  }

  wants(): readonly string[] {
    return this.opened === null ? [...this.unfolded] : [...this.unfolded, "ropes"];
  }

  show(panel: Panel, before: Planned | null, of: State): void {
    [this.panel, this.before, this.of] = [panel, before, of];
    if ("verdict" in panel) this.plan(panel);
    else this.refused(panel);
  }

  private refused(panel: Panel): void {
    const { words } = this.desk;
    if (panel.faults.length === 0) return fill(this.element, this.waiting());
    const first = this.before === null;
    const title = make("h2", { class: "app-title" }, words(first && allNeeded(panel.faults) ? "draw-needed" : "draw-no-plan"));
    fill(this.element, title, faultList(panel.faults, this.desk, this.of, null, first), this.before && stale(this.before, this.desk));
    // Who had scrolled down in the plan would see the old one alone.
    title.scrollIntoView({ block: "nearest" });
  }

  /** What stands where there is nothing to plan yet. */
  private waiting(): HTMLElement {
    return make("p", { class: "app-quiet" }, this.desk.words("draw-planning"));
  }

  private plan(plan: Planned): void {
    const { kept, legs } = this;
    // What is open of a leg that is gone would be asked for with every plan to come.
    if (!plan.legs.some((leg) => leg.leg === this.opened)) this.opened = null;
    const field = plan.parts.find((part) => part.id === "field");
    const others = plan.parts.filter((part) => !ELSEWHERE.has(part.id));
    const title = () => make("h2", { class: "app-title" }, this.desk.words("draw-legs"));
    const list = kept.of("legs", "", () => make("ol", { class: "app-legs" }));
    kept.settle(this.element, [
      kept.of("head", plan.title + plan.head, () => report(plan.title, { class: "app-head" }, head(plan))),
      kept.of("title", "", title),
      plan.reading ? kept.of("reading", plan.reading, () => written("p", { class: "app-quiet" }, plan.reading)) : null,
      list,
      this.gone(plan),
      field ? this.part(field) : null,
      ...others.map((part) => this.part(part)),
      plan.notices.length > 0 ? this.notices : null,
    ]);
    this.notice();
    legs.settle(list, plan.legs.map((leg) => this.leg(leg, plan)));
    this.ropes(plan);
  }

  /** What was noticed, written where it is unfolded; what stands there already is not written again. */
  private notice(): void {
    const notices = this.notices.open && this.panel && "notices" in this.panel ? this.panel.notices : null;
    const list = notices && faultList(notices, this.desk, this.of);
    if ((list?.outerHTML ?? "") !== this.noticed.innerHTML) fill(this.noticed, list);
  }

  /** The drawn ropes of the open leg, as soon as they are there. */
  private ropes(plan: Planned): void {
    const place = this.element.querySelector(".app-leg-ropes");
    const html = plan.ropes.filter((rope) => this.opened !== null && rope.legs.includes(this.opened)).map((rope) => rope.html);
    if (!place || (place.childElementCount > 0 && this.roped === html.join())) return;
    this.roped = html.join();
    fill(place, ...html.map((rope) => written("div", {}, rope)));
  }

  /** A leg as it is listed, kept where nothing of it changed. */
  private leg(leg: Leg, plan: Planned): HTMLElement {
    const open = this.opened === leg.leg;
    const before = this.before && legBefore(leg, plan, this.before);
    const { pieces: _, ...rest } = leg;
    const sign = JSON.stringify([rest, before?.figures, before?.verdict, open]);
    return this.legs.of(`leg ${leg.leg}`, sign, () => this.listed(leg, before));
  }

  private listed(leg: Leg, before: Leg | null): HTMLElement {
    const open = this.opened === leg.leg;
    const id = newId();
    const figures = figuresOf(leg, before);
    const changed = figures.some((figure) => figure.was !== null);
    const was = before && before.verdict !== leg.verdict ? make("del", {}, badge(before.verdict, this.desk)) : null;
    const now = was ? make("ins", {}, badge(leg.verdict, this.desk)) : badge(leg.verdict, this.desk);
    const head = make(
      "button",
      { type: "button", class: `app-leg app-line-${leg.verdict}`, "data-leg": leg.leg, "aria-expanded": String(open), "aria-controls": id },
      written("span", { class: "app-leg-title" }, leg.title),
      make("span", { class: "app-leg-where" }, kilometres(leg, this.desk)),
      make("span", { class: "app-leg-verdict" }, was, was && " ", now),
    );
    head.addEventListener("click", () => this.toggle(leg.leg));
    const lines = changed || open ? figureLines(figures, this.desk.words) : null;
    // What is to be done comes before how they are tied.
    const act = open && leg.act !== "" ? written("div", { class: "app-act app-leg-act" }, leg.act) : null;
    const title = `${this.desk.words("draw-leg")} ${leg.leg}`;
    const inner = () => [written("div", {}, leg.told), make("div", { class: "app-leg-ropes" })];
    const body = open ? report(title, { id, class: "app-leg-body" }, ...inner()) : make("div", { id, hidden: true });
    return make("li", {}, head, act, lines, body);
  }

  private toggle(leg: number): void {
    this.opened = this.opened === leg ? null : leg;
    if (this.opened !== null) this.desk.goToLeg(leg);
    if (this.panel) this.show(this.panel, this.before, this.of);
    // The button of the leg may be a new one.
    this.element.querySelector<HTMLElement>(`.app-leg[data-leg="${leg}"]`)?.focus({ preventScroll: true });
    this.desk.ask();
  }

  /** Legs that were there before and are no more. */
  private gone(plan: Planned): HTMLElement | null {
    const { before } = this;
    if (!before || before.legs.length <= plan.legs.length) return null;
    const kept = new Set(plan.legs.map((leg) => legBefore(leg, plan, before)?.leg));
    const gone = before.legs.filter((leg) => leg.roped && !kept.has(leg.leg));
    const items = gone.map((leg) => make("li", {}, make("del", {}, written("span", {}, leg.title), ` ${kilometres(leg, this.desk)}`)));
    return gone.length > 0 ? make("ul", { class: "app-gone" }, ...items) : null;
  }

  private part({ id, title, html }: Planned["parts"][number]): HTMLElement {
    const turned = (open: boolean) => {
      if (open) this.unfolded.add(id);
      else this.unfolded.delete(id);
      this.desk.ask();
    };
    const fold = this.folds.get(id) ?? new Fold(this.unfolded.has(id), turned);
    this.folds.set(id, fold);
    fold.show(title, html);
    return fold.element;
  }
}
