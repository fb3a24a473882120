/** What was done on the ice and where somebody is, as they are kept with the work. */

import { type Said, placeSaid, sayPlace } from "./fieldwhere";
import { type Held, besideOf } from "./held";
import { type Drawn, type State, newKey } from "./model";
import { type Act, actsOf, remember } from "./takeback";

export interface Ice {
  /** Without the files of their states; a zone has its place in the list of now for a key, one that is not there one below nothing. */
  readonly acts: readonly Act[];
  readonly said: Said;
}

/** Makes each thing once, so that what is the same thing stays the same. */
function once<From extends object, To>(made: (from: From) => To): (from: From) => To {
  const known = new Map<From, To>();
  return (from) => {
    const to = known.get(from) ?? made(from);
    known.set(from, to);
    return to;
  };
}

const withStates = (acts: readonly Act[], of: (state: State) => State): Act[] =>
  acts.map((act) => ({ ...act, was: of(act.was), left: of(act.left) }));

export function iceOf(now: State): Ice {
  const places = new Map(now.zones.map(({ key }, at) => [key, at]));
  const zone = once((one: Drawn): Drawn => ({ ...one, key: places.get(one.key) ?? -1 - one.key }));
  const state = once(({ zones, trip }: State): State => ({ zones: zones.map(zone), trip }));
  return { acts: withStates(actsOf(now), state), said: placeSaid() };
}

/** Brings it back to a state that was kept with it. */
export function onIce(now: Held, { acts, said }: Ice): void {
  const keys = new Map<number, number>();
  const keyOf = (gone: number) => {
    const key = keys.get(gone) ?? newKey();
    keys.set(gone, key);
    return key;
  };
  const zone = once((one: Drawn): Drawn => {
    const here = now.zones[one.key];
    if (!here) return { ...one, key: keyOf(one.key) };
    const geometry = same(here.geometry, one.geometry) ? here.geometry : one.geometry;
    // What stands in the file that is kept is what it was changed to.
    const changed = { ...one, geometry, key: here.key, verbatim: null };
    return geometry === here.geometry && same(here.properties, one.properties) ? here : changed;
  });
  const state = once(({ zones, trip }: State): State => {
    const all = zones.map(zone);
    const whole = all.length === now.zones.length && all.every((one, at) => one === now.zones[at]) && same(trip, now.trip);
    const held: Held = { zones: all, trip, beside: besideOf(now) };
    return whole ? now : held;
  });
  remember(now, withStates(acts, state));
  sayPlace(said);
}

const same = (some: unknown, other: unknown): boolean => JSON.stringify(some) === JSON.stringify(other);
