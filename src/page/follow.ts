/** What is changed is planned, with the parts of the report that somebody looks at, and what is planned is shown where it is in sight. */

import type { Part } from "./desk";
import type { Panel, Planned } from "./door";
import { Newest } from "./engine";
import { people, ropes } from "./folk";
import { sameRoute } from "./held";
import type { State } from "./model";
import { isPlain } from "./takeback";

interface Wanted {
  readonly state: State;
  /** The number of the step that led to it. */
  readonly step: number;
}

interface Pending {
  readonly panel: Panel;
  readonly of: State;
  /** The parts that do not show it yet. */
  readonly left: Set<Part>;
}

/** On another route nothing is a change, nor is what comes of saying for the first time who goes on which rope. */
const goesOn = (before: State, now: State): boolean => sameRoute(before, now) && (isSaid(before) || sameFolk(before, now));

const sameFolk = ({ trip: before }: State, { trip: now }: State): boolean => before.party === now.party && before.rope === now.rope;

/** So long after a key a number is whole, milliseconds. Our judgement. */
const TYPED_MS = 600;

const isSaid = ({ trip }: State): boolean => people(trip).length > 1 && ropes(trip).some(({ length_m }) => length_m !== undefined);

export class Follow {
  private readonly planner = new Newest<Wanted>((wanted) => this.follow(wanted));
  private parts: readonly Part[] = [];
  private last: Wanted | null = null;
  private typing = 0;
  private shown: { readonly plan: Planned; readonly of: State; readonly step: number } | null = null;
  private before: Planned | null = null;
  private pending: Pending | null = null;
  /** The parts of the report that the last plan was asked for with. */
  private asked: ReadonlySet<string> = new Set();

  /** Takes who plans a state with parts of the report, and who is told once that plan is shown. */
  constructor(
    private readonly planned: (state: State, open: readonly string[]) => Promise<Panel>,
    private readonly done: () => void,
  ) {}

  /** Other parts of the page, in which nothing is a change yet. */
  begin(parts: readonly Part[]): void {
    this.parts = parts;
    [this.shown, this.before, this.pending] = [null, null, null];
  }

  want(state: State, step: number): void {
    const wanted = { state, step };
    this.last = wanted;
    clearTimeout(this.typing);
    // The first length of a rope is typed out, since with its first digit no leg would be inside.
    const first = this.shown && sameRoute(this.shown.of, state) && !isSaid(this.shown.of) && isSaid(state);
    if (first) this.typing = setTimeout(() => this.planner.want(wanted), TYPED_MS);
    else this.planner.want(wanted);
  }

  /** Plans the same state again where something is looked at that its plan does not hold. */
  ask(): void {
    const missing = this.wants().some((name) => !this.asked.has(name));
    if (this.pending && this.last && missing) this.planner.want(this.last);
  }

  /** Shows the plan in what is in sight; what is not follows when it is opened. */
  shows(): void {
    for (const part of this.pending?.left ?? []) {
      if (!this.pending || part.element.closest("[hidden]")) continue;
      this.pending.left.delete(part);
      this.show(part);
    }
  }

  /** Shows the plan, where there is one, in a part that was made anew. */
  show(part: Part): void {
    if (!this.pending) return;
    const { panel, of } = this.pending;
    part.show?.(panel, "verdict" in panel ? this.before : this.latest(of), of);
  }

  /** The last plan that there was on the route of a state. */
  private latest(of: State): Planned | null {
    return this.shown && sameRoute(this.shown.of, of) ? this.shown.plan : null;
  }

  private wants(): string[] {
    return this.parts.flatMap((part) => part.wants?.() ?? []);
  }

  private async follow(wanted: Wanted): Promise<void> {
    const open = [...new Set(this.wants())];
    this.asked = new Set(open);
    const panel = await this.planned(wanted.state, open);
    this.put(panel, wanted);
    this.done();
  }

  /** A plan of that state, or why there is none, in place of the one before. */
  private put(panel: Panel, { state, step }: Wanted): void {
    // Of one step that goes on, what is marked is what it changed in all.
    if (this.shown && step !== this.shown.step) this.before = goesOn(this.shown.of, state) && !isPlain(state) ? this.shown.plan : null;
    if ("verdict" in panel) this.shown = { plan: panel, of: state, step };
    this.pending = { panel, of: state, left: new Set(this.parts) };
    this.shows();
  }
}
