/** Where a route goes over areas, by the metres walked. */

import type { Way } from "./along";
import { closed, within, type Area, type Point } from "./rings";

/** From one of the metres walked to another. */
export interface Stretch {
  readonly from_m: number;
  readonly to_m: number;
}

type Box = readonly [west: number, south: number, east: number, north: number];

/** Stretches nearer to one another than this are one, metres. */
const JOINED_M = 0.01;

/** The stretches of a stage that lie in areas within a box, in walking order. */
export function crossed(way: Way, areas: readonly Area[], box: Box): Stretch[] {
  const found: { from_m: number; to_m: number }[] = [];
  for (const run of way.runs) {
    for (let index = 1; index < run.length; index++) {
      const [a, b] = [run[index - 1]!, run[index]!];
      if (!meets(box, a.at, b.at)) continue;
      for (const [from, to] of inside(a.at, b.at, areas)) {
        const metres = (share: number): number => a.walked_m + share * (b.walked_m - a.walked_m);
        const last = found.at(-1);
        if (last && metres(from) - last.to_m < JOINED_M) last.to_m = metres(to);
        else found.push({ from_m: metres(from), to_m: metres(to) });
      }
    }
  }
  return found;
}

const meets = ([west, south, east, north]: Box, a: Point, b: Point): boolean =>
  Math.max(a[0], b[0]) >= west && Math.min(a[0], b[0]) <= east && Math.max(a[1], b[1]) >= south && Math.min(a[1], b[1]) <= north;

/** The shares of an edge that lie in areas. */
function inside(a: Point, b: Point, areas: readonly Area[]): (readonly [from: number, to: number])[] {
  const cuts = new Set([0, 1]);
  for (const ring of areas.flat()) {
    const spots = closed(ring);
    for (let index = 1; index < spots.length; index++) {
      const share = cut(a, b, spots[index - 1]!, spots[index]!);
      if (share !== null) cuts.add(share);
    }
  }
  const shares = [...cuts].sort((one, other) => one - other);
  return shares.slice(1).flatMap((to, index) => {
    const from = shares[index]!;
    const middle = (from + to) / 2;
    const at: Point = [a[0] + middle * (b[0] - a[0]), a[1] + middle * (b[1] - a[1])];
    return areas.some((area) => within(area, at)) ? [[from, to] as const] : [];
  });
}

/** At which share of an edge another one crosses it. */
function cut(a: Point, b: Point, c: Point, d: Point): number | null {
  const [east, north] = [b[0] - a[0], b[1] - a[1]];
  const [x, y] = [d[0] - c[0], d[1] - c[1]];
  const turn = east * y - north * x;
  if (turn === 0) return null;
  const share = ((c[0] - a[0]) * y - (c[1] - a[1]) * x) / turn;
  const other = ((c[0] - a[0]) * north - (c[1] - a[1]) * east) / turn;
  return share > 0 && share < 1 && other >= 0 && other <= 1 ? share : null;
}
