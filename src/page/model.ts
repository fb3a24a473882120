/** What a page holds and changes: drawn zones and the trip. One state after another, none is ever changed in place. */

import type { Trip } from "./door";

/** A position as GeoJSON has it. */
export type Position = number[];

export interface Geometry {
  readonly type: string;
  readonly coordinates?: unknown;
  readonly [member: string]: unknown;
}

/** The geometries of a collection. */
export function partsOf(geometry: Geometry | null): Geometry[] {
  const parts = geometry?.["geometries"];
  return Array.isArray(parts) ? parts.filter((part: unknown): part is Geometry => typeof part === "object" && part !== null) : [];
}

/** One feature of the zones file. */
export interface Drawn {
  /** Its own as long as the page is open; never written. */
  readonly key: number;
  /** As it was read, byte for byte; null once it was touched here. */
  readonly verbatim: string | null;
  readonly geometry: Geometry | null;
  readonly properties: Readonly<Record<string, unknown>>;
}

export interface State {
  readonly zones: readonly Drawn[];
  readonly trip: Trip;
}

/** What was done, as one step of undo. */
export interface Step {
  readonly state: State;
  /** Key of the words that name it, for who listens to the page. */
  readonly did: string;
}

/** The states of a page, with a way back and forth. */
export class Store {
  private past: Step[] = [];
  private future: Step[] = [];
  private now: Step;
  private readonly listeners = new Set<(state: State, did: string) => void>();

  constructor(state: State) {
    this.now = { state, did: "" };
  }

  get state(): State {
    return this.now.state;
  }

  get canUndo(): boolean {
    return this.past.length > 0;
  }

  get canRedo(): boolean {
    return this.future.length > 0;
  }

  /** One step; `going` is one that goes on with the last of the same name (a slider that moves, a vertex that is dragged). */
  change(did: string, change: (state: State) => State, going = false): void {
    const state = change(this.now.state);
    if (state === this.now.state) return;
    if (!(going && this.now.did === did && this.past.length > 0)) this.past.push(this.now);
    this.now = { state, did };
    this.future = [];
    this.tell(did);
  }

  /** The last step is one of its own, whatever comes next. */
  settle(): void {
    this.now = { ...this.now, did: "" };
  }

  undo(): void {
    this.travel(this.past, this.future, "undo");
  }

  redo(): void {
    this.travel(this.future, this.past, "redo");
  }

  /** Takes the next step from one list and lays that of now on the other. */
  private travel(from: Step[], to: Step[], did: string): void {
    const next = from.pop();
    if (!next) return;
    to.push(this.now);
    this.now = { ...next, did: "" };
    this.tell(did);
  }

  /** Calls back after every change; the answer ends that. */
  listen(listener: (state: State, did: string) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private tell(did: string): void {
    for (const listener of this.listeners) listener(this.now.state, did);
  }
}

let keys = 0;

/** A key that nothing else has. */
export const newKey = (): number => ++keys;

/** A zone drawn here. */
export const drawn = (geometry: Geometry, properties: Record<string, unknown> = {}): Drawn => ({
  key: newKey(),
  verbatim: null,
  geometry,
  properties,
});

/** The state with one feature made another: no longer what was read. */
export function touched(state: State, key: number, change: (zone: Drawn) => Partial<Drawn>): State {
  return {
    ...state,
    zones: state.zones.map((zone) =>
      zone.key === key ? { ...zone, ...change(zone), key, verbatim: null } : zone,
    ),
  };
}
