/** A zones file as text and as features: what is not touched here is written as it was read, byte for byte. */

import { type Drawn, type Geometry, newKey } from "./model";
import { type Member, type Slice, cut, elements, members, values } from "./slices";

/** What stands round the features of a file. */
export interface Around {
  readonly head: string;
  readonly joint: string;
  readonly tail: string;
  /** The file and the keys of its features as they were read. */
  readonly read: { readonly text: string; readonly keys: readonly number[] } | null;
}

export interface ZonesFile {
  readonly zones: readonly Drawn[];
  readonly around: Around;
}

type Properties = Record<string, unknown>;

/** What a GeoJSON object can be. */
const TYPES = /^(Feature|(Feature|Geometry)Collection|(Multi)?(Point|LineString|Polygon))$/;

/** A file that nothing was read from. */
export const PLAIN: Around = {
  head: '{"type": "FeatureCollection", "features": [\n  ',
  joint: ",\n  ",
  tail: "\n]}\n",
  read: null,
};

/** How each feature stood in the file, to write what of it stays. */
const originals = new Map<number, { readonly text: string; readonly geometry: Geometry | null }>();

/** Reads a zones file. Throws a `SyntaxError` where it is none: what is wrong with it the program says. */
export function readZones(text: string): ZonesFile {
  const found = values(text);
  // Slices are right only in a text that is whole.
  for (const value of found) JSON.parse(cut(text, value));
  const first = found[0];
  if (found.length === 1 && first && typeOf(text, first) === "FeatureCollection") {
    return readCollection(text, first);
  }
  const kept: string[] = [];
  const zones = found.flatMap((value) => readValue(text, value, kept));
  if (zones.length === 0) throw new SyntaxError("no feature");
  const head = `{"type": "FeatureCollection", ${kept.map((member) => `${member}, `).join("")}"features": [\n  `;
  return { zones, around: { ...PLAIN, head } };
}

/** Like it; of a file that cannot be read nothing is drawn, and its text stays in front of what is, so that the program says what is wrong. */
export function readAny(text: string): ZonesFile {
  try {
    return readZones(text);
  } catch {
    return { zones: [], around: { head: text, joint: "\n", tail: "\n", read: { text, keys: [] } } };
  }
}

/** The file with these features. */
export function writeZones(zones: readonly Drawn[], around: Around): string {
  const { read } = around;
  const as = (key: number, index: number) => zones[index]?.key === key && zones[index].verbatim !== null;
  if (read && read.keys.length === zones.length && read.keys.every(as)) return read.text;
  return around.head + zones.map(featureText).join(around.joint) + around.tail;
}

/** Of several of a name the last one counts, as everywhere. */
const lastOf = (all: readonly Member[], name: string) => all.filter((member) => member.name === name).at(-1);

function typeOf(text: string, value: Slice): unknown {
  if (text[value.from] !== "{") return undefined;
  const type = lastOf(members(text, value.from), "type");
  return type && JSON.parse(cut(text, type.value));
}

function readCollection(text: string, whole: Slice): ZonesFile {
  const all = members(text, whole.from);
  const list = lastOf(all, "features");
  if (!list || text[list.value.from] !== "[") throw new SyntaxError("no list of features");
  const places = elements(text, list.value.from);
  const zones = places.map((place) => readFeature(cut(text, place)));
  const around = { ...edges(text, all, list, places), read: { text, keys: zones.map((zone) => zone.key) } };
  return { zones, around };
}

/** What stands before, between and after the features; a box round all of them would be stale. */
function edges(text: string, all: readonly Member[], list: Member, places: readonly Slice[]) {
  const [first, second] = places;
  const last = places.at(-1);
  if (!first || !last || all.some((member) => member.name === "bbox" || (member.name === "features" && member !== list))) {
    const kept = all.filter((member) => member.name !== "bbox" && member.name !== "features");
    return { ...PLAIN, head: `{${kept.map((member) => `${cut(text, member)}, `).join("")}"features": [\n  ` };
  }
  const joint = second ? text.slice(first.to, second.from) : PLAIN.joint;
  return { head: text.slice(0, first.from), joint, tail: text.slice(last.to) };
}

/** One of several values of a text, or one that is no collection; members round its features go to `kept`. */
function readValue(text: string, value: Slice, kept: string[]): Drawn[] {
  const type = typeOf(text, value);
  if (typeof type !== "string" || !TYPES.test(type)) throw new SyntaxError("neither a feature nor a geometry");
  if (type === "Feature") return [readFeature(cut(text, value))];
  if (type !== "FeatureCollection") {
    return [readFeature(`{"type": "Feature", "properties": {}, "geometry": ${cut(text, value)}}`)];
  }
  const all = members(text, value.from);
  const known = new Set(["type", "features", "bbox", ...kept.map((member) => members(`{${member}}`, 0)[0]?.name)]);
  kept.push(...all.filter((member) => !known.has(member.name)).map((member) => cut(text, member)));
  const list = lastOf(all, "features");
  return list ? elements(text, list.value.from).map((place) => readFeature(cut(text, place))) : [];
}

function readFeature(text: string): Drawn {
  const feature: unknown = JSON.parse(text);
  // Nothing here could be picked, mended or taken out: what it is the program says.
  if (!isObject(feature) || feature["type"] !== "Feature") throw new SyntaxError("no feature");
  const geometry = isObject(feature["geometry"]) ? (feature["geometry"] as unknown as Geometry) : null;
  const properties = isObject(feature["properties"]) ? feature["properties"] : {};
  const key = newKey();
  originals.set(key, { text, geometry });
  return { key, verbatim: text, geometry, properties };
}

const isObject = (value: unknown): value is Properties =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function featureText(zone: Drawn): string {
  if (zone.verbatim !== null) return zone.verbatim;
  const original = originals.get(zone.key);
  const known = original ? members(original.text, 0) : [];
  const text = original?.text ?? "";
  const same = original !== undefined && original.geometry === zone.geometry;
  const geometry = (value: Slice | undefined) => (same && value ? cut(text, value) : geometryText(zone.geometry));
  const parts = known.flatMap((member) => {
    if (member.name === "properties") return [`"properties": ${propertiesText(zone.properties, text, member)}`];
    if (member.name === "geometry") return [`"geometry": ${geometry(member.value)}`];
    return member.name === "bbox" && !same ? [] : [cut(text, member)];
  });
  const names = new Set(known.map((member) => member.name));
  if (!names.has("type")) parts.unshift('"type": "Feature"');
  if (!names.has("properties")) parts.push(`"properties": ${propertiesText(zone.properties, "", null)}`);
  if (!names.has("geometry")) parts.push(`"geometry": ${geometry(undefined)}`);
  return `{${parts.join(", ")}}`;
}

/** The properties; those that are as they were read are written as they stood. */
function propertiesText(properties: Properties, text: string, was: Member | null): string {
  const known = was && text[was.value.from] === "{" ? members(text, was.value.from) : [];
  const before = new Map(known.map((member) => [member.name, member]));
  const parts = Object.entries(properties).flatMap(([name, value]) => {
    const written = JSON.stringify(value) as string | undefined;
    if (written === undefined) return [];
    const member = before.get(name);
    const same = member && JSON.stringify(JSON.parse(cut(text, member.value))) === written;
    return [same ? cut(text, member) : `${JSON.stringify(name)}: ${written}`];
  });
  return `{${parts.join(", ")}}`;
}

/** A ten-millionth of a degree is about a centimetre. */
const DECIMALS = 1e7;

function geometryText(geometry: Geometry | null): string {
  if (geometry === null) return "null";
  const { bbox: _, ...kept } = geometry as Geometry & { bbox?: unknown };
  return JSON.stringify({ ...kept, coordinates: rounded(geometry.coordinates) });
}

function rounded(value: unknown): unknown {
  if (!Array.isArray(value)) return value;
  if (typeof value[0] !== "number") return value.map(rounded);
  return value.map((number: unknown, axis) =>
    typeof number === "number" && axis < 2 ? Math.round(number * DECIMALS) / DECIMALS : number,
  );
}
