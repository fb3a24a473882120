/** What holds at a place of the route, and which word comes next on the way: everybody goes in the direction of the route. */

import type { Leg, Piece, Planned, Verdict, Zone } from "./door";
import type { Place } from "./whereami";

/** From the mildest to the worst. */
const ORDER: readonly Verdict[] = ["unroped", "inside", "look", "outside", "stop"];

const rank = (verdict: Verdict): number => ORDER.indexOf(verdict);

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

/** The nearest piece behind a place that whoever turns back comes over, and that is outside the limits or stops. */
export function behindOf(plan: Planned, place: Place): Piece | null {
  const pieces = plan.legs.filter(({ stage }) => stage === place.stage).flatMap((leg) => leg.pieces);
  return pieces.filter(({ verdict, to_m }) => to_m < place.at_m && rank(verdict) >= rank("outside")).at(-1) ?? null;
}

/** Each word of the leg ahead that is worse than all before it; else the first one behind the leg, else the next other word. */
export function aheadOf(plan: Planned, leg: Leg, place: Place): Ahead[] {
  const here = pieceAt(leg, place);
  if (!here) return [];
  const legs = plan.legs.filter(({ stage, start_m }) => stage === place.stage && start_m >= leg.start_m);
  const coming = legs.flatMap((one) => one.pieces.map((piece) => ({ piece, inLeg: one === leg, ropes: one.roped && !leg.roped }))).filter(({ piece }) => piece.from_m >= here.to_m);
  const found: Ahead[] = [];
  let worst = rank(here.verdict);
  for (const { piece, inLeg, ropes } of coming) {
    if (rank(piece.verdict) <= worst || (!inLeg && found.length > 0)) continue;
    worst = rank(piece.verdict);
    found.push({ ...told(piece, place, true), inLeg, ropes });
  }
  if (found.length > 0) return found;
  const next = coming.find(({ piece }) => piece.verdict !== here.verdict);
  return next ? [{ ...told(next.piece, place, false), inLeg: next.inLeg, ropes: next.ropes }] : [];
}

function told({ verdict, from_m }: Piece, place: Place, worse: boolean) {
  const away_m = from_m - place.at_m;
  return { verdict, at_m: rounded(from_m, 10, worse), away_m: rounded(away_m, away_m < 100 ? 5 : away_m < 1000 ? 10 : 100, worse), worse };
}

const rounded = (metres: number, step: number, down: boolean): number => (down ? Math.floor : Math.ceil)(metres / step) * step;
