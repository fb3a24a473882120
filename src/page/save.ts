/** What can be taken along: zones, trip, every output, all in one archive, and the page itself as it is now. */

import { zipSync } from "fflate";
import { said } from "./answers";
import { outputOf, tomlOf } from "./calls";
import type { Desk } from "./desk";
import { make } from "./dom";
import type { TripDoor } from "./door";
import { type Given, packed } from "./given";
import { besideOf, zonesNameOf, zonesText } from "./held";
import type { State } from "./model";

export interface Made {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What stands behind the name of the trip where it is handed out alone, under that. */
  readonly ending?: string;
  /** Why some of what belongs in it could not be made. */
  readonly lacks?: string;
}

/** Longer names of files are cut, letters. Our judgement. */
const LONGEST = 60;

/** A name as one of a file: its letters and digits, with hyphens between. Empty where it has none. */
function fileName(title: string): string {
  const words = title.normalize("NFC").toLowerCase().match(/[\p{L}\p{M}\p{N}]+/gu) ?? [];
  return [...words.join("-")].slice(0, LONGEST).join("").replace(/-$/, "");
}

/** The file under a name that says of which trip it is, where that has one. */
export function named(made: Made, title: string | null): Made {
  const name = fileName((title ?? "").replace(/\.gpx$/i, ""));
  return name === "" || made.ending === undefined ? made : { ...made, name: `${name}${made.ending}` };
}

const encoded = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The zones file. */
export const zonesFile = (state: State): Made => ({ name: zonesNameOf(state), bytes: encoded(zonesText(state)) });

/** The trip file. */
export async function tripFile(state: State, desk: Desk): Promise<Made> {
  const { code, out, err } = await desk.engine.run(tomlOf(state));
  if (code !== 0) throw new Error(err);
  return { name: "trip.toml", bytes: out, ending: "-trip.toml" };
}

/** How hard it is packed: most of it is packed already, and who waits has cold hands. Our judgement. */
const LEVEL = 3;
/** The first day that an archive can have. */
const DAY = new Date(1980, 0, 1);

export type Output = TripDoor["outputs"][number];

/** An output of the plan. A plan that stops somewhere is one too. */
export async function outputFile(state: State, { format, file }: Pick<Output, "format" | "file">, desk: Desk): Promise<Made> {
  const { code, out, err } = await desk.engine.over(state, outputOf(state, format, desk.language));
  if (code !== 0 && code !== 5) throw new Error(err);
  return { name: file, bytes: out, ending: `-${file}` };
}

/** All of it in one archive, from which a page is set up again: what was made, what it was made of, and a page to go on with. Where there is no plan yet, the rest. */
export async function archive(state: State, outputs: readonly Output[], page: Made, desk: Desk): Promise<Made> {
  const { route, files } = besideOf(state);
  const made: Made[] = [...files, zonesFile(state), await tripFile(state, desk), { name: "draw.html", bytes: page.bytes }];
  if (route) made.push({ name: route.name, bytes: encoded(route.text) });
  const tree = new Map(made.map(({ name, bytes }) => [name, bytes]));
  let lacks = "";
  for (const output of outputs) {
    try {
      const { name, bytes } = await outputFile(state, output, desk);
      tree.set(`plan/${name}`, bytes);
    } catch (error) {
      lacks = said(error, desk.words);
      break;
    }
  }
  // The day when it is packed is no part of it: the same work gives the same bytes.
  return { name: "plan.zip", ending: ".zip", bytes: zipSync(Object.fromEntries(tree), { mtime: DAY, level: LEVEL }), lacks };
}

/** This page with the state of now in it, made of the page as it was opened. */
export async function pageFile(original: string, given: Given, state: State, desk: Desk): Promise<Made> {
  const { route, zonesName, files } = besideOf(state);
  const now: Given = {
    ...given,
    language: desk.language,
    route,
    zones: { name: zonesName, text: zonesText(state) },
    trip: state.trip,
    files: await Promise.all(files.map(packed)),
  };
  const page = new DOMParser().parseFromString(original, "text/html");
  page.documentElement.lang = desk.language;
  // No tag may end in the middle of it.
  const text = JSON.stringify(now).replace(/</g, "\\u003c");
  page.getElementById("given")?.replaceChildren(text);
  const still = page.getElementById("still");
  if (still) still.innerHTML = await sheetOf(state, desk);
  return { name: "draw.html", ending: ".html", bytes: encoded(`<!doctype html>\n${page.documentElement.outerHTML}\n`) };
}

/** What is seen where no script runs: the sheet, or what the page needs where there is no plan, since an old one would be wrong. */
async function sheetOf(state: State, desk: Desk): Promise<string> {
  try {
    const { bytes } = await outputFile(state, { format: "sheet", file: "" }, desk);
    const sheet = new DOMParser().parseFromString(new TextDecoder().decode(bytes), "text/html");
    // The page has a main part of its own.
    return sheet.body.innerHTML.replace(/<(\/?)main\b/g, "<$1div");
  } catch {
    return make("p", {}, desk.words("draw-needs-script")).outerHTML;
  }
}

/** Hands a file to whoever reads. */
export function handOut({ name, bytes }: Made): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: "application/octet-stream" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
