/** What turned out otherwise on the ice, in a few words each: who left, what was lost, which gap and which snow it is. */

import { type Desk, zoneTitle } from "./desk";
import type { TripDoor, TripRope } from "./door";
import { sameStart } from "./fieldclock";
import { widest } from "./fieldgap";
import { partsOf, people, ropeTitle, ropes } from "./folk";
import type { State } from "./model";
import { shown } from "./number";

/** What is in one list and not in the other, each as often. */
function missing<Of>(from: readonly Of[], there: readonly Of[], sign: (one: Of) => string): Of[] {
  const left = there.map(sign);
  return from.filter((one) => {
    const at = left.indexOf(sign(one));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

/** The changes from one state to another; `brief` where there is no room for all that a way does otherwise. */
export function since(before: State, now: State, desk: Desk, door: TripDoor | null, brief = false): string[] {
  const other = way(before, now, desk, door);
  const all = [...folk(before, now, desk), ...lost(before, now, desk), ...gaps(before, now, desk), ...snow(before, now, door), ...(brief && other.length > 0 ? [desk.words("draw-did-way")] : other)];
  // The hour that all of it counts from.
  return brief && all.length > 0 ? all : [...all, ...clock(before, now, desk)];
}

function folk(before: State, now: State, { words }: Desk): string[] {
  const [was, are] = [people(before.trip), people(now.trip)];
  const sign = ({ name, mass_kg }: (typeof was)[number]) => name || shown(mass_kg);
  const gone = missing(was, are, sign).map(({ name }) => (name ? `${words("draw-field-without")} ${name}` : words("draw-did-field-leave")));
  return [...gone, ...missing(are, was, sign).map(() => words("draw-did-field-join"))];
}

function lost(before: State, now: State, { words }: Desk): string[] {
  const [was, are] = [ropes(before.trip), ropes(now.trip)];
  const sign = (rope: TripRope) => JSON.stringify(rope);
  const joined = missing(are, was, sign).filter((rope) => rope["joined"] === true).map((rope) => ropeTitle(rope, words));
  const gone = missing(was, are, sign).map((rope) => ropeTitle(rope, words)).filter((name) => !joined.flatMap(partsOf).includes(name));
  return [...gone.map((name) => `${words("draw-field-rope-lost")} ${name}`), ...joined.map((name) => `${words("draw-ways-joined")}: ${name}`)];
}

function gaps(before: State, now: State, desk: Desk): string[] {
  const { words, language } = desk;
  const was = new Map(before.zones.map((zone) => [zone.key, shown(widest([zone]))]));
  const other = now.zones.filter((zone) => shown(widest([zone])) !== (was.get(zone.key) ?? ""));
  return other.map((zone) => {
    const gap = widest([zone]);
    const written = typeof gap === "number" ? `${gap.toLocaleString(language)} ${words("draw-unit-m")}` : shown(gap) || words("draw-not-given");
    return `${words("draw-field-gap-here")} ${written} (${zoneTitle(now, zone, words)})`;
  });
}

function snow(before: State, now: State, door: TripDoor | null): string[] {
  const { snow: name } = now.trip;
  if (name === before.trip.snow || name === undefined) return [];
  const means = door?.terms["snow"]?.find((term) => term.name === name)?.means;
  return [means || name];
}

/** What time it is where, or that it starts as planned again. */
function clock({ trip: was }: State, { trip: is }: State, { words, language }: Desk): string[] {
  if (sameStart(was, is)) return [];
  if (is.start === undefined || is.start_at_km === undefined) return [words("draw-field-clock-off")];
  return [`${words("draw-field-clock-is")} ${is.start} ${words("draw-field-clock-at")} ${is.start_at_km.toLocaleString(language)} ${words("draw-unit-km")}`];
}

/** That it is planned with another way, and the practice set and the figures that it rests on. */
function way(before: State, now: State, { words, language }: Desk, door: TripDoor | null): string[] {
  const sign = ({ trip: { teams, practice, assume } }: State) => JSON.stringify([practice, assume, people(before.trip).length === people(now.trip).length && teams]);
  if (sign(before) === sign(now)) return [];
  const practice = now.trip.practice === before.trip.practice ? [] : [now.trip.practice ?? ""];
  const [was, is] = [before.trip.assume ?? {}, now.trip.assume ?? {}];
  const figures = Object.entries(is).filter(([name, value]) => value !== was[name]);
  const told = figures.map(([name, value]) => {
    const figure = door?.figures.find((one) => one.name === name);
    const says = figure?.says.split(";", 1)[0] ?? name;
    return `${says} ${typeof value === "number" ? value.toLocaleString(language) : shown(value)} ${figure?.unit ?? ""}`.trim();
  });
  const details = [...practice, ...told].filter(Boolean);
  return [details.length > 0 ? `${words("draw-did-way")}: ${details.join(", ")}` : words("draw-did-way")];
}
