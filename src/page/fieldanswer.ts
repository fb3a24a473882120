/** The answer on the ice: a few lines that stay in sight with the way back, and all that is longer under the place. */

import { type Child, button, fill, make } from "./dom";
import type { Html } from "./door";
import type { Words } from "./words";

/** Where a sentence ends. */
const END = /\.(?=\s|$)/;

export class Answer {
  /** In sight wherever the form is scrolled to. */
  readonly pinned: HTMLElement;
  /** Of one height until all of it is asked for: what is under it stays under the hand. */
  readonly longer: HTMLElement;
  private readonly lines = make("div", { class: "app-answer", role: "status" });
  private readonly title = make("span", { class: "app-longer-title" });
  private readonly text: HTMLElement;
  private readonly more: HTMLButtonElement;
  private said: readonly [lines: readonly HTMLElement[], spare: HTMLElement | null] = [[], null];
  /** All that is longer, by what stands in the lines. */
  private told: (said: string) => readonly Child[] = () => [];
  private sign = "";
  private wide = 0;

  constructor(title: string, private readonly words: Words, back: HTMLElement) {
    this.pinned = make("div", { class: "app-pinned" }, this.lines, back);
    this.text = make("div", { class: "app-longer", role: "group", "aria-label": title, focusin: () => this.unfold(true) });
    this.more = button(words("draw-field-more"), () => this.unfold(!this.unfolded), { class: "app-button app-more", "aria-expanded": "false", hidden: true });
    // Above what it unfolds: it stays where it is, and so does the beginning of the text.
    this.longer = make("div", { class: "app-longer-box" }, make("div", { class: "app-longer-head" }, this.title, this.more), this.text);
    const sized = new ResizeObserver(() => {
      if (this.lines.offsetWidth !== this.wide) this.lay();
      else this.offer();
    });
    sized.observe(this.lines);
    sized.observe(this.text);
  }

  /** `spare` is said where there is a line for it, `longer` by what found its line. What stands there already is not said again. */
  say(lines: readonly HTMLElement[], spare: HTMLElement | null, longer: (said: string) => readonly Child[], { title = "", refused = false } = {}): void {
    const sign = [...lines, spare].map((line) => line?.outerHTML ?? "").join("\n");
    this.lines.classList.toggle("app-refusal", refused);
    [this.said, this.told] = [[lines, spare], longer];
    this.title.textContent = title;
    this.lay(sign !== this.sign);
    this.sign = sign;
  }

  private lay(anew = true): void {
    if (anew) this.put();
    // What is left out for want of room is not said.
    const longer = this.told(this.lines.innerText);
    const next = make("div", {}, ...longer);
    if (next.innerHTML !== (this.text.firstElementChild?.innerHTML ?? "")) fill(this.text, longer.length > 0 ? next : null);
    this.offer();
  }

  /** Nothing of what is said is cut: what can be left out or be smaller makes room, then the place grows. Beside the way back there is least. */
  private put(): void {
    const [lines, spare] = this.said;
    const { classList } = this.lines;
    this.wide = this.lines.offsetWidth;
    const room = parseFloat(getComputedStyle(this.lines).minHeight) + 1;
    const grave = lines.filter((line, at) => at < 2 || line.classList.contains("app-late"));
    const fewer = getComputedStyle(this.pinned).display === "grid" ? [grave, lines.slice(0, 2)] : [];
    for (const all of [...(spare ? [[...lines, spare]] : []), lines, ...fewer]) {
      fill(this.lines, ...all);
      for (const tight of [false, true]) {
        classList.toggle("app-tight", tight);
        if (this.lines.offsetHeight <= room) return;
      }
    }
  }

  private get unfolded(): boolean {
    return this.text.classList.contains("app-whole-text");
  }

  private unfold(open: boolean): void {
    if (open === this.unfolded || (open && this.more.hidden)) return;
    this.text.classList.toggle("app-whole-text", open);
    this.text.scrollTop = 0;
    this.more.textContent = this.words(open ? "draw-field-less" : "draw-field-more");
    this.more.setAttribute("aria-expanded", String(open));
  }

  /** The way to all of it, where there is more. */
  private offer(): void {
    const fits = !this.unfolded && this.text.scrollHeight <= this.text.clientHeight + 1;
    this.more.hidden = fits || !this.text.hasChildNodes();
  }
}

/** The first sentence of a text. */
export function firstOf(html: Html): DocumentFragment {
  const whole = make("div");
  whole.innerHTML = html;
  const range = document.createRange();
  range.selectNodeContents(whole);
  for (const text of whole.childNodes) {
    const end = text instanceof Text ? text.data.search(END) : -1;
    if (end < 0) continue;
    range.setEnd(text, end);
    break;
  }
  return range.cloneContents();
}
