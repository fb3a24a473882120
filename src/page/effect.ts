/** What the last step made of the plan, in one line above every tab: the legs whose word is another one. */

import { figuresOf, legBefore } from "./changes";
import type { Desk, Part } from "./desk";
import { fill, make, report, scrolled } from "./dom";
import type { Leg, Panel, Planned } from "./door";
import { badge } from "./panel";

export class Effect implements Part {
  readonly element = make("div", { "aria-live": "polite" });
  private readonly line: HTMLElement;
  /** There was a plan before. */
  private had = false;
  /** What is said is as wide as its words. */
  private readonly wide = new ResizeObserver(() => scrolled(this.line));

  constructor(private readonly desk: Desk) {
    this.line = report(desk.words("draw-effect"), { class: "app-effect", hidden: true });
    this.element.append(this.line);
    passed(this.line, () => this.element.parentElement?.querySelector(".app-panel:not([hidden])") ?? null);
  }

  show(panel: Panel, before: Planned | null): void {
    const planned = "verdict" in panel;
    const said = planned ? before && this.said(panel, before) : panel.faults.length > 0 && this.had ? [this.desk.words("draw-no-plan")] : null;
    this.had ||= planned;
    const next = make("p", {}, ...(said ?? []));
    this.line.hidden = said === null;
    // On the ice the first fault is told in its place.
    this.line.classList.toggle("app-refused", !planned);
    // What is said already is not said again.
    if (next.outerHTML === this.line.innerHTML) return;
    fill(this.line, next);
    this.wide.disconnect();
    this.wide.observe(next);
  }

  private said(plan: Planned, before: Planned): (Node | string)[] {
    const known = plan.legs.map((leg) => ({ leg, was: legBefore(leg, plan, before) }));
    const kept = new Set(known.map(({ was }) => was));
    const gone = before.legs.filter((leg) => leg.roped && !kept.has(leg));
    const other = known.filter(({ leg, was }) => was?.verdict !== leg.verdict && (was || leg.roped));
    const words = [...other.map(({ leg, was }) => this.turned(leg, was)), ...gone.map((leg) => make("del", {}, this.word(leg)))];
    if (words.length > 0) return words.flatMap((word) => [word, " "]);
    const { words: say } = this.desk;
    const figures = known.filter(({ leg, was }) => figuresOf(leg, was).some((figure) => figure.was !== null));
    return [figures.length > 0 ? `${say("draw-effect-figures")} ${figures.map(({ leg }) => leg.leg).join(", ")}` : say("draw-effect-none")];
  }

  private turned(leg: Leg, was: Leg | null): HTMLElement {
    const now = make("ins", {}, badge(leg.verdict, this.desk));
    if (!was) return make("span", {}, make("ins", {}, this.word(leg)));
    return make("span", {}, `${this.desk.words("draw-leg")} ${leg.leg}: `, make("del", {}, badge(was.verdict, this.desk)), " ", now);
  }

  private word(leg: Leg): HTMLElement {
    return make("span", {}, `${this.desk.words("draw-leg")} ${leg.leg}: `, badge(leg.verdict, this.desk));
  }
}

/** A finger that sets out on a line scrolls it sideways, and up and down what is under it. */
function passed(line: HTMLElement, under: () => Element | null): void {
  let last: number | null = null;
  line.addEventListener("pointerdown", ({ pointerType, clientY }) => (last = pointerType === "mouse" ? null : clientY));
  line.addEventListener("pointermove", ({ clientY }) => {
    if (last === null) return;
    under()?.scrollBy(0, last - clientY);
    last = clientY;
  });
  for (const end of ["pointerup", "pointercancel"]) line.addEventListener(end, () => (last = null));
  line.addEventListener("wheel", ({ deltaX, deltaY }) => Math.abs(deltaY) > Math.abs(deltaX) && under()?.scrollBy(0, deltaY), { passive: true });
}
