/** Files that are opened or dropped: what each is, and the state with it. Nothing is asked; all of it can be undone. */

import { checkOf, tripIn } from "./calls";
import { decoded } from "./decode";
import type { Trip, TripDoor } from "./door";
import type { Desk } from "./desk";
import type { NamedBytes } from "./given";
import { besideOf, withBeside } from "./held";
import type { State } from "./model";
import { withMember } from "./number";
import { readZones } from "./zones";

/** What a file turned out to be. */
export type Kind = "route" | "zones" | "inventory" | "trip" | "terrain";

export interface Opened {
  readonly name: string;
  /** Null where it could not be used. */
  readonly kind: Kind | null;
  /** What the program says about it. */
  readonly says: string;
  /** Nothing says which letters it is written in. */
  readonly guessed?: boolean;
  /** The same file as the inventory, where it was taken for the zones. */
  readonly asInventory?: () => void;
}

/** Opens one file. */
export async function open(file: File, desk: Desk): Promise<Opened> {
  const { name } = file;
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (isTerrain(name, bytes)) return openTerrain({ name, bytes }, desk);
  const { text, guessed } = decoded(bytes);
  return { ...(await openText(name, text, desk)), guessed };
}

function openText(name: string, text: string, desk: Desk): Promise<Opened> {
  const begins = /[^\ufeff\s\x1e]/.exec(text)?.[0];
  if (begins === "<") return openRoute(name, text, desk);
  return begins === "{" || /\.(geo)?json(l|seq)?$/i.test(name) ? openZones(name, text, desk) : openTrip(name, text, desk);
}

/** By what it begins with, then by its ending. */
const isTerrain = (name: string, bytes: Uint8Array): boolean =>
  /^(II[*+]\0|MM\0[*+])/.test(String.fromCharCode(...bytes.subarray(0, 4))) || /\.(tiff?|hgt)$/i.test(name);

/** What is wrong with it in the program's words; nothing where it can be used. */
async function wrong(name: string, holds: string | Uint8Array, desk: Desk): Promise<string | null> {
  const { code, err } = await desk.engine.run(checkOf(name, holds));
  return code === 0 ? null : err;
}

async function openRoute(name: string, text: string, desk: Desk): Promise<Opened> {
  const says = await wrong(name, text, desk);
  if (says !== null) return { name, kind: null, says };
  desk.store.change("draw-did-open-route", (state) => withBeside(state, { route: { name, text } }));
  return { name, kind: "route", says: "" };
}

async function openTerrain(file: NamedBytes, desk: Desk): Promise<Opened> {
  const says = await wrong(file.name, file.bytes, desk);
  if (says !== null) return { name: file.name, kind: null, says };
  desk.store.change("draw-did-open-terrain", (state) => {
    const named = state.trip.terrain ?? [];
    const terrain = named.includes(file.name) ? named : [...named, file.name];
    return { ...withFile(state, file), trip: withMember(state.trip, "terrain", terrain) };
  });
  return { name: file.name, kind: "terrain", says: "" };
}

async function openZones(name: string, text: string, desk: Desk): Promise<Opened> {
  let read: ReturnType<typeof readZones>;
  try {
    read = readZones(text);
  } catch {
    return { name, kind: null, says: (await wrong(name, text, desk)) ?? "" };
  }
  const before = desk.store.state;
  desk.store.change("draw-did-open-zones", (state) => ({
    ...withBeside(state, { zonesName: name, around: read.around }),
    zones: read.zones,
  }));
  const asInventory = () =>
    desk.store.change("draw-did-open-inventory", (now) => withInventory(zonesOf(before, now, read.zones), { name, bytes: new TextEncoder().encode(text) }));
  return { name, kind: "zones", says: "", asInventory };
}

/** The state with the zones of before, unless those that were opened were worked on since. */
function zonesOf(before: State, now: State, opened: State["zones"]): State {
  if (now.zones !== opened) return now;
  const { zonesName, around } = besideOf(before);
  return { ...withBeside(now, { zonesName, around }), zones: before.zones };
}

async function openTrip(name: string, text: string, desk: Desk): Promise<Opened> {
  const came = await desk.engine.run(tripIn(text, desk.language));
  if (came.code !== 0) return { name, kind: null, says: (await wrong(name, text, desk)) ?? came.err };
  const { trip } = JSON.parse(new TextDecoder().decode(came.out)) as TripDoor;
  desk.store.change("draw-did-open-trip", (state) => ({ ...state, trip: laidOut(trip, state) }));
  return { name, kind: "trip", says: "" };
}

/** The trip with the files that are at hand: those that it names by whatever path, or those of before where it names none. */
function laidOut(trip: Trip, state: State): Trip {
  const names = new Set(besideOf(state).files.map((file) => file.name));
  const here = (path: string) => {
    const base = path.split(/[/\\]/).at(-1) ?? path;
    return names.has(base) ? base : path;
  };
  const terrain = trip.terrain?.map(here) ?? state.trip.terrain;
  const glaciers = trip.glaciers === undefined ? state.trip.glaciers : here(trip.glaciers);
  return withMember(withMember(trip, "terrain", terrain), "glaciers", glaciers);
}

const withInventory = (state: State, file: NamedBytes): State => ({
  ...withFile(state, file),
  trip: withMember(state.trip, "glaciers", file.name),
});

const withFile = (state: State, file: NamedBytes): State =>
  withBeside(state, { files: [...besideOf(state).files.filter((one) => one.name !== file.name), file] });
