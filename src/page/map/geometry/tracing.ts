/** The way along the rim of a ring from one of its places to another. */

import { nearest, type Point, type Ring } from "./rings";

/** A place on a rim: the edge that begins at a spot of the ring, and the share of it that is walked. */
export interface OnRim {
  readonly ring: Ring;
  readonly edge: number;
  readonly share: number;
  readonly at: Point;
  readonly away: number;
}

/** The place of a rim that is nearest to a spot; its spots before its edges where both are near. */
export function onRim(ring: Ring, spot: Point, corner: number): OnRim | null {
  let best: OnRim | null = null;
  for (let edge = 0; edge < ring.length; edge++) {
    const { at, share, away } = nearest(ring[edge]!, ring[(edge + 1) % ring.length]!, spot);
    if (away < (best?.away ?? Infinity)) best = { ring, edge, share, at, away };
  }
  for (let edge = 0; edge < ring.length; edge++) {
    const at = ring[edge]!;
    const away = Math.hypot(at[0] - spot[0], at[1] - spot[1]);
    if (away <= corner && (best?.share !== 0 || away < best.away)) best = { ring, edge, share: 0, at, away };
  }
  return best;
}

/** The spots of the rim strictly between two of its places, the shorter way round. */
export function traced(from: OnRim, to: OnRim): Point[] {
  const { ring } = from;
  const forward = spots(ring, from, to);
  const back = spots(ring, to, from).reverse();
  return length(from.at, forward, to.at) <= length(from.at, back, to.at) ? forward : back;
}

function spots(ring: Ring, from: OnRim, to: OnRim): Point[] {
  const count = ring.length;
  const [start, end] = [from.edge + from.share, to.edge + to.share];
  const last = end >= start ? end : end + count;
  const found: Point[] = [];
  for (let index = Math.floor(start) + 1; index < last; index++) found.push(ring[index % count]!);
  return found;
}

function length(from: Point, way: readonly Point[], to: Point): number {
  let [sum, last] = [0, from];
  for (const at of [...way, to]) {
    sum += Math.hypot(at[0] - last[0], at[1] - last[1]);
    last = at;
  }
  return sum;
}
