/** What a letter, a leg or a place to look at has to tell, in a box on the map. */

import { button, fill, make, written } from "../dom";
import type { Words } from "../words";
import type { Told } from "./labels";

export class Note {
  readonly element: HTMLElement;
  /** It holds something of the page's own, whatever the plan. */
  private own = false;
  private readonly holds = make("div", { class: "map-note-text" });

  constructor(words: Words, private readonly ended: () => void) {
    const close = button("✕", () => this.show(null), { class: "map-act", "aria-label": words("draw-close") });
    this.element = make("div", { class: "map-note", role: "status", hidden: true }, this.holds, close);
  }

  /** Whether something is told now. */
  get open(): boolean {
    return !this.element.hidden;
  }

  /** Something of the page's own, or closes it where it stands already. */
  showOwn(element: HTMLElement): void {
    if (this.open && this.holds.firstElementChild?.className === element.className) return this.show(null);
    fill(this.holds, element);
    this.own = true;
    this.element.hidden = false;
  }

  /** Another plan has come: what the one before told does not hold any more. */
  outdated(): void {
    if (!this.open || this.own) return;
    const within = this.element.contains(document.activeElement);
    this.element.hidden = true;
    if (within) this.ended();
  }

  /** Null closes it. */
  show(told: Told | null): void {
    const before = this.open;
    this.own = false;
    this.element.hidden = !told;
    if (told) fill(this.holds, written("p", { class: "map-note-title" }, told.title), written("div", {}, told.told));
    else if (before) this.ended();
  }
}
