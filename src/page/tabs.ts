/** Tabs, with arrow keys, of which one is open. */

import { make, newId } from "./dom";

export interface Tab<Name extends string> {
  readonly name: Name;
  readonly title: string;
  readonly element: HTMLElement;
}

export class Tabs<Name extends string> {
  readonly element: HTMLElement;
  private readonly buttons = new Map<Name, HTMLButtonElement>();
  private readonly panels = new Map<Name, HTMLElement>();

  constructor(label: string, tabs: readonly Tab<Name>[], private readonly opened: (name: Name) => void, above: HTMLElement, private readonly anew: Name) {
    const list = make("div", { role: "tablist", class: "app-tabs", "aria-label": label });
    const panels = make("div", { class: "app-panels" });
    this.element = make("div", { class: "app-side" }, list, above, panels);
    for (const { name, title, element } of tabs) {
      const [tab, panel] = [newId(), newId()];
      const button = make("button", { type: "button", role: "tab", id: tab, "aria-controls": panel, class: "app-tab" }, title);
      button.addEventListener("click", () => this.open(name));
      button.addEventListener("keydown", (event) => this.step(event, name));
      list.append(button);
      const marks = { role: "tabpanel", id: panel, "aria-labelledby": tab, class: "app-panel", tabindex: 0, hidden: true };
      const holder = make("div", marks, element);
      panels.append(holder);
      this.buttons.set(name, button);
      this.panels.set(name, holder);
    }
  }

  open(name: Name): void {
    for (const [other, button] of this.buttons) {
      const open = other === name;
      button.setAttribute("aria-selected", String(open));
      button.tabIndex = open ? 0 : -1;
      const panel = this.panels.get(other);
      if (!panel) continue;
      const came = open && panel.hidden;
      panel.hidden = !open;
      // The plan is another one than when it was left; a form is filled in from where it was left.
      if (came && other === this.anew) panel.scrollTop = 0;
    }
    this.opened(name);
  }

  private step(event: KeyboardEvent, from: Name): void {
    const names = [...this.buttons.keys()];
    const at = names.indexOf(from);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: names.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const name = names[(to + names.length) % names.length];
    if (name === undefined) return;
    this.open(name);
    this.buttons.get(name)?.focus();
  }
}
