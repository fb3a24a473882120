/** What holds at a place of the route, and which word comes next on the way: everybody goes in the direction of the route. */

import type { Leg, Piece, Planned, Verdict, Zone } from "./door";
import type { Place } from "./whereami";

/** From the mildest to the worst. */
const ORDER: readonly Verdict[] = ["unroped", "inside", "look", "outside", "stop"];

const rank = (verdict: Verdict): number => ORDER.indexOf(verdict);

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

/** The gravest piece behind a place that whoever turns back comes over and is to look at or more, the nearest of several. */
export function behindOf(plan: Planned, place: Place): Piece | null {
  const pieces = plan.legs.filter(({ stage }) => stage === place.stage).flatMap((leg) => leg.pieces);
  const behind = pieces.filter(({ verdict, to_m }) => to_m < place.at_m && harsh(verdict));
  return behind.reduce<Piece | null>((a, b) => (a && rank(a.verdict) > rank(b.verdict) ? a : b), null);
}

/** Each word of the leg ahead that is worse than all before it; where there is none the next other word, and if that is milder the first worse one behind it. */
export function aheadOf(plan: Planned, leg: Leg, place: Place): Ahead[] {
  const here = pieceAt(leg, place);
  if (!here) return [];
  const coming = pieceAhead(plan, leg, here);
  const inLeg: Ahead[] = [];
  let worst = rank(here.verdict);
  for (const one of coming.filter((one) => one.inLeg && rank(one.piece.verdict) > rank(here.verdict))) {
    if (rank(one.piece.verdict) <= worst) continue;
    worst = rank(one.piece.verdict);
    inLeg.push(told(one, place, true));
  }
  if (inLeg.length > 0) return inLeg;
  const isWorse = ({ piece }: Coming) => rank(piece.verdict) > rank(here.verdict);
  const next = coming.find((one, at) => one.piece.verdict !== here.verdict && !isCrumb(one, coming[at + 1], here));
  const worse = coming.find(isWorse);
  if (!next) return [];
  return [told(next, place, isWorse(next)), ...(worse && worse !== next ? [told(worse, place, true)] : [])];
}

/** Whether a piece is soon over and what comes behind it is as bad as it is here; where the rope goes on or off it counts. */
function isCrumb({ piece, ropes }: Coming, behind: Coming | undefined, here: Piece): boolean {
  const milder = rank(piece.verdict) < rank(here.verdict) && piece.verdict !== "unroped" && !ropes;
  // Soon over as well is what leads to where the rope goes off.
  const goesOn = behind !== undefined && !behind.ropes && (rank(behind.piece.verdict) >= rank(here.verdict) || behind.piece.verdict === "unroped");
  return milder && goesOn && piece.to_m - piece.from_m < CRUMB_M;
}

interface Coming {
  readonly piece: Piece;
  readonly inLeg: boolean;
  readonly ropes: boolean;
}

/** The pieces of the stage behind one of a leg. */
function pieceAhead(plan: Planned, leg: Leg, here: Piece): Coming[] {
  const legs = plan.legs.filter(({ stage, start_m }) => stage === leg.stage && start_m >= leg.start_m);
  const pieces = legs.flatMap((one, at) => one.pieces.map((piece) => ({ piece, inLeg: one === leg, ropes: one.roped && legs[at - 1]?.roped === false })));
  return pieces.filter(({ piece }) => piece.from_m >= here.to_m);
}

function told({ piece: { verdict, from_m }, inLeg, ropes }: Coming, place: Place, worse: boolean): Ahead {
  const away_m = from_m - place.at_m;
  return { verdict, at_m: rounded(from_m, 10, worse), away_m: rounded(away_m, away_m < 100 ? 5 : away_m < 1000 ? 10 : 100, worse), worse, inLeg, ropes };
}

const rounded = (metres: number, step: number, down: boolean): number => (down ? Math.floor : Math.ceil)(metres / step) * step;
