/** The way back on the ice: one press takes back the last act, which it names; where there are more, a second one takes back all. */

import type { Desk } from "./desk";
import { button, fill, make } from "./dom";
import type { TripDoor } from "./door";
import type { State } from "./model";
import { since } from "./since";
import type { TakeBack } from "./takeback";

export class WayBack {
  readonly element: HTMLElement;
  private readonly last: HTMLButtonElement;
  private readonly all: HTMLButtonElement;

  constructor(private readonly desk: Desk, private readonly taken: TakeBack) {
    const { words } = desk;
    this.last = button("", () => this.restore(false), { class: "app-button app-big app-wide" });
    const name = `${words("draw-field-back")}: ${words("draw-field-back-all")}`;
    this.all = button(words("draw-field-back-all"), () => this.restore(true), { class: "app-button app-all", "aria-label": name });
    this.element = make("div", { class: "app-back" }, this.last, this.all);
  }

  /** Says what would be taken back of a state. */
  offer(state: State, door: TripDoor | null): void {
    const [last, ...others] = this.taken.standing(state);
    this.last.hidden = last === undefined;
    this.all.hidden = others.length === 0;
    this.element.classList.toggle("app-several", others.length > 0);
    if (!last) return fill(this.last);
    const said = since(last.without, last.now, this.desk, door, true);
    const { words } = this.desk;
    // Who came back in is no change from what was given, but an act all the same.
    fill(this.last, make("span", {}, `${words("draw-field-back")}: `, make("bdi", {}, said.join(" · ") || words(last.act.did))));
  }

  private restore(all: boolean): void {
    const { store } = this.desk;
    const next = this.taken.back(store.state, all);
    store.change("draw-did-field-back", () => next);
    // Who is left without a button to press is not sent to another place.
    if (this.last.hidden) this.element.closest<HTMLElement>(".app-panel")?.focus({ preventScroll: true });
    else if (all || document.activeElement === document.body) this.last.focus({ preventScroll: true });
  }
}
