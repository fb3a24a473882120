/** What the program answers a page: the shapes of `schrund page …`. Lengths are metres, positions [longitude, latitude]. */

export type LonLat = readonly [lon: number, lat: number];

/** The word of a leg, of a stretch of one, or of a whole plan. */
export type Verdict = "unroped" | "inside" | "look" | "outside" | "stop";

/** A piece of HTML, made and escaped by the program. */
export type Html = string;

/** `page ground`: what lies there whatever is drawn. */
export interface Ground {
  readonly stages: readonly Stage[];
  /** The shape of the ground round the route; null without a terrain model. */
  readonly relief: Relief | null;
  /** Outlines of the inventory, each polygon with its holes. */
  readonly inventory: readonly Outline[];
}

/** One line of the route file. */
export interface Stage {
  readonly stage: number;
  readonly name: string | null;
  readonly length_m: number;
  /** Its runs, a jump between each two. */
  readonly runs: readonly (readonly Spot[])[];
}

/** Longitude, latitude, metres walked, height in metres or null. */
export type Spot = readonly [lon: number, lat: number, at_m: number, height_m: number | null];

/** Heights on a lattice in longitude and latitude, corners included; the first row is the north. */
export interface Relief {
  readonly south_west: LonLat;
  /** East of 180 degrees where the window crosses the antimeridian. */
  readonly north_east: LonLat;
  readonly columns: number;
  readonly rows: number;
  /** Row by row; null where no model has a height. */
  readonly heights_m: readonly (number | null)[];
  readonly contours: readonly Contour[];
}

/** All lines of one height. */
export interface Contour {
  readonly height_m: number;
  /** Drawn heavier and with its height. */
  readonly index: boolean;
  readonly lines: readonly (readonly LonLat[])[];
}

export interface Outline {
  readonly name: string | null;
  readonly polygons: readonly (readonly (readonly LonLat[])[])[];
}

/** `page panel`: a plan as a page shows it, or why there is none. Exit code 0, 5, or 4 with faults. */
export type Panel = Planned | Refused;

export interface Refused {
  readonly faults: readonly Fault[];
}

/** Something wrong with an input, in the words of the program. */
export interface Fault {
  readonly code: string;
  /** The file it stands in, as it was given. */
  readonly file: string | null;
  /** The feature of the zones file, from 1. */
  readonly feature: number | null;
  readonly property: string | null;
  readonly says: Html;
  readonly hint: Html | null;
}

export interface Planned {
  readonly faults: readonly [];
  readonly verdict: Verdict;
  readonly title: string;
  /** What was noticed while the inputs were read. */
  readonly notices: readonly Fault[];
  /** What stops and what to look at, what to carry, the hours. */
  readonly head: Html;
  /** What is said of no leg that is inside, in one sentence; empty where none is. */
  readonly reading: Html;
  /** Where and by when to turn back, and that the start was too late, for who stands on the line. */
  readonly hours: readonly Hour[];
  readonly legs: readonly Leg[];
  readonly zones: readonly Zone[];
  readonly changes: readonly Change[];
  readonly looks: readonly Look[];
  /** Each set-up that is tied, with the legs that it is for, and its drawn rope; none unless `ropes` was asked for. */
  readonly ropes: readonly Rope[];
  /** Parts of the report, by name: `legs`, `field`, `carry`, `party`, `gear`, `cautions`, `assumptions`, …; null where it was not asked for. */
  readonly parts: readonly { readonly id: string; readonly title: string; readonly html: Html | null }[];
  /** Heights under the line as the plan takes them. */
  readonly profiles: readonly Profile[];
}

/** What the hours ask of who stands in a stage before a place: the first one that holds there counts. */
export interface Hour {
  readonly stage: number;
  /** Up to there, metres walked; null for all of the stage. */
  readonly to_m: number | null;
  readonly late: boolean;
  readonly says: Html;
  /** What is said instead where whoever turns back at once is off the bridges in time. */
  readonly turns: Html | null;
  /** When whoever goes on has left the last bridges; null where nobody knows. */
  readonly on: string | null;
}

export interface Profile {
  readonly stage: number;
  /** [metres walked, height]. A null height is a break. */
  readonly samples: readonly (readonly [at_m: number, height_m: number | null])[];
}

/** A place, when it is left, and when whoever turns back there is off the bridges. */
export type Walked = readonly [at_m: number, hour: string, back: readonly [hour: string, inTime: boolean] | null];

export interface Leg {
  readonly leg: number;
  readonly stage: number;
  readonly roped: boolean;
  readonly verdict: Verdict;
  /** Whether a frozen crust stops the team there. */
  readonly frozen_stop: boolean;
  /** Whether its bridges are weak at any hour. */
  readonly weak_bridges: boolean;
  readonly start_m: number;
  readonly end_m: number;
  /** From–to in kilometres as all outputs have it: nobody is told to rope up later, or to unrope earlier. */
  readonly from_to: string;
  /** `leg 6: rope of 3, 13.5 m apart`. */
  readonly title: Html;
  /** What is found there and what to do, a paragraph each. */
  readonly told: Html;
  /** What to do for who stands there, in at most two short lines; empty where nothing is to be done. */
  readonly act: Html;
  /** How many belays are reckoned with; empty where none is asked for. */
  readonly belays: Html;
  /** How it is walked by who comes back over it, where the rope is too short as it is planned; else empty. */
  readonly back: Html;
  /** Whose rope makes a loop for whom, and what can be hauled, after a fall there; empty where nobody is roped. */
  readonly rescue: Html;
  /** Places with the hour at which each is left, and when whoever turns back there is off the bridges behind, in walking order; empty without a clock. */
  readonly walk: readonly Walked[];
  /** By the word that holds on each piece, with its lines. */
  readonly pieces: readonly Piece[];
  /** Figures of each rope team as they are shown, to mark what changed: `1-spacing`, `1-knots`, `1-coils`, `1-rope`, `2-spacing`, … */
  readonly figures: readonly { readonly id: string; readonly value: string }[];
}

export interface Piece {
  readonly verdict: Verdict;
  readonly from_m: number;
  readonly to_m: number;
  readonly lines: readonly (readonly LonLat[])[];
}

/** A zone as the plan numbers it; the same number as its place among the polygons of the zones file. */
export interface Zone {
  readonly zone: number;
  /** The feature of the zones file, from 1. */
  readonly feature: number;
  readonly met: boolean;
  readonly name: string | null;
  readonly gap_m: number;
  /** Nobody gave it: it is what the trip assumes. */
  readonly gap_assumed: boolean;
  readonly strike_deg: number | null;
  /** Metres walked inside: stage, from, to. */
  readonly crossings: readonly { readonly stage: number; readonly enter_m: number; readonly exit_m: number }[];
}

/** Where the set-up changes. */
export interface Change {
  readonly letter: string;
  readonly at: LonLat;
  readonly stage: number;
  readonly at_m: number;
  readonly title: Html;
  readonly told: Html;
}

/** A place to look at. */
export interface Look {
  readonly at: LonLat;
  readonly verdict: Verdict;
  readonly leg: number;
  readonly title: Html;
  readonly told: Html;
}

export interface Rope {
  readonly legs: readonly number[];
  readonly html: Html;
}

/** `page ways`: ways to split the party and to use its ropes, or why there are none. Exit code 0, 5, or 4 with faults. */
export type Weighed = Ways | Refused;

export interface Ways {
  readonly faults: readonly [];
  /** How many there are, and what must be said of all. */
  readonly head: Html;
  /** The best first. */
  readonly ways: readonly Card[];
  readonly foot: Html;
}

/** A way, and what a trip file says otherwise to plan it: nothing where the trip is that way. */
export interface Card {
  readonly html: Html;
  /** Where nothing holds it is no way to go on. */
  readonly holds: boolean;
  /** What is said once it is planned with. */
  readonly took: Html;
  readonly trip: {
    readonly teams?: readonly number[];
    readonly practice?: string;
    readonly assume?: Readonly<Record<string, number>>;
    readonly ropes?: readonly Carried[];
  } | null;
}

/** A rope that a way carries: which of those at hand, from 1, and which is joined to it. */
export interface Carried {
  readonly rope: number;
  readonly joined_to?: number;
  readonly length_m: number;
  readonly diameter_mm?: number;
}

/** `page trip`: a trip file, and all that it can hold. */
export interface TripDoor {
  readonly trip: Trip;
  /** Words a member can have, in their order. */
  readonly terms: Readonly<Record<string, readonly Term[]>>;
  /** Figures of the rules. */
  readonly figures: readonly Figure[];
  readonly practices: readonly Term[];
  /** What a plan can be handed out as, with its file in a set. */
  readonly outputs: readonly { readonly format: string; readonly file: string; readonly media_type: string }[];
  /** What the team stands on where the trip does not say: a name of `terms.snow`. */
  readonly snow: string;
}

/** The members of a trip file, under the names that they have there. Absent is as good as never said. */
export interface Trip {
  readonly name?: string;
  readonly language?: string;
  readonly practice?: string;
  /** How many, their masses with pack in kg, or each with a name. */
  readonly party?: number | readonly number[] | readonly { readonly name?: string; readonly mass_kg?: number }[];
  readonly teams?: readonly number[];
  readonly rope?: readonly TripRope[];
  readonly gap_m?: number;
  readonly travel?: string;
  readonly knots?: string;
  readonly snow?: string;
  readonly start?: string;
  readonly start_at_km?: number;
  readonly bridges_until?: string;
  readonly back_by?: string;
  readonly date?: string;
  readonly utc_offset?: string;
  readonly terrain?: readonly string[];
  readonly glaciers?: string;
  readonly assume?: Readonly<Record<string, unknown>>;
  readonly emergency?: readonly { readonly name: string; readonly contact: string; readonly note?: string }[];
  readonly [member: string]: unknown;
}

export interface TripRope {
  readonly length_m: number;
  readonly [member: string]: unknown;
}

export interface Term {
  readonly name: string;
  readonly means: string;
}

/** A figure of the rules that a trip may change by `assume`. */
export interface Figure {
  readonly name: string;
  /** In words. */
  readonly says: string;
  readonly unit: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly standing: string;
}
