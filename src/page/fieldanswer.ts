/** The answer on the ice: two lines that stay in sight with the way back, and in a place of its own height all that is longer. */

import { type Child, fill, make, report, written } from "./dom";
import type { Html } from "./door";

/** What is told of a leg before it says what to do, and where the sentence ends that says so. */
const [ARROW, END] = ["→", /\.(?=\s|$)/];

export class Answer {
  /** In sight wherever the form is scrolled to. */
  readonly pinned: HTMLElement;
  /** Of one height whatever stands in it: what is under it stays under the hand. */
  readonly longer: HTMLElement;
  private readonly lines = make("div", { class: "app-answer", role: "status" });

  constructor(title: string, back: HTMLElement) {
    this.pinned = make("div", { class: "app-pinned" }, this.lines, back);
    this.longer = report(title, { class: "app-longer" });
    // It is scrolled, by keys too.
    new ResizeObserver(() => this.reach()).observe(this.longer);
  }

  /** What stands there already is not said again. */
  say(lines: readonly HTMLElement[], longer: readonly Child[]): void {
    const same = lines.map((line) => line.outerHTML).join("") === this.lines.innerHTML;
    if (!same) fill(this.lines, ...lines);
    if (longer.length === 0) return fill(this.longer);
    const next = make("div", {}, ...longer);
    if (next.innerHTML === this.longer.firstElementChild?.innerHTML) return;
    fill(this.longer, next);
    this.longer.scrollTop = 0;
    this.reach();
  }

  private reach(): void {
    const { longer } = this;
    if (longer.scrollHeight > longer.clientHeight || longer.scrollWidth > longer.clientWidth) longer.setAttribute("tabindex", "0");
    else if (longer !== document.activeElement) longer.removeAttribute("tabindex");
  }
}

/** The first thing to do of what is told of a leg; null where there is none. */
export function cure(told: Html): HTMLElement | null {
  const whole = written("div", {}, told);
  const texts = [...whole.childNodes].filter((node): node is Text => node instanceof Text);
  const first = texts.find((text) => text.data.includes(ARROW));
  if (!first) return null;
  const from = first.data.indexOf(ARROW);
  const range = document.createRange();
  range.selectNodeContents(whole);
  range.setStart(first, from);
  const last = texts.slice(texts.indexOf(first)).find((text) => END.test(text.data.slice(text === first ? from : 0)));
  if (last) range.setEnd(last, last.data.slice(last === first ? from : 0).search(END) + (last === first ? from : 0));
  return make("p", { class: "app-cure" }, range.cloneContents());
}
