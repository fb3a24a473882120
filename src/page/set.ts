/** Which files of an archive a page is set up from, and which are only what was made of them. */

import type { Trip } from "./door";
import type { NamedBytes } from "./given";

/** Endings of files that can be opened, of a page with them, and of archives of all these. */
const ENDINGS = [".gpx", ".geojson", ".json", ".geojsonl", ".geojsonseq", ".toml", ".tif", ".tiff", ".hgt", ".html"];
export const OFFERED = [...ENDINGS, ".zip"].join();

/** The output that every set of them has. */
const SIGN = "plan.json";
const FOLDER = "plan/";

/** The name of a file without its folders. */
export const baseName = (path: string): string => path.split(/[/\\]/).at(-1) ?? path;

const folderOf = (path: string): string => path.slice(0, path.length - baseName(path).length);

const endsWith = (ending: RegExp) => (file: NamedBytes): boolean => ending.test(file.name);
const isRoute = endsWith(/\.gpx$/i);
const isJson = endsWith(/\.(geo)?json(l|seq)?$/i);
const isHtml = endsWith(/\.html$/i);
export const isTrip = endsWith(/\.toml$/i);

/** Not what systems put beside files for themselves, nor what is something else. */
export const isWanted = (path: string): boolean =>
  ENDINGS.some((ending) => path.toLowerCase().endsWith(ending)) && !baseName(path).startsWith(".") && !/(^|\/)__MACOSX\//.test(path);

/** Whether it is one of the files that a trip names. */
export const isNamed = (path: string, names: readonly (string | undefined)[]): boolean =>
  names.some((name) => name !== undefined && baseName(name) === baseName(path));

/** The trip file of an archive: the one of that name, else the one that lies least deep. */
export function tripIn(files: readonly NamedBytes[]): NamedBytes | null {
  const depth = ({ name }: NamedBytes) => name.split("/").length - (baseName(name) === "trip.toml" ? 0.5 : 0);
  return files.filter(isTrip).sort((some, other) => depth(some) - depth(other))[0] ?? null;
}

/** What a set with that trip is set up from: what the trip names, and the route and the drawing that lie beside it. */
export function besideTrip(files: readonly NamedBytes[], file: NamedBytes, trip: Trip, outputs: readonly string[]): NamedBytes[] {
  const folder = folderOf(file.name);
  const names = [...(trip.terrain ?? []), trip.glaciers, trip.practice];
  const named = files.filter((one) => one !== file && isNamed(one.name, names));
  const others = files.filter((one) => !isTrip(one) && !isHtml(one) && !named.includes(one) && !one.name.startsWith(`${folder}${FOLDER}`));
  const beside = others.filter((one) => folderOf(one.name) === folder);
  // An output has a name of its own, under which a route or a drawing may lie too.
  const given = (is: (one: NamedBytes) => boolean) => {
    const near = beside.some(is) ? beside.filter(is) : others.filter(is);
    const own = near.filter((one) => !outputs.includes(baseName(one.name)));
    return (own.length > 0 ? own : near).slice(-1);
  };
  return [...named, ...beside.filter((one) => !isRoute(one) && !isJson(one)), ...given(isRoute), ...given(isJson), file];
}

/** Without a trip: the page where one lies there, since it holds everything; else all but what was made of the rest. */
export function withoutTrip(files: readonly NamedBytes[], outputs: readonly string[]): NamedBytes[] {
  const page = files.find((one) => isHtml(one) && new TextDecoder().decode(one.bytes).includes('id="given"'));
  if (page) return [page];
  const made = files.some((one) => baseName(one.name) === SIGN);
  return files.filter((one) => !isHtml(one) && !(made && isJson(one) && outputs.includes(baseName(one.name))));
}
