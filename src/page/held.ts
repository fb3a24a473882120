/** All that a page holds and that undo brings back: beside zones and trip the files they lie on. */

import type { NamedBytes, NamedText } from "./given";
import { type State, Store } from "./model";
import { type Around, PLAIN, writeZones } from "./zones";

/** The files round the zones and the trip. */
export interface Beside {
  readonly route: NamedText | null;
  readonly zonesName: string;
  readonly around: Around;
  /** Terrain models, the inventory, a practice file. */
  readonly files: readonly NamedBytes[];
}

export interface Held extends State {
  readonly beside: Beside;
}

export const NOTHING: Beside = { route: null, zonesName: "zones.geojson", around: PLAIN, files: [] };

/** The files of a state; every state of a page has them, since states are made one of another. */
export const besideOf = (state: State): Beside => (state as Partial<Held>).beside ?? NOTHING;

/** Both are of the same line. */
export const sameRoute = (some: State, other: State): boolean => besideOf(some).route === besideOf(other).route;

/** Both lie on the same ground, heights and ice included. */
export function sameGround(some: State, other: State): boolean {
  const { terrain, glaciers } = other.trip;
  const files = besideOf(some).files === besideOf(other).files;
  return sameRoute(some, other) && files && some.trip.terrain === terrain && some.trip.glaciers === glaciers;
}

/** Heights come out of the same files. */
export function sameHeights(some: State, other: State): boolean {
  const models = (state: State) => {
    const { files } = besideOf(state);
    return (state.trip.terrain ?? []).map((name) => files.find((file) => file.name === name)?.bytes ?? name);
  };
  const [a, b] = [models(some), models(other)];
  return sameRoute(some, other) && a.length === b.length && a.every((one, at) => one === b[at]);
}

/** The state with other files. */
export const withBeside = (state: State, change: Partial<Beside>): Held => ({
  ...state,
  beside: { ...besideOf(state), ...change },
});

/** Names of the trip in a call of the program. */
export const TRIP = "trip.toml";
export const TRIP_MEMBERS = "trip.json";

/** The name of the zones file, which no file beside it has: an inventory may be called the same where it comes from. */
export function zonesNameOf(state: State): string {
  const { route, zonesName, files } = besideOf(state);
  const taken = new Set([TRIP, TRIP_MEMBERS, route?.name, ...files.map((file) => file.name)]);
  let name = zonesName;
  while (taken.has(name)) name = `zones-${name}`;
  return name;
}

/** The zones file of a state. */
export const zonesText = (state: State): string => writeZones(state.zones, besideOf(state).around);

/** A store that counts its steps: a slider that goes on is one of them. */
export class Steps extends Store {
  private count = 0;
  private last = "";
  private ends: (() => void)[] = [];

  /** The number of the step that led to the state of now. */
  get step(): number {
    return this.count;
  }

  override listen(listener: (state: State, did: string) => void): () => void {
    const end = super.listen(listener);
    this.ends.push(end);
    return end;
  }

  /** Nobody is called back any more: everything is built anew. */
  silence(): void {
    for (const end of this.ends) end();
    this.ends = [];
  }

  override change(did: string, change: (state: State) => State, going = false): void {
    if (!(going && did === this.last)) this.count++;
    this.last = did;
    super.change(did, change, going);
  }

  override settle(): void {
    this.last = "";
    super.settle();
  }

  override undo(): void {
    this.count++;
    this.last = "";
    super.undo();
  }

  override redo(): void {
    this.count++;
    this.last = "";
    super.redo();
  }
}
