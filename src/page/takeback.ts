/** What was done on the ice, taken back: that alone, whatever was changed elsewhere meanwhile. */

import { people, ropes, withPeopleOf, withRopes } from "./folk";
import { type Drawn, type State, touched } from "./model";
import { withMember } from "./number";

/** The state before some steps on the ice, and after them. */
interface Span {
  readonly was: State;
  readonly left: State;
}

/** What of each state was done on the ice: whoever goes a step back or forth comes to the same state again. */
const known = new WeakMap<State, readonly Span[]>();

export class TakeBack {
  private spans: readonly Span[] = [];

  /** A step on the ice; those that follow on one another are one. */
  add(was: State, left: State): void {
    if (was === left) return;
    const last = this.spans.at(-1);
    const goesOn = last?.left === was;
    this.spans = goesOn ? [...this.spans.slice(0, -1), { was: last.was, left }] : [...this.spans, { was, left }];
    known.set(left, this.spans);
  }

  /** A state that comes: one that was there already with what was done then, one that is new with all of it. */
  come(state: State): void {
    this.spans = known.get(state) ?? this.spans;
    known.set(state, this.spans);
  }

  /** Nothing of what was done is in the states to come. */
  forget(): void {
    this.spans = [];
  }

  /** The state without any of it. */
  without(now: State): State {
    return this.spans.reduceRight(undone, now);
  }
}

function undone(now: State, { was, left }: Span): State {
  if (now === left) return was;
  let { trip } = now;
  const sign = (one: unknown) => JSON.stringify(one);
  if (sign(people(was.trip)) !== sign(people(left.trip))) {
    trip = withPeopleOf(was.trip, trip, merged(people(now.trip), people(was.trip), people(left.trip)));
  }
  if (sign(ropes(was.trip)) !== sign(ropes(left.trip))) trip = withRopes(trip, merged(ropes(now.trip), ropes(was.trip), ropes(left.trip)));
  if (was.trip.snow !== left.trip.snow && now.trip.snow === left.trip.snow) trip = withMember(trip, "snow", was.trip.snow);
  return zonesUndone({ ...now, trip }, { was, left });
}

/** A list with what went out in again, where it was, and what came in out again. */
function merged<Of>(now: readonly Of[], was: readonly Of[], left: readonly Of[]): Of[] {
  const sign = (one: Of) => JSON.stringify(one);
  const count = (list: readonly Of[], name: string) => list.filter((one) => sign(one) === name).length;
  const next = [...now];
  for (const one of left) {
    const name = sign(one);
    if (count(left, name) > count(was, name) && count(next, name) > count(was, name)) next.splice(next.map(sign).lastIndexOf(name), 1);
  }
  was.forEach((one, at) => {
    const name = sign(one);
    if (count(left, name) < count(was, name) && count(next, name) < count(was, name)) next.splice(at, 0, one);
  });
  return next;
}

/** What says how wide the gaps are. */
const GAPS = ["gap_m", "gap_min_m", "gap_max_m", "gap_assumed"] as const;

const gaps = ({ properties }: Drawn): string => JSON.stringify(GAPS.map((name) => properties[name] ?? null));

/** Gaps as they were, unless they were changed since; zones that were made there only go as they came. */
function zonesUndone(now: State, { was, left }: Span): State {
  const before = new Map(was.zones.map((zone) => [zone.key, zone]));
  return left.zones.reduce((state, there) => {
    const old = before.get(there.key);
    if (old === there) return state;
    const here = state.zones.find((zone) => zone.key === there.key);
    if (!here) return state;
    if (!old) return here === there ? { ...state, zones: state.zones.filter((zone) => zone !== here) } : state;
    if (gaps(here) !== gaps(there)) return state;
    if (here === there) return { ...state, zones: state.zones.map((zone) => (zone === here ? old : zone)) };
    const properties = GAPS.reduce((into, name) => withMember(into, name, old.properties[name]), here.properties);
    return touched(state, here.key, () => ({ properties }));
  }, now);
}
