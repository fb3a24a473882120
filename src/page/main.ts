/** The page: begins with what its file holds, and keeps states, plan, map and panels together. */

import { App } from "./app";
import { readGiven, unpacked } from "./given";
import { type Held, NOTHING, Steps } from "./held";
import { Keep } from "./keep";
import { readAny } from "./zones";

/** The page as it was opened, before anything changes in it: what is saved is made of it. */
const original = document.documentElement.outerHTML;

async function begin(): Promise<void> {
  const given = readGiven();
  const files = await Promise.all(given.files.map(unpacked));
  const read = given.zones && readAny(given.zones.text);
  const around = read?.around ?? NOTHING.around;
  const beside = { route: given.route, zonesName: given.zones?.name ?? NOTHING.zonesName, around, files };
  const start: Held = { zones: read?.zones ?? [], trip: given.trip, beside };
  const store = new Steps(start);
  const keep = await Keep.open(given, start);
  const kept = await keep.read();
  if (kept) store.change("draw-did-restored", () => kept.state);
  new App(original, given, store, keep).begin(kept?.language ?? given.language, kept !== null);
}

void begin();
