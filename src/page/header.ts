/** The head of the page: what it is about, the language, a step back and forth, and the way to save. */

import type { Desk, Part } from "./desk";
import { button, make, retext } from "./dom";
import type { Panel } from "./door";
import type { State } from "./model";
import { Title } from "./title";
import { LANGUAGES, type Language } from "./words";

export class Header implements Part {
  readonly element: HTMLElement;
  private readonly title = make("h1", { class: "app-h1" });
  private readonly undo: HTMLButtonElement;
  private readonly redo: HTMLButtonElement;
  private readonly called = new Title();

  constructor(
    private readonly desk: Desk,
    speak: (language: Language) => void,
  ) {
    const { words, store } = desk;
    const step = (sign: string, name: string, press: () => void) =>
      button(sign, press, { class: "app-button app-step", "aria-label": words(name), title: words(name) });
    this.undo = step("↶", "draw-undo", () => store.undo());
    this.redo = step("↷", "draw-redo", () => store.redo());
    const save = button(words("draw-save"), () => desk.save(), { class: "app-button app-main" });
    const acts = make("div", { class: "app-acts app-tools" }, this.languages(speak), this.undo, this.redo, save);
    this.element = make("header", { class: "app-header" }, this.title, acts);
    this.sync(store.state);
  }

  sync(state: State): void {
    const { store, words } = this.desk;
    retext(this.title, this.called.of(state) ?? words("draw-title"));
    this.undo.disabled = !store.canUndo;
    this.redo.disabled = !store.canRedo;
  }

  show(panel: Panel, _: unknown, of: State): void {
    this.called.take(panel, of);
    this.sync(this.desk.store.state);
  }

  private languages(speak: (language: Language) => void): HTMLElement {
    const { words, language } = this.desk;
    const choice = make("select", { class: "app-input app-language", "aria-label": words("draw-language") });
    for (const one of LANGUAGES) {
      choice.append(make("option", { value: one, title: words(`draw-language-${one}`), selected: one === language }, one.toUpperCase()));
    }
    choice.addEventListener("change", () => speak(choice.value as Language));
    return choice;
  }
}
