/** Files that are opened or dropped: what each is, and the state with all of them as one step. Nothing is asked; it can be undone. */

import { said } from "./answers";
import { checkOf, tomlOf, tripIn } from "./calls";
import { decoded } from "./decode";
import type { Desk } from "./desk";
import type { Trip, TripDoor } from "./door";
import type { NamedBytes } from "./given";
import { NOTHING, besideOf, withBeside } from "./held";
import type { State } from "./model";
import { withMember } from "./number";
import { baseName, besideTrip, isNamed, isTrip, isWanted, tripIn as tripFileIn, withoutTrip } from "./set";
import { MOST_BYTES, isZip, unzipped } from "./unzip";
import { givenIn, heldOf } from "./whole";
import { readZones } from "./zones";

/** What a file turned out to be. */
export type Kind = "route" | "zones" | "inventory" | "trip" | "terrain" | "page" | "other";

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

/** What was opened, and whether all that was there before made room for it. */
export interface Taken {
  readonly opened: readonly Opened[];
  readonly whole: boolean;
}

/** A file that was read, with what it makes of a state. */
interface Read extends Opened {
  readonly put?: (state: State) => State;
  readonly did?: string;
  /** What was drawn, and its text. */
  readonly drawn?: { readonly text: string; readonly zones: State["zones"] };
}

/** Opens files as one step; an archive as what lies in it. */
export async function openAll(files: readonly File[], desk: Desk, outputs: readonly string[]): Promise<Taken> {
  const [loose, taken]: [NamedBytes[], Taken[]] = [[], []];
  for (const file of files) {
    try {
      const one = { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
      if (isZip(one.bytes)) taken.push(await openArchive(one, desk, outputs));
      else loose.push(one);
    } catch (error) {
      // What cannot even be read, such as a folder or more than there is room for, is told like what cannot be used.
      taken.push({ opened: [{ name: file.name, kind: null, says: said(error, desk.words) }], whole: false });
    }
  }
  if (loose.length > 0) taken.push(await openThese(loose, desk, false));
  return { opened: taken.flatMap((one) => one.opened), whole: taken.some((one) => one.whole) };
}

/** A set that was saved, with its trip, is opened in place of what was there; of others what lies in them as if it came alone. */
async function openArchive({ name, bytes }: NamedBytes, desk: Desk, outputs: readonly string[]): Promise<Taken> {
  const all = await unzipped(bytes, isWanted, desk.words);
  const file = tripFileIn(all);
  const trip = file && (await readTrip(file, all, desk)).trip;
  // With a trip file that is wrong the rest is opened, so that what is wrong with it is told.
  const files = file ? besideTrip(all, file, trip ?? {}, outputs) : withoutTrip(all, outputs);
  if (files.length === 0) return { opened: [{ name, kind: null, says: desk.words("draw-zip-nothing") }], whole: false };
  return openThese(files, desk, !!trip);
}

/** Reads all of them, and then opens what can be used as one step; a trip last, since it may name the others. */
async function openThese(files: readonly NamedBytes[], desk: Desk, whole: boolean): Promise<Taken> {
  const trips: (Read & { readonly trip?: Trip })[] = [];
  for (const file of files.filter(isTrip)) trips.push(await readTrip(file, files, desk));
  const named = trips.filter(({ trip }) => trip).at(-1)?.trip ?? {};
  const isOther = ({ name }: { readonly name: string }) => isNamed(name, [named.practice]);
  const read: Read[] = [];
  for (const file of files) if (!isTrip(file) || isOther(file)) read.push(await readOne(file, named, desk));
  read.push(...trips.filter((one) => !isOther(one)));
  const { state: before } = desk.store;
  const puts = read.filter((one) => one.put);
  const did = puts.length === 1 ? (puts[0]?.did ?? "") : "draw-did-open";
  const start = (state: State) => (whole ? withBeside({ ...state, zones: [], trip: {} }, NOTHING) : state);
  if (puts.length > 0) desk.store.change(did, (state) => puts.reduce((now, { put }) => put?.(now) ?? now, start(state)));
  return { opened: read.map((one) => laterInventory(one, before, desk, whole)), whole: whole || puts.some((one) => one.kind === "page") };
}

/** By what the trip beside it calls it, then by what it holds. */
async function readOne(file: NamedBytes, named: Trip, desk: Desk): Promise<Read> {
  const { bytes, name: path } = file;
  const name = baseName(path);
  const one = { name, bytes };
  if (isNamed(name, [named.practice])) return { name: path, kind: "other", says: "", put: (state) => withFile(state, one), did: "draw-did-open" };
  if (isTerrain(name, bytes)) return { ...(await readTerrain(one, desk)), name: path };
  const { text, guessed } = decoded(bytes);
  if (isNamed(name, [named.glaciers])) return { ...(await readInventory({ name, bytes: new TextEncoder().encode(text) }, desk)), name: path, guessed };
  return { ...(await readText(name, text, desk)), name: path, guessed };
}

function readText(name: string, text: string, desk: Desk): Promise<Read> {
  const begins = /[^\ufeff\s\x1e]/.exec(text)?.[0];
  if (begins === "<") return /^\s*<!doctype html/i.test(text) ? readPage(name, text, desk) : readRoute(name, text, desk);
  return begins === "{" || /\.(geo)?json(l|seq)?$/i.test(name) ? readDrawn(name, text, desk) : readTrip({ name, bytes: new TextEncoder().encode(text) }, [], desk);
}

/** By what it begins with, then by its ending. */
const isTerrain = (name: string, bytes: Uint8Array): boolean =>
  /^(II[*+]\0|MM\0[*+])/.test(String.fromCharCode(...bytes.subarray(0, 4))) || /\.(tiff?|hgt)$/i.test(name);

/** What is wrong with it in the program's words; nothing where it can be used. */
async function wrong(name: string, holds: string | Uint8Array, desk: Desk): Promise<string | null> {
  const { code, err } = await desk.engine.run(checkOf(name, holds));
  return code === 0 ? null : err;
}

async function readRoute(name: string, text: string, desk: Desk): Promise<Read> {
  const says = await wrong(name, text, desk);
  if (says !== null) return { name, kind: null, says };
  return { name, kind: "route", says: "", put: (state) => withBeside(state, { route: { name, text } }), did: "draw-did-open-route" };
}

async function readTerrain(file: NamedBytes, desk: Desk): Promise<Read> {
  const { name } = file;
  const says = await wrong(name, file.bytes, desk);
  if (says !== null) return { name, kind: null, says };
  const put = (state: State) => {
    const known = state.trip.terrain ?? [];
    return { ...withFile(state, file), trip: withMember(state.trip, "terrain", known.includes(name) ? known : [...known, name]) };
  };
  return { name, kind: "terrain", says: "", put, did: "draw-did-open-terrain" };
}

async function readInventory(file: NamedBytes, desk: Desk): Promise<Read> {
  const says = await wrong(file.name, file.bytes, desk);
  if (says !== null) return { name: file.name, kind: null, says };
  return { name: file.name, kind: "inventory", says: "", put: (state) => withInventory(state, file), did: "draw-did-open-inventory" };
}

/** Zones, unless somebody says that it is the inventory. */
async function readDrawn(name: string, text: string, desk: Desk): Promise<Read> {
  let read: ReturnType<typeof readZones>;
  try {
    read = readZones(text);
  } catch {
    return { name, kind: null, says: (await wrong(name, text, desk)) ?? "" };
  }
  const put = (state: State) => ({ ...withBeside(state, { zonesName: name, around: read.around }), zones: read.zones });
  return { name, kind: "zones", says: "", put, did: "draw-did-open-zones", drawn: { text, zones: read.zones } };
}

/** With a way to say that it is the inventory: not in a set whose trip would name that. */
function laterInventory(one: Read, before: State, desk: Desk, whole: boolean): Opened {
  const { drawn } = one;
  if (whole || !drawn) return one;
  const file = { name: baseName(one.name), bytes: new TextEncoder().encode(drawn.text) };
  const asInventory = () => desk.store.change("draw-did-open-inventory", (now) => withInventory(zonesOf(before, now, drawn.zones), file));
  return { ...one, asInventory };
}

/** The state with the zones of before, unless those that were opened were worked on since. */
function zonesOf(before: State, now: State, opened: State["zones"]): State {
  if (now.zones !== opened) return now;
  const { zonesName, around } = besideOf(before);
  return { ...withBeside(now, { zonesName, around }), zones: before.zones };
}

/** A trip file; the practice file that it may name lies beside it or is at hand already. */
async function readTrip(file: NamedBytes, beside: readonly NamedBytes[], desk: Desk): Promise<Read & { readonly trip?: Trip }> {
  const { text, guessed } = decoded(file.bytes);
  const { trip, says } = await tripOf(baseName(file.name), text, [...besideOf(desk.store.state).files, ...beside.filter((one) => one !== file)], desk);
  if (!trip) return { name: file.name, kind: null, says };
  return { name: file.name, kind: "trip", says: "", guessed, trip, put: (state) => ({ ...state, trip: laidOut(trip, state) }), did: "draw-did-open-trip" };
}

/** The members of a trip file, or what is wrong with it. */
async function tripOf(name: string, text: string, beside: readonly NamedBytes[], desk: Desk): Promise<{ readonly trip: Trip | null; readonly says: string }> {
  const named = beside.filter(isTrip).map((one) => [baseName(one.name), one.bytes] as const);
  const came = await desk.engine.run(tripIn(text, named));
  if (came.code !== 0) return { trip: null, says: (await wrong(name, text, desk)) ?? came.err };
  return { trip: (JSON.parse(new TextDecoder().decode(came.out)) as TripDoor).trip, says: "" };
}

/** Another page of this kind: all that it was saved with. Its trip goes through the program, which takes no other than one that can be. */
async function readPage(name: string, html: string, desk: Desk): Promise<Read> {
  const given = givenIn(html);
  if (!given) return { name, kind: null, says: desk.words("draw-open-no-page") };
  const held = await heldOf(given, MOST_BYTES);
  const { code, out, err } = await desk.engine.run(tomlOf(held));
  const { trip, says } = code === 0 ? await tripOf("trip.toml", new TextDecoder().decode(out), held.beside.files, desk) : { trip: null, says: err };
  if (!trip) return { name, kind: null, says };
  return { name, kind: "page", says: "", put: () => ({ ...held, trip }), did: "draw-did-open" };
}

/** The trip with the files that are at hand: those that it names by whatever path, or those of before where it names none. */
function laidOut(trip: Trip, state: State): Trip {
  const names = new Set(besideOf(state).files.map((file) => file.name));
  const here = (path: string) => (names.has(baseName(path)) ? baseName(path) : path);
  const terrain = trip.terrain?.map(here) ?? state.trip.terrain;
  const glaciers = trip.glaciers === undefined ? state.trip.glaciers : here(trip.glaciers);
  const practice = trip.practice === undefined ? undefined : here(trip.practice);
  return withMember(withMember(withMember(trip, "terrain", terrain), "glaciers", glaciers), "practice", practice);
}

const withInventory = (state: State, file: NamedBytes): State => ({
  ...withFile(state, file),
  trip: withMember(state.trip, "glaciers", file.name),
});

const withFile = (state: State, file: NamedBytes): State =>
  withBeside(state, { files: [...besideOf(state).files.filter((one) => one.name !== file.name), file] });
