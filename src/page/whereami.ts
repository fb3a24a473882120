/** Where on the line somebody is by kilometre or by height. */

import type { Planned } from "./door";

export interface Place {
  readonly stage: number;
  readonly at_m: number;
  /** How the way goes there in the direction of the route, where that was asked for. */
  readonly slope?: "up" | "down" | null;
}

/** Two places nearer than this are one. */
const APART_M = 100;

/** The places at that kilometre: one a stage that is so long, that stage first where somebody is. */
export function atKilometre(plan: Planned, km: number, stage: number): Place[] {
  const at_m = km * 1000;
  const stages = [...new Set(plan.legs.map((leg) => leg.stage))].sort((a, b) => Number(b === stage) - Number(a === stage));
  const on = (of: number) => plan.legs.some((leg) => leg.stage === of && leg.start_m <= at_m && at_m <= leg.end_m);
  return stages.filter(on).map((of) => ({ stage: of, at_m }));
}

/** The places at that height, in walking order. */
export function atHeight(plan: Planned, height_m: number): Place[] {
  const found: Place[] = [];
  for (const { stage, samples } of plan.profiles) {
    samples.forEach(([at_m, height], index) => {
      const [next_m, next] = samples[index + 1] ?? [at_m, null];
      if (height === null || next === null || (height - height_m) * (next - height_m) > 0) return;
      const share = next === height ? 0 : (height_m - height) / (next - height);
      const slope = next > height ? "up" : next < height ? "down" : null;
      const here = { stage, at_m: at_m + share * (next_m - at_m), slope } as const;
      const last = found.at(-1);
      if (last?.stage !== stage || here.at_m - last.at_m > APART_M) found.push(here);
    });
  }
  return found;
}
