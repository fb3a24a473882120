/** What was done on the ice, taken back act by act: that alone, whatever was changed elsewhere meanwhile. */

import { people, ropes, withPeopleOf, withRopes } from "./folk";
import { type Drawn, type State, touched } from "./model";
import { withMember } from "./number";

/** One act on the ice: the state before it, and after it. */
export interface Act {
  readonly was: State;
  readonly left: State;
  /** Key of the words that name it. */
  readonly did: string;
  /** What goes on with an act of the same name is one with it, such as the steps of one gap. */
  readonly name: string;
}

/** An act that still shows in a state, and the state without it. */
export interface Standing {
  readonly act: Act;
  readonly now: State;
  readonly without: State;
}

/** What of each state was done on the ice: whoever goes a step back or forth comes to the same state again. */
const known = new WeakMap<State, readonly Act[]>();

/** States that hold nothing which was done since the page was opened, or nothing of the ice any more. */
const plain = new WeakSet<State>();

/** The acts on the ice that led to a state. */
export const actsOf = (state: State): readonly Act[] => known.get(state) ?? [];

/** Says by which acts a state came about. */
export const remember = (state: State, acts: readonly Act[]): void => void known.set(state, acts);

/** Says that nothing in a state is a change. */
export const markPlain = (state: State): void => void plain.add(state);

export const isPlain = (state: State): boolean => plain.has(state);

/** Whether two states say the same. */
export function same(some: State, other: State): boolean {
  const zones = some.zones.length === other.zones.length && some.zones.every((zone, at) => sameZone(zone, other.zones[at]));
  return zones && (some.trip === other.trip || sorted(some.trip) === sorted(other.trip));
}

const sameZone = (some: Drawn, other: Drawn | undefined): boolean =>
  some === other || (some.geometry === other?.geometry && sorted(some.properties) === sorted(other.properties));

/** Members in one order, whichever they stand in. */
const sorted = (all: unknown): string =>
  JSON.stringify(all, (_, value: unknown) =>
    typeof value === "object" && value !== null && !Array.isArray(value) ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))) : value,
  );

export class TakeBack {
  private acts: readonly Act[] = [];

  /** An act; one that undoes another one leaves nothing of both. */
  add(act: Act): void {
    if (act.was === act.left) return;
    this.acts = this.and(act);
    known.set(act.left, this.acts);
  }

  /** The state that an act leaves, without what was done on the ice, that act too. */
  bare(act: Act): State {
    return this.and(act).reduceRight(undone, act.left);
  }

  /** The acts with one more, which may go on with the last. */
  private and({ was, left, did, name }: Act): readonly Act[] {
    const last = this.acts.at(-1);
    const goesOn = name !== "" && last?.name === name && last.left === was;
    const act = goesOn ? { ...last, left } : { was, left, did, name };
    return shortened(goesOn ? this.acts.slice(0, -1) : this.acts, act, left);
  }

  /** A state that comes: one that was there already with what was done then, one that is new with all of it. */
  come(state: State): void {
    this.acts = known.get(state) ?? this.acts;
    known.set(state, this.acts);
  }

  /** The state without what was done on the ice. */
  without(now: State): State {
    return this.acts.reduceRight(undone, now);
  }

  /** What of it shows in a state, the last first. */
  standing(now: State): Standing[] {
    const found: Standing[] = [];
    this.acts.reduceRight((state, act) => {
      const without = undone(state, act);
      if (!same(without, state)) found.push({ act, now: state, without });
      return without;
    }, now);
    return found;
  }

  /** The state without the last act, or without any; what is left of the acts belongs to it. */
  back(now: State, all: boolean): State {
    const [last, ...others] = this.standing(now);
    if (!last) return now;
    const next = all ? this.without(now) : last.without;
    this.acts = all || others.length === 0 ? [] : this.acts.slice(0, this.acts.indexOf(last.act));
    known.set(next, this.acts);
    if (this.acts.length === 0) plain.add(next);
    return next;
  }
}

/** The acts with one more, without what it takes back of them. */
function shortened(acts: readonly Act[], act: Act, now: State): readonly Act[] {
  const before = undone(now, act);
  if (same(before, now)) return acts;
  const undoes = [...acts].reverse().find((one) => same(undone(before, one), now));
  return undoes ? withoutOne(acts, undoes) : [...acts, act];
}

/** The acts without one of them: those after it are acts on a state without it. */
function withoutOne(acts: readonly Act[], out: Act): Act[] {
  const at = acts.indexOf(out);
  const later = acts.slice(at + 1).map((one) => ({ ...one, was: undone(one.was, out), left: undone(one.left, out) }));
  return [...acts.slice(0, at), ...later];
}

/** What an act can change of a trip beside people and ropes: the snow, the start, and what a way does otherwise. */
const MEMBERS = ["snow", "start", "start_at_km", "teams", "practice", "assume"] as const;

function undone(now: State, { was, left }: Act): State {
  if (now === left) return was;
  let { trip } = now;
  const sign = (one: unknown) => JSON.stringify(one);
  if (sign(people(was.trip)) !== sign(people(left.trip))) {
    trip = withPeopleOf(was.trip, trip, merged(people(now.trip), people(was.trip), people(left.trip)));
  }
  if (sign(ropes(was.trip)) !== sign(ropes(left.trip))) trip = withRopes(trip, merged(ropes(now.trip), ropes(was.trip), ropes(left.trip)));
  for (const name of MEMBERS) {
    const [before, after] = [was.trip[name], left.trip[name]];
    if (sign(before) !== sign(after) && sign(trip[name]) === sign(after)) trip = withMember(trip, name, before);
  }
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

/** Properties with the gaps of others. */
export const gapsOf = (from: Drawn["properties"], into: Drawn["properties"]): Drawn["properties"] =>
  GAPS.reduce((all, name) => withMember(all, name, from[name]), into);

const gaps = ({ properties }: Drawn): string => JSON.stringify(GAPS.map((name) => properties[name] ?? null));

/** Gaps as they were, unless they were changed since; zones that were made there only go as they came. */
function zonesUndone(now: State, { was, left }: Pick<Act, "was" | "left">): State {
  const before = new Map(was.zones.map((zone) => [zone.key, zone]));
  return left.zones.reduce((state, there) => {
    const old = before.get(there.key);
    if (old === there) return state;
    const here = state.zones.find((zone) => zone.key === there.key);
    if (!here) return state;
    if (!old) return here === there ? { ...state, zones: state.zones.filter((zone) => zone !== here) } : state;
    if (gaps(here) !== gaps(there)) return state;
    if (here === there) return { ...state, zones: state.zones.map((zone) => (zone === here ? old : zone)) };
    return touched(state, here.key, () => ({ properties: gapsOf(old.properties, here.properties) }));
  }, now);
}
