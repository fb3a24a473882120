/** Rows of a form that come and go. The tabulator goes from line to line; what takes a row out stands behind them all. */

import { fill, make } from "./dom";
import { goesOnByEnter } from "./enter";
import { roving } from "./map/rover";

export class Listed {
  readonly element: HTMLElement;
  private readonly rows = make("div", { class: "app-rows" });
  /** Beside the rows to the eye, one stop behind them to the tabulator. */
  private readonly drops: HTMLElement;
  private readonly settle: () => void;

  /** Takes what taking one out is called, and the button that makes one more. */
  constructor(private readonly drop: string, private readonly more: HTMLElement) {
    this.drops = make("div", { class: "app-rows", role: "toolbar", "aria-orientation": "vertical", "aria-label": drop });
    this.settle = roving(this.drops);
    goesOnByEnter(this.rows, () => more.focus());
    this.element = make("div", { class: "app-list" }, this.rows, more, this.drops);
  }

  /** Other rows; whoever was on a line that is gone is on the one in its place. */
  fill(rows: readonly HTMLElement[], dropped: (at: number) => void): void {
    const now = document.activeElement;
    const at = [...this.rows.children].findIndex((row) => row.contains(now));
    const line = [...(this.rows.children[at]?.querySelectorAll("input") ?? [])].findIndex((one) => one === now);
    fill(this.rows, ...rows);
    fill(this.drops, ...rows.map((_, index) => this.cross(index, dropped)));
    const all = [...rows, ...this.drops.children] as HTMLElement[];
    all.forEach((one, index) => (one.style.gridRow = String((index % rows.length) + 1)));
    this.more.style.gridRow = String(rows.length + 1);
    for (const row of rows) row.tabIndex = -1;
    this.drops.hidden = rows.length === 0;
    this.settle();
    if (at >= 0) this.enter(at, line);
  }

  /** The keys go to a line of the last row. */
  lastInput(at = 0): void {
    this.rows.lastElementChild?.querySelectorAll("input")[at]?.focus();
  }

  private cross(at: number, dropped: (at: number) => void): HTMLElement {
    const says = `${this.drop} ${at + 1}`;
    const press = ({ detail }: MouseEvent): void => {
      dropped(at);
      // A finger that taps here does not want the keyboard over half of the screen.
      const types = detail === 0 || matchMedia("(pointer: fine)").matches;
      if (types) this.enter(at, 0);
      else this.rowAt(at)?.focus();
    };
    return make("button", { type: "button", class: "app-drop", "aria-label": says, title: says, click: (event) => press(event as MouseEvent) }, "✕");
  }

  /** That row, or the last one. */
  private rowAt(at: number): HTMLElement | null {
    const { children } = this.rows;
    return (children[Math.min(at, children.length - 1)] as HTMLElement | undefined) ?? null;
  }

  /** To a line of that row, or to the way to a new one. */
  private enter(at: number, line: number): void {
    const lines = this.rowAt(at)?.querySelectorAll<HTMLElement>("input");
    (lines?.[Math.max(0, line)] ?? this.more).focus();
  }
}
