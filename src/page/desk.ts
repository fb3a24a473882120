/** What the parts of the page share: the states, the words, and how one part calls on another. */

import type { Fault, Ground, Panel, Planned, TripDoor } from "./door";
import type { Engine } from "./engine";
import { type Steps, besideOf } from "./held";
import type { OnRoute } from "./map/geometry/along";
import { type Drawn, type Geometry, type State, partsOf } from "./model";
import { shown } from "./number";
import type { Language, Words } from "./words";

export type TabName = "plan" | "zone" | "trip" | "field" | "files";

export interface Desk {
  readonly store: Steps;
  readonly engine: Engine;
  readonly words: Words;
  readonly language: Language;
  /** The key of the picked feature. */
  readonly picked: number | null;
  pick(key: number | null): void;
  goToLeg(leg: number): void;
  /** Marks on map and profile where somebody is; nowhere with null. */
  stands(here: OnRoute | null): void;
  openTab(tab: TabName): void;
  /** Asks for files to open. */
  chooseFiles(): void;
  /** Shows the ways to save. */
  save(): void;
  /** A zone was made on the map, and is picked: its gap is next. */
  made(): void;
  /** Begins another zone along the route. */
  paint(): void;
  /** Plans again where a part shows something of the report that the plan does not hold. */
  ask(): void;
  /** Keeps the work in the browser before long: what is beside the state is another one. */
  keepSoon(): void;
  /** Says something to those who listen to the page. */
  tell(text: string): void;
}

/** A part of the page. */
export interface Part {
  readonly element: HTMLElement;
  /** The state is another one, or another feature is picked. */
  sync?(state: State): void;
  /** A plan of a state has come; `before` is the last one of an earlier step, or where there is none now the last on this route. Zones go by their places in that state: there may be others by now. */
  show?(panel: Panel, before: Planned | null, of: State): void;
  /** The parts of the report that it shows as things are: a plan holds no others. */
  wants?(): readonly string[];
  /** Another ground lies there: that of a state. */
  lie?(ground: Ground | null, of: State): void;
  /** What a trip can hold is known. */
  know?(door: TripDoor): void;
}

/** Without any of these a zone gives no gap. */
const GAPS = ["gap_m", "gap_min_m", "gap_max_m"];

const hasPolygon = (geometry: Geometry | null): boolean =>
  /^(Multi)?Polygon$/.test(geometry?.type ?? "") || (geometry?.type === "GeometryCollection" && partsOf(geometry).some(hasPolygon));

/** Whether a feature is a zone of the plan. */
export const isPolygon = (feature: Drawn): boolean => hasPolygon(feature.geometry);

/** The features of the zones file that a fault is about; one about gaps that are not given is about all that give none. */
export function faulty(fault: Fault, state: State): Drawn[] {
  // Features of an inventory are counted too, and are no zones.
  if (besideOf(state).files.some((file) => file.name === fault.file)) return [];
  if (fault.feature !== null) return state.zones.slice(fault.feature - 1, fault.feature);
  if (fault.code !== "gap-not-given") return [];
  return state.zones.filter((zone) => isPolygon(zone) && (zone.properties["gap_assumed"] === true || !GAPS.some((name) => shown(zone.properties[name]))));
}

/** What a feature is called in lists: its number among the zones and its name. */
export const zoneTitle = (state: State, zone: Drawn, words: Words): string => called(zone, state.zones.filter(isPolygon).indexOf(zone), words);

/** All zones by key, as they are called. */
export const zoneTitles = (state: State, words: Words): [key: string, title: string][] =>
  state.zones.filter(isPolygon).map((zone, at) => [String(zone.key), called(zone, at, words)]);

function called(zone: Drawn, at: number, words: Words): string {
  const name = zone.properties["name"];
  const named = typeof name === "string" || typeof name === "number" ? ` ${name}` : "";
  return `${words("draw-zone")} ${at + 1}${named}`;
}
