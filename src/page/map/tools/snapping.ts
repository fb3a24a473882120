/** Places that stick to the rims of zones and of the inventory's ice. */

import { onRim, type OnRim } from "../geometry/tracing";
import type { Point, Ring } from "../geometry/rings";
import type { Scene } from "../scene";
import { meets, type Box } from "../shapes";
import type { Touch } from "./tool";

export interface Stuck {
  readonly at: Point;
  readonly rim: OnRim | null;
}

/** The nearest rim within reach; the spot itself where there is none. Rings of `but` do not count. */
export function stuck(scene: Scene, { at, reach, free }: Touch, but: ReadonlySet<Ring> = new Set()): Stuck {
  if (free) return { at, rim: null };
  const box: Box = [at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach];
  let best: OnRim | null = null;
  for (const ring of rims(scene, box)) {
    if (but.has(ring)) continue;
    const found = onRim(ring, at, reach);
    if (found && found.away <= reach && better(found, best)) best = found;
  }
  return best ? { at: best.at, rim: best } : { at, rim: null };
}

/** A spot of a ring before a place on an edge, then the nearer one. */
function better(one: OnRim, other: OnRim | null): boolean {
  if (!other) return true;
  if ((one.share === 0) !== (other.share === 0)) return one.share === 0;
  return one.away < other.away;
}

function* rims(scene: Scene, box: Box): Generator<Ring> {
  for (const one of scene.shapes) if (meets(box, one.box)) yield* one.areas.flat();
  for (const ice of scene.ice) if (meets(box, ice.box)) yield* ice.area;
}
