/** Places on the route by the metres walked, and the metres at a place. */

import type { Ground, Stage } from "../../door";
import { Frame } from "../projection";
import { nearest, type Point } from "./rings";

interface Walked {
  readonly at: Point;
  readonly walked_m: number;
  readonly height_m: number | null;
}

/** A place on the route. */
export interface OnRoute {
  readonly stage: number;
  readonly at_m: number;
}

/** One stage in a plane. */
export class Way {
  readonly runs: readonly (readonly Walked[])[];

  constructor(readonly stage: Stage, frame: Frame) {
    this.runs = stage.runs.map((run) =>
      run.map((spot) => ({ at: frame.at([spot[0], spot[1]]), walked_m: spot[2], height_m: spot[3] })),
    );
  }

  /** Null off the stage. */
  at(walked_m: number): { at: Point; angle: number; height_m: number | null } | null {
    for (const run of this.runs) {
      const next = run.findIndex((spot, index) => index > 0 && spot.walked_m >= walked_m);
      const [a, b] = [run[next - 1], run[next]];
      if (!a || !b || walked_m < a.walked_m) continue;
      const share = b.walked_m > a.walked_m ? (walked_m - a.walked_m) / (b.walked_m - a.walked_m) : 0;
      const [east, north] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
      const known = a.height_m !== null && b.height_m !== null;
      const height_m = known ? a.height_m + share * (b.height_m - a.height_m) : null;
      return { at: [a.at[0] + share * east, a.at[1] + share * north], angle: Math.atan2(north, east), height_m };
    }
    return null;
  }

  /** The line from one of its metres to another, in as many pieces as jumps leave. */
  between(from_m: number, to_m: number): Point[][] {
    const pieces = this.runs.map((run): Point[] => {
      const [first, last] = [run[0]?.walked_m ?? 0, run.at(-1)?.walked_m ?? 0];
      if (to_m <= first || from_m >= last) return [];
      const ends = [Math.max(from_m, first), Math.min(to_m, last)].map((metres) => this.at(metres)?.at);
      const inner = run.filter((spot) => spot.walked_m > from_m && spot.walked_m < to_m);
      return [ends[0], ...inner.map((spot) => spot.at), ends[1]].filter((at): at is Point => !!at);
    });
    return pieces.filter((piece) => piece.length > 1);
  }

  /** The place on it that is nearest to a spot. */
  nearest(spot: Point): { at_m: number; away: number } {
    let best = { at_m: 0, away: Infinity };
    for (const run of this.runs) {
      for (let index = 1; index < run.length; index++) {
        const [a, b] = [run[index - 1]!, run[index]!];
        const { share, away } = nearest(a.at, b.at, spot);
        if (away < best.away) best = { at_m: a.walked_m + share * (b.walked_m - a.walked_m), away };
      }
    }
    return best;
  }
}

/** The place on a route that is nearest to a spot, not farther away than `most`. */
export function nearestOn(ways: readonly Way[], spot: Point, most: number): OnRoute | null {
  let best: (OnRoute & { away: number }) | null = null;
  for (const way of ways) {
    const found = way.nearest(spot);
    if (found.away <= most && found.away < (best?.away ?? Infinity)) best = { stage: way.stage.stage, ...found };
  }
  return best && { stage: best.stage, at_m: best.at_m };
}

/** A stage of the ground in a plane of its own; null where its line is not known. */
export function alone(ground: Ground | null, stage: number): { way: Way; frame: Frame } | null {
  const line = ground?.stages.find((one) => one.stage === stage);
  if (!line) return null;
  const frame = Frame.about(line.runs.flat().map(([longitude, latitude]) => [longitude, latitude]));
  return { way: new Way(line, frame), frame };
}
