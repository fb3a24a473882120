/** The side with the map and the profile under it, which show one place together. */

import type { Desk, Part } from "./desk";
import { fill, make } from "./dom";
import type { Ground, Panel, Planned } from "./door";
import { besideOf, sameHeights, sameRoute } from "./held";
import type { OnRoute } from "./map/geometry/along";
import { ZoneMap } from "./map/map";
import { ProfileStrip } from "./map/profile";
import type { State } from "./model";
import { passed } from "./passed";
import { start } from "./start";

export class MapSide implements Part {
  readonly element = make("div", { class: "app-left" });
  private map: ZoneMap | null = null;
  private profile: ProfileStrip | null = null;
  /** The state whose ground lies there. */
  private under: State | null = null;
  /** Where somebody is. */
  private here: OnRoute | null = null;
  /** Nothing was shown on this ground yet. */
  private bare = true;
  /** The last plan there was, and of what. */
  private last: { readonly plan: Planned; readonly of: State } | null = null;

  constructor(private readonly desk: Desk) {
    const waits = () => make("p", { class: "app-quiet app-empty" }, desk.words("draw-starting"));
    const { route } = besideOf(desk.store.state);
    document.body.toggleAttribute("data-bare", !route);
    this.element.append(route ? waits() : start(desk));
  }

  /** Another ground; without one there is no map, but the way to one. */
  lie(ground: Ground | null, of: State): void {
    this.end();
    [this.under, this.bare] = [of, true];
    const { words, store } = this.desk;
    document.body.toggleAttribute("data-bare", !ground);
    // Whoever is on its way through the steps stays there.
    if (!ground && this.element.querySelector(".app-start")) return;
    if (!ground) return fill(this.element, start(this.desk));
    const [picture, strip] = [make("div", { class: "app-map" }), make("div", { class: "app-profile" })];
    fill(this.element, picture, strip);
    // On a phone the strip of the profile lies under the thumb that scrolls the plan.
    passed(strip, () => (document.body.dataset["tab"] === "plan" ? document.querySelector(".app-panel:not([hidden])") : null));
    const options = { store, ground, words };
    // Who looks at the figures of a zone taps for another one.
    const map = new ZoneMap(picture, { ...options, zonesFirst: () => document.body.dataset["tab"] === "zone" });
    map.onMade(() => this.desk.made());
    const profile = new ProfileStrip(strip, { ...options, map });
    map.onPick((key) => this.desk.pick(key));
    map.onPoint((stage, at_m) => profile.pointAt(stage, at_m));
    profile.onPoint((stage, at_m) => map.pointAt(stage, at_m));
    map.pick(this.desk.picked);
    map.mark(this.here);
    [this.map, this.profile] = [map, profile];
  }

  /** A plan of another route is none of this ground; with its own it is shown once more. */
  show(panel: Panel, _: Planned | null, of: State): void {
    const { under, last } = this;
    if (!under || !sameRoute(of, under)) return;
    if ("verdict" in panel) this.last = { plan: panel, of };
    // Where there is no plan the legs of before lie on a new ground too.
    else if (this.bare && last && sameRoute(last.of, under)) this.put(last.plan, last.of, under);
    this.bare = false;
    this.put(panel, of, under);
  }

  /** On other heights those of the plan are none. */
  private put(panel: Panel, of: State, under: State): void {
    this.map?.show(panel, of);
    if (sameHeights(of, under)) this.profile?.show(panel);
  }

  pick(key: number | null): void {
    this.map?.pick(key);
  }

  goToLeg(leg: number): void {
    this.map?.goToLeg(leg);
  }

  paint(): void {
    this.map?.setTool("paint");
    this.map?.focus();
  }

  mark(here: OnRoute | null): void {
    if (here?.stage === this.here?.stage && here?.at_m === this.here?.at_m) return;
    this.here = here;
    this.map?.mark(here);
  }

  /** Takes map and profile away. */
  end(): void {
    this.map?.end();
    this.profile?.end();
    this.map = null;
    this.profile = null;
  }
}
