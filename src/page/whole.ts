/** The state that a page was saved with, whichever page it is: this one as it begins, or one that is opened in it. */

import { type Given, type PackedFile, unpacked } from "./given";
import { type Held, NOTHING } from "./held";
import { baseName } from "./set";
import { readAny } from "./zones";

type Saved = Pick<Given, "route" | "zones" | "trip" | "files">;

/** Files that unpack to more than that are none. */
export async function heldOf({ route, zones, trip, files }: Saved, most = Number.POSITIVE_INFINITY): Promise<Held> {
  const read = zones && readAny(zones.text);
  const around = read?.around ?? NOTHING.around;
  const beside = { route, zonesName: zones?.name ?? NOTHING.zonesName, around, files: await Promise.all(files.map((file) => unpacked(file, most))) };
  return { zones: read?.zones ?? [], trip, beside };
}

/** What another page was given, as far as it is what a page is given; nothing where it is none of these pages. */
export function givenIn(html: string): Saved | null {
  const given = new DOMParser().parseFromString(html, "text/html").getElementById("given");
  if (!given) return null;
  try {
    const { route = null, zones = null, trip = {}, files = [] } = JSON.parse(given.textContent ?? "") as Partial<Given>;
    const texts = [route, zones].every((one) => one === null || (isName(one.name) && isText(one.text)));
    const packed = Array.isArray(files) && files.every((one: PackedFile) => isName(one.name) && isText(one.packed));
    return texts && packed && typeof trip === "object" && trip !== null ? { route, zones, trip, files } : null;
  } catch {
    return null;
  }
}

/** The name of a file without any folder, as pages have them. */
const isName = (value: unknown): boolean => typeof value === "string" && value !== "" && baseName(value) === value;

const isText = (value: unknown): boolean => typeof value === "string";
