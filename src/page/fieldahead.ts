/** What holds at a place of the route, and which word comes next on the way: everybody goes in the direction of the route. */

import type { Html, Leg, Piece, Planned, Verdict, Zone } from "./door";
import type { Place } from "./whereami";

/** From the mildest to the worst. */
const ORDER: readonly Verdict[] = ["unroped", "inside", "look", "outside", "stop"];

export const rank = (verdict: Verdict): number => ORDER.indexOf(verdict);

/** A milder word that holds on less than so many metres, between worse ones, is no news to whoever comes to it. Our judgement. */
const CRUMB_M = 100;

/** Whether a word asks for something to be done. */
export const harsh = (verdict: Verdict): boolean => rank(verdict) >= rank("look");

/** Another word ahead. */
export interface Ahead {
  readonly verdict: Verdict;
  /** Where it begins, on the whole ten metres that all outputs are rounded to: a worse one not later, a milder one not earlier. */
  readonly at_m: number;
  /** How far that is, rounded likewise. */
  readonly away_m: number;
  readonly worse: boolean;
  /** In the same leg. */
  readonly inLeg: boolean;
  /** Whoever walks without a rope here is on one there. */
  readonly ropes: boolean;
}

/** The piece of a leg that a place lies in. */
export const pieceAt = (leg: Leg, { at_m }: Place): Piece | null => leg.pieces.find(({ from_m, to_m }) => at_m >= from_m && at_m <= to_m) ?? null;

/** The zones that a place lies in. */
export const zonesRound = (plan: Planned, { stage, at_m }: Place): Zone[] =>
  plan.zones.filter(({ crossings }) => crossings.some((one) => one.stage === stage && at_m >= one.enter_m && at_m <= one.exit_m));

/** What whoever turns back comes over, and how many belays are reckoned with there. */
export interface Behind extends Piece {
  readonly belays: Html;
  /** How it is walked where the rope is too short as planned. */
  readonly back: Html;
}

/** The gravest piece behind a place that is to be looked at or more, the nearest of several. */
export function behindOf(plan: Planned, place: Place): Behind | null {
  const legs = plan.legs.filter(({ stage }) => stage === place.stage);
  const pieces = legs.flatMap((leg) => leg.pieces.map((piece) => ({ ...piece, belays: leg.belays, back: leg.back })));
  const behind = pieces.filter(({ verdict, to_m }) => to_m < place.at_m && harsh(verdict));
  return behind.reduce<Behind | null>((a, b) => (a && rank(a.verdict) > rank(b.verdict) ? a : b), null);
}

/** Less of the ground that somebody stands on lies behind them at once, metres. Our judgement. */
const STEP_M = 50;

/** Behind a place that nobody is to go on from: as far as the same holds. */
export function sameBehind(leg: Leg, place: Place): Behind | null {
  const here = pieceAt(leg, place);
  if (!here || !bars(here.verdict) || place.at_m - here.from_m < STEP_M) return null;
  // Its belays stand with what is to be done here.
  return { ...here, to_m: place.at_m, belays: "", back: "" };
}

/**
 * Each word of the leg ahead that is worse than all before it; where there is none the next other word. Behind that always the
 * next leg on a rope, and the first one that nobody is to go on to.
 */
export function aheadOf(plan: Planned, leg: Leg, place: Place): Ahead[] {
  const here = pieceAt(leg, place);
  if (!here) return [];
  const coming = comingBehind(plan, leg, here);
  const worse = ({ verdict }: Coming) => rank(verdict) > rank(here.verdict);
  const inLeg = rising(coming.filter((one) => one.inLeg && worse(one)));
  const next = coming.find((one, at) => one.verdict !== here.verdict && !isCrumb(one, coming[at + 1], here));
  const legs = coming.filter((one) => !one.inLeg);
  const told = new Set([...(inLeg.length > 0 ? inLeg : [next]), legs.find((one) => one.roped), legs.find((one) => bars(one.verdict))]);
  return [...told].flatMap((one) => (one ? tell(one, place, worse(one)) : []));
}

/** Whether roping up is no answer to a word. */
export const bars = (verdict: Verdict): boolean => verdict === "stop" || verdict === "outside";

/** Those that are worse than all before them. */
function rising(all: readonly Coming[]): Coming[] {
  let worst = -1;
  return all.filter(({ verdict }) => {
    const rises = rank(verdict) > worst;
    worst = Math.max(worst, rank(verdict));
    return rises;
  });
}

/** Whether what comes is soon over and what comes behind it is as bad as it is here; where the rope goes on or off it counts. */
function isCrumb({ verdict, ropes, from_m, to_m }: Coming, behind: Coming | undefined, here: Piece): boolean {
  const milder = rank(verdict) < rank(here.verdict) && verdict !== "unroped" && !ropes;
  // Soon over as well is what leads to where the rope goes off.
  const goesOn = behind !== undefined && !behind.ropes && (rank(behind.verdict) >= rank(here.verdict) || behind.verdict === "unroped");
  return milder && goesOn && to_m - from_m < CRUMB_M;
}

/** A piece of this leg, or another leg as a whole under its own word: what is short and mild at its beginning says too little. */
interface Coming {
  readonly verdict: Verdict;
  readonly from_m: number;
  readonly to_m: number;
  readonly inLeg: boolean;
  readonly roped: boolean;
  readonly ropes: boolean;
}

/** What lies behind a piece of a leg on its stage. */
function comingBehind(plan: Planned, leg: Leg, here: Piece): Coming[] {
  const pieces = leg.pieces.filter(({ from_m }) => from_m >= here.to_m);
  const inLeg = pieces.map(({ verdict, from_m, to_m }) => ({ verdict, from_m, to_m, inLeg: true, roped: leg.roped, ropes: false }));
  const legs = plan.legs.filter(({ stage, start_m }) => stage === leg.stage && start_m >= leg.start_m);
  const others = legs.slice(1).map(({ verdict, start_m, end_m, roped }, at) => ({ verdict, from_m: start_m, to_m: end_m, inLeg: false, roped, ropes: roped && legs[at]?.roped === false }));
  return [...inLeg, ...others];
}

function tell({ verdict, from_m, inLeg, ropes }: Coming, place: Place, worse: boolean): Ahead {
  const away_m = from_m - place.at_m;
  return { verdict, at_m: rounded(from_m, 10, worse), away_m: rounded(away_m, away_m < 100 ? 5 : away_m < 1000 ? 10 : 100, worse), worse, inLeg, ropes };
}

const rounded = (metres: number, step: number, down: boolean): number => (down ? Math.floor : Math.ceil)(metres / step) * step;
