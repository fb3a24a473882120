/** The page: begins with what its file holds, and keeps states, plan, map and panels together. */

import { App } from "./app";
import { readGiven } from "./given";
import { Steps } from "./held";
import { Keep } from "./keep";
import { heldOf } from "./whole";

/** The page as it was opened, before anything changes in it: what is saved is made of it. */
const original = document.documentElement.outerHTML;

async function begin(): Promise<void> {
  const given = readGiven();
  const start = await heldOf(given);
  const store = new Steps(start);
  const keep = await Keep.open(given, start);
  const kept = await keep.read();
  if (kept) store.change("draw-did-restored", () => kept.state);
  new App(original, given, store, keep).begin(kept?.language ?? given.language, kept !== null);
}

void begin();
