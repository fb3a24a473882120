/** What a trip is called: as the program calls its plan, or by what stands in its files. */

import type { Panel } from "./door";
import { besideOf, sameRoute } from "./held";
import type { State } from "./model";

export class Title {
  private plan: { readonly title: string; readonly of: State } | null = null;

  /** A plan of a state has come. */
  take(panel: Panel, of: State): void {
    if ("verdict" in panel) this.plan = { title: panel.title, of };
  }

  /** As the last plan is called, where it is of this route and name. */
  of(state: State): string | null {
    const { plan } = this;
    const same = plan !== null && sameRoute(plan.of, state) && plan.of.trip.name === state.trip.name;
    return (same ? plan.title : state.trip.name) ?? besideOf(state).route?.name ?? null;
  }
}
