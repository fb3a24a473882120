/** Who is there and who was left out on the ice, and ropes likewise, each in the place that it had; and back in there. */

import type { Trip, TripRope } from "./door";
import { partsOf, people, ropeTitle, ropes, withPeople, withPeopleOf, withRopes } from "./folk";
import type { State } from "./model";
import type { Words } from "./words";

/** One of a list as it was or as it is; `at` is its place in the list as it is, or where it comes in again. */
export interface Slot<Of> {
  readonly one: Of;
  readonly out: boolean;
  readonly at: number;
}

const sign = (one: unknown): string => JSON.stringify(one);

/** All of a list as it was and as it is, in the order that it had; what came since is at the end. */
export function slots<Of>(was: readonly Of[], now: readonly Of[]): Slot<Of>[] {
  const free = now.map((one, at) => ({ name: sign(one), at }));
  let next = 0;
  const known = was.map((one): Slot<Of> => {
    const found = free.findIndex(({ name }) => name === sign(one));
    const [taken] = found < 0 ? [] : free.splice(found, 1);
    if (!taken) return { one, out: true, at: next };
    next = taken.at + 1;
    return { one, out: false, at: taken.at };
  });
  const others = free.flatMap(({ at }) => now.slice(at, at + 1).map((one): Slot<Of> => ({ one, out: false, at })));
  return [...known, ...others];
}

/** The ropes; one that is part of two joined ones is not lost. */
export function ropeSlots(was: Trip, now: Trip, words: Words): Slot<TripRope>[] {
  const joined = ropes(now).filter((rope) => rope["joined"] === true).flatMap((rope) => partsOf(ropeTitle(rope, words)));
  return slots(ropes(was), ropes(now)).filter(({ one, out }) => !out || !joined.includes(ropeTitle(one, words)));
}

/** A list without what is there, or with what is out. */
const turned = <Of>(list: readonly Of[], { one, out, at }: Slot<Of>): Of[] => [...list.slice(0, at), ...(out ? [one] : []), ...list.slice(out ? at : at + 1)];

/** Somebody left out, or back; the split into teams is that of the same people. */
export function turnPerson(state: State, was: State, slot: Slot<ReturnType<typeof people>[number]>): State {
  const folk = turned(people(state.trip), slot);
  return { ...state, trip: slot.out ? withPeopleOf(was.trip, state.trip, folk) : withPeople(state.trip, folk) };
}

/** A rope lost, or found again. */
export function turnRope(state: State, slot: Slot<ReturnType<typeof ropes>[number]>): State {
  const left = turned(ropes(state.trip), slot);
  // That none is left is another thing than that nobody said which there are.
  return { ...state, trip: left.length > 0 ? withRopes(state.trip, left) : { ...state.trip, rope: left } };
}
