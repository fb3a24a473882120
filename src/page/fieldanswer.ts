/** The answer on the ice: two lines that stay in sight with the way back, and in a place of its own height all that is longer. */

import { type Child, fill, make, report, scrolled, written } from "./dom";
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
  }

  /** What stands there already is not said again. */
  say(lines: readonly HTMLElement[], longer: readonly Child[]): void {
    const same = lines.map((line) => line.outerHTML).join("") === this.lines.innerHTML;
    if (!same) this.put(lines);
    if (longer.length === 0) return fill(this.longer);
    const next = make("div", {}, ...longer);
    if (next.innerHTML === this.longer.firstElementChild?.innerHTML) return;
    fill(this.longer, next);
    this.longer.scrollTop = 0;
    // Its height stays as it is, so nobody else tells.
    scrolled(this.longer);
  }

  /** Of three lines the first has what the others leave. */
  private put(lines: readonly HTMLElement[]): void {
    const { classList } = this.lines;
    fill(this.lines, ...lines);
    classList.remove("app-roomy");
    const [, second] = lines;
    if (lines.length === 2 && second) classList.toggle("app-roomy", second.offsetHeight < 1.6 * parseFloat(getComputedStyle(second).lineHeight));
  }
}

/** The first thing to do of what is told of a leg; null where there is none. */
export function cure(told: Html): HTMLElement | null {
  const whole = written("div", {}, told);
  const first = textsOf(whole).find((text) => text.data.includes(ARROW));
  return first ? make("p", { class: "app-cure" }, firstOf(whole, first, first.data.indexOf(ARROW))) : null;
}

const textsOf = (whole: Element): Text[] => [...whole.childNodes].filter((node): node is Text => node instanceof Text);

/** The rest of the first sentence from a place in it on, or all of it. */
export function firstOf(whole: Element, start: Text | undefined = textsOf(whole)[0], from = 0): DocumentFragment {
  const range = document.createRange();
  range.selectNodeContents(whole);
  if (!start) return range.cloneContents();
  const texts = textsOf(whole);
  range.setStart(start, from);
  for (const text of texts.slice(texts.indexOf(start))) {
    const after = text === start ? from : 0;
    const end = text.data.slice(after).search(END);
    if (end < 0) continue;
    range.setEnd(text, end + after);
    break;
  }
  return range.cloneContents();
}
