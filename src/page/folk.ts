/** Who goes and which ropes are at hand, out of the forms that a trip file has for them, and back. */

import type { Trip, TripRope } from "./door";
import { shown, typed, withMember } from "./number";
import type { Words } from "./words";

/** One person; a name or a mass may be missing. */
export interface Person {
  readonly name: string;
  readonly mass_kg?: unknown;
}

/** The people of a trip in whatever form it has them. */
export function people(trip: Trip): Person[] {
  const { party } = trip;
  if (typeof party === "number") {
    const count = Number.isInteger(party) ? Math.min(Math.max(party, 0), MOST) : 0;
    return Array.from({ length: count }, () => ({ name: "" }));
  }
  if (!Array.isArray(party)) return [];
  return (party as readonly unknown[]).map((one) => {
    if (typeof one !== "object" || one === null) return { name: "", mass_kg: one };
    const { name, ...others } = one as { name?: unknown };
    return { ...others, name: typeof name === "string" ? name : "" };
  });
}

/** More than this many rows nobody fills in. */
const MOST = 60;

/** The party as a trip file has it: how many, their masses, or each with a name. */
export function party(folk: readonly Person[]): Trip["party"] {
  if (folk.length === 0) return undefined;
  const named = folk.some((person) => person.name !== "");
  const weighed = folk.filter((person) => person.mass_kg !== undefined);
  if (!named && weighed.length === 0) return folk.length;
  if (!named && weighed.length === folk.length) return folk.map((person) => person.mass_kg as number);
  return folk as readonly { name: string; mass_kg?: number }[];
}

/** The ropes of a trip. */
export const ropes = (trip: Trip): readonly TripRope[] => (Array.isArray(trip.rope) ? trip.rope : []);

/** The name of a rope, else its length. */
export const ropeTitle = (rope: TripRope, words: Words): string => shown(rope["name"]) || `${shown(rope.length_m)} ${words("draw-unit-m")}`;

/** The name of two ropes that are one, and which they were. */
export const joinedName = (first: string, second: string): string => `${first}${BEND}${second}`;
export const partsOf = (name: string): string[] => name.split(BEND);
const BEND = " + ";

/** The trip with these people. The split into teams goes with those who it was for. */
export function withPeople(trip: Trip, folk: readonly Person[]): Trip {
  const { teams, ...others } = trip;
  const split = teams && folk.length === people(trip).length ? { teams } : {};
  return without({ ...others, ...split, party: party(folk) });
}

/** The same; where they are those of an earlier trip again, with its split into teams. */
export function withPeopleOf(was: Trip, trip: Trip, folk: readonly Person[]): Trip {
  const next = withPeople(trip, folk);
  return JSON.stringify(folk) === JSON.stringify(people(was)) ? withMember(next, "teams", was.teams) : next;
}

/** The trip with these ropes; one whose name was emptied has none. */
export function withRopes(trip: Trip, all: readonly TripRope[]): Trip {
  const rope = all.map((one) => (one["name"] === "" ? withMember(one, "name", undefined) : one));
  return without({ ...trip, rope: rope.length > 0 ? rope : undefined });
}

/** What is not said is left out. */
export function without(trip: Record<string, unknown>): Trip {
  return Object.fromEntries(Object.entries(trip).filter(([, value]) => value !== undefined)) as Trip;
}

/** The element of a list made another; a member without a value is left out. */
export function changed<T extends object>(list: readonly T[], at: number, name: string, text: string, number: boolean): T[] {
  const value = number ? typed(text) : text;
  return list.map((one, index) => {
    if (index !== at) return one;
    const next: Record<string, unknown> = { ...one, [name]: value };
    if (value === undefined || (value === "" && name !== "name")) delete next[name];
    return next as T;
  });
}
