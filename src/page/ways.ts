/** Ways to split the party and to use the ropes at hand, side by side, as the program weighs them. */

import { said } from "./answers";
import { waysOf } from "./calls";
import type { Desk, Part } from "./desk";
import { button, fill, make, report } from "./dom";
import type { State } from "./model";

export class Ways implements Part {
  readonly element = make("section", { class: "app-ways" });
  private readonly answer = make("div");
  private of: State | null = null;

  constructor(private readonly desk: Desk) {
    const { words } = desk;
    this.element.append(button(words("draw-ways"), () => void this.weigh()), this.answer);
  }

  /** What was weighed for another state is not shown beside this one. */
  sync(state: State): void {
    if (this.of !== null && this.of !== state) this.forget();
  }

  private forget(): void {
    this.of = null;
    fill(this.answer);
  }

  private async weigh(): Promise<void> {
    const { store, engine, words, language } = this.desk;
    const state = store.state;
    this.of = state;
    fill(this.answer, make("p", { class: "app-fine" }, words("draw-ways-waits")));
    const text = await engine.over(state, waysOf(state, language)).then(
      ({ code, out, err }) => (code === 0 || code === 5 ? new TextDecoder().decode(out) : err),
      (error: unknown) => said(error, words),
    );
    if (this.of !== state) return;
    fill(this.answer, report(words("draw-ways"), {}, make("pre", {}, text)));
  }
}
