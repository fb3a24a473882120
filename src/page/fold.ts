/** A part of the report with its title: what is folded holds nothing, and what was never asked for is asked for once it is unfolded. */

import { fill, make, report, written } from "./dom";
import type { Html } from "./door";

export class Fold {
  readonly element: HTMLDetailsElement;
  private readonly summary = make("summary");
  private readonly body = report("", {});
  /** Null where it was not asked for. */
  private html: Html | null = null;
  private holds: Html | null = null;

  /** Whether it is open from the beginning, and who is told when it is turned. */
  constructor(open: boolean, turned: (open: boolean) => void) {
    this.element = make("details", { class: "app-fold", open }, this.summary, this.body);
    this.element.addEventListener("toggle", () => {
      this.write();
      turned(this.element.open);
    });
  }

  /** The part as it is now. */
  show(title: string, html: Html | null): void {
    if (this.summary.textContent !== title) {
      this.summary.textContent = title;
      this.body.setAttribute("aria-label", title);
    }
    this.html = html;
    this.write();
  }

  /** What it holds is of now or nothing: whoever unfolds it sees nothing old. */
  private write(): void {
    const html = this.element.open || this.html === this.holds ? this.html : null;
    if (html === this.holds) return;
    this.holds = html;
    fill(this.body, html === null ? null : written("div", {}, html));
  }
}
