/** How the program is called: all its arguments stand here. */

import type { Trip } from "./door";
import { TRIP, TRIP_MEMBERS, besideOf, zonesNameOf, zonesText } from "./held";
import type { State } from "./model";
import type { Language } from "./words";

/** One call of the program. */
export interface Call {
  readonly args: readonly string[];
  /** The name of the file that what it prints becomes, for the calls after it. */
  readonly into?: string;
}

/** Calls one after the other, with files that are there for them only. The answer is that of the last, or of the first that fails. */
export interface Errand {
  readonly calls: readonly Call[];
  readonly files: readonly (readonly [name: string, holds: string | Uint8Array])[];
}

/** A name that is no flag. */
const named = (name: string): string => (name.startsWith("-") ? `./${name}` : name);

const toml: Call = { args: ["page", "toml", TRIP_MEMBERS], into: TRIP };

/** The trip but for ropes of which nothing is typed yet: they are not said, and no fault while somebody types. */
function said(trip: Trip): Trip {
  const { rope, ...others } = trip;
  if (!rope?.length) return trip;
  const typed = rope.filter((one) => Object.keys(one).length > 0);
  return typed.length > 0 ? { ...others, rope: typed } : others;
}

const tripFile = (state: State) => [TRIP_MEMBERS, JSON.stringify(said(state.trip))] as const;

const routeName = (state: State) => named(besideOf(state).route?.name ?? "route.gpx");

const zonesName = (state: State) => named(zonesNameOf(state));

/** What lies there whatever is drawn. */
export const groundOf = (state: State, language: Language): Errand => ({
  calls: [toml, { args: ["page", "ground", routeName(state), "--trip", TRIP, "--lang", language] }],
  files: [tripFile(state)],
});

/** The plan of a state as the page shows it, with the parts of the report that are open there. */
export const panelOf = (state: State, language: Language, open: readonly string[]): Errand => ({
  calls: [
    toml,
    {
      args: ["page", "panel", routeName(state), zonesName(state), "--trip", TRIP, "--lang", language, ...open.flatMap((id) => ["--open", id])],
    },
  ],
  files: [tripFile(state), [zonesName(state), zonesText(state)]],
});

/** The trip file of a state. */
export const tomlOf = (state: State): Errand => ({
  calls: [{ args: ["page", "toml", TRIP_MEMBERS] }],
  files: [tripFile(state)],
});

/** What a trip can hold, with the figures as this one has them. */
export const tripOf = (state: State, language: Language): Errand => ({
  calls: [toml, { args: ["page", "trip", "--trip", TRIP, "--lang", language] }],
  files: [tripFile(state)],
});

/** A trip file as its members, with the files that it may name. Without the language of the page, which would become one of them. */
export const tripIn = (text: string, named: Errand["files"]): Errand => ({
  calls: [{ args: ["page", "trip", "--trip", TRIP] }],
  files: [...named, [TRIP, text]],
});

/** The plan of a state in a format. */
export const outputOf = (state: State, format: string, language: Language): Errand => ({
  calls: [
    toml,
    {
      args: ["plan", routeName(state), zonesName(state), "--trip", TRIP, "--lang", language, "--format", format, "-q"],
    },
  ],
  files: [tripFile(state), [zonesName(state), zonesText(state)]],
});

/** Ways to split the party of a state and to use its ropes. */
export const waysOf = (state: State, language: Language): Errand => ({
  calls: [toml, { args: ["page", "ways", routeName(state), zonesName(state), "--trip", TRIP, "--lang", language] }],
  files: [tripFile(state), [zonesName(state), zonesText(state)]],
});

/** What is wrong with a file, in lines. */
export const checkOf = (name: string, holds: string | Uint8Array): Errand => ({
  calls: [{ args: ["check", named(name)] }],
  files: [[named(name), holds]],
});
