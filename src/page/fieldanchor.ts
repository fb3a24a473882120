/** What changes on the ice changes from here on: the hour here stays that of the plan as it was, whatever else follows. */

import type { Desk } from "./desk";
import { type StartHour, sameStart, withStart } from "./fieldclock";
import type { State } from "./model";
import { same } from "./takeback";

export class Anchor {
  /** The hour and its place, where nobody said one. */
  private held: StartHour | null = null;

  /** The state after an act, its hours counted from the one at which the plan has the team here. */
  hold(was: State, left: State, here: StartHour | null): State {
    const { start, start_at_km } = was.trip;
    if (left === was || !sameStart(left.trip, was.trip) || start === undefined || start_at_km !== undefined || !here) return left;
    return { ...left, trip: withStart(left.trip, this.at(here)) };
  }

  /** Counts from there from now on. */
  at(here: StartHour): StartHour {
    this.held = here;
    return here;
  }

  /** As the state without all acts, where nothing of them is left but the hour that they counted from. */
  loose(left: State, bare: State): State {
    const { held } = this;
    const isHeld = held !== null && sameStart(left.trip, held);
    const loose = { ...left, trip: withStart(left.trip, bare.trip) };
    return isHeld && same(loose, bare) ? loose : left;
  }
}

/** That of a page, in another language too. */
const known = new WeakMap<Desk, Anchor>();

export function anchorOf(desk: Desk): Anchor {
  const anchor = known.get(desk) ?? new Anchor();
  known.set(desk, anchor);
  return anchor;
}
