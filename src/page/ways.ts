/** Ways to split the party and to use the ropes at hand, side by side, as the program weighs them. */

import { answer, broken, said } from "./answers";
import { waysOf } from "./calls";
import type { Desk, Part } from "./desk";
import { type Marks, button, fill, make, report, written } from "./dom";
import type { Weighed } from "./door";
import { faultList } from "./faults";
import type { State } from "./model";

export class Ways implements Part {
  readonly element = make("section", { class: "app-ways" });
  private readonly answer = make("div");
  private readonly button: HTMLButtonElement;
  private of: State | null = null;

  /** `still` where the page is not to move under the one who asks. */
  constructor(private readonly desk: Desk, marks: Marks = {}, private readonly still = false) {
    this.button = button(desk.words("draw-ways"), () => void this.weigh(!this.still), marks);
    this.element.append(this.button, this.answer);
  }

  /** What was weighed for another state is not shown beside this one. */
  sync(state: State): void {
    if (this.of !== null && this.of !== state) this.forget();
  }

  /** Shows them to somebody who asked elsewhere. */
  open(): void {
    this.button.focus();
    void this.weigh(true);
  }

  private forget(): void {
    this.of = null;
    fill(this.answer);
  }

  private async weigh(goes: boolean): Promise<void> {
    const { store: { state }, words } = this.desk;
    this.of = state;
    fill(this.answer, make("p", { class: "app-fine", role: "status" }, words("draw-ways-waits")));
    if (goes) this.element.scrollIntoView({ block: "start" });
    const ways = await this.weighed(state);
    if (this.of !== state) return;
    fill(this.answer, ways);
    if (goes) this.element.scrollIntoView({ block: "start" });
  }

  private async weighed(state: State): Promise<HTMLElement> {
    const { engine, words, language } = this.desk;
    try {
      const came = await engine.over(state, waysOf(state, language));
      const ways = answer<Weighed>(came);
      if (ways && "html" in ways) return report(words("draw-ways"), {}, written("div", {}, ways.html));
      const { faults } = ways ?? broken(came, engine.gone, words);
      return faultList(faults, this.desk, state);
    } catch (error) {
      return make("p", { class: "app-fault" }, said(error, words));
    }
  }
}
