/** Fields of forms. Each follows the state unless it already shows it, so that nobody is interrupted while typing. */

import type { Term } from "./door";
import { type Marks, button, make, newId, overtyped } from "./dom";
import { about, shown, typed } from "./number";

/** What a field shows and changes, as text. */
export interface Value {
  get(): string;
  /** `going` while a slider moves. */
  set(text: string, going: boolean): void;
  /** The step is done. */
  settle(): void;
}

export interface Field {
  readonly element: HTMLElement;
  sync(): void;
}

/** Bounds of a slider. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

type Control = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

/** Ties a control to a value; the answer brings it up to the state. */
function tie(control: Control, value: Value, event: "input" | "change"): () => void {
  let last: string | null = null;
  let typing = false;
  control.addEventListener(event, () => {
    typing = true;
    value.set(control.value, event === "input");
    typing = false;
    last = value.get();
  });
  if (event === "input") control.addEventListener("change", () => {
    value.settle();
    // Who leaves a field sees what is in force.
    if (control.value !== value.get()) control.value = value.get();
  });
  return () => {
    const now = value.get();
    if (now === last || typing) return;
    control.value = now;
    last = now;
  };
}

function labelled(label: string, control: Control, unit: string, ...beside: Node[]): HTMLElement {
  control.id = newId();
  const name = make("label", { class: "app-label", for: control.id }, label);
  const behind = unit === "" ? null : make("span", { class: "app-unit", id: newId() }, unit);
  if (behind) control.setAttribute("aria-describedby", behind.id);
  return make("div", { class: "app-field" }, name, make("div", { class: "app-controls" }, control, behind, ...beside));
}

/** A line of text. */
export function textField(label: string, value: Value, marks: Marks = {}): Field {
  const control = make("input", { type: "text", class: "app-input", autocomplete: "off", ...marks });
  const sync = tie(control, value, "input");
  sync();
  return { element: labelled(label, control, ""), sync };
}

/** Several lines of text. */
export function areaField(label: string, value: Value): Field {
  const control = make("textarea", { class: "app-input", rows: 2 });
  const sync = tie(control, value, "input");
  sync();
  return { element: labelled(label, control, ""), sync };
}

/** Where a number is typed. */
const numberControl = (): HTMLInputElement =>
  overtyped(make("input", { type: "text", inputmode: "decimal", class: "app-input app-number", autocomplete: "off" }));

/** A number, typed. */
export function numberField(label: string, unit: string, value: Value): Field {
  const control = numberControl();
  const sync = tie(control, value, "input");
  sync();
  return { element: labelled(label, control, unit), sync };
}

/** A number, typed or up and down by whole steps of one, never below nothing. */
export function stepField(label: string, unit: string, value: Value): Field {
  const typing = numberField(label, unit, value);
  const at = () => typed(value.get());
  const step = (by: number) => {
    const now = at();
    const next = Math.max(0, (typeof now === "number" ? now : 0) + by);
    if (less.getAttribute("aria-disabled") === "true" && by < 0) return;
    // Without the last digits that sums of tenths bring along.
    value.set(shown(Number(next.toFixed(6))), true);
    sync();
  };
  const big = (text: string, by: number) => {
    const marks = { class: "app-button app-big app-by-one", "aria-label": `${label} ${text}`, blur: () => value.settle() };
    return button(text, () => step(by), marks);
  };
  const less = big(`−1 ${unit}`, -1);
  const sync = () => {
    const now = at();
    typing.sync();
    less.setAttribute("aria-disabled", String(!(typeof now === "number" && now > 0)));
  };
  typing.element.addEventListener("input", sync);
  typing.element.querySelector(".app-controls")?.append(less, big(`+1 ${unit}`, 1));
  sync();
  return { element: typing.element, sync };
}

/** A number, typed or by a slider. Without a value the slider says so. */
export function sliderField(label: string, unit: string, none: string, value: Value, bounds: Bounds): Field {
  const control = numberControl();
  const slider = make("input", { type: "range", class: "app-slider", "aria-label": label, step: bounds.step });
  const syncControl = tie(control, value, "input");
  const syncSlider = () => {
    const at = about(value.get());
    slider.min = String(bounds.least);
    slider.max = String(Math.max(bounds.most, at ?? 0));
    slider.value = String(at ?? bounds.least);
    slider.classList.toggle("app-unset", at === null);
    slider.setAttribute("aria-valuetext", at === null ? none : `${value.get()} ${unit}`);
  };
  const sync = () => {
    syncControl();
    syncSlider();
  };
  slider.addEventListener("input", () => {
    value.set(shown(Number(slider.value)), true);
    sync();
  });
  settleSlider(slider, value);
  unscrolled(slider, value, sync);
  control.addEventListener("input", syncSlider);
  sync();
  return { element: labelled(label, control, unit, slider), sync };
}

/** A slide is one step, and so are keys pressed until the slider is left. */
function settleSlider(slider: HTMLInputElement, value: Value): void {
  let held = false;
  slider.addEventListener("pointerdown", () => (held = true));
  slider.addEventListener("change", () => {
    if (held) value.settle();
    held = false;
  });
  slider.addEventListener("blur", () => value.settle());
}

/** A finger that scrolls the page set out on the slider: what it changed there on its way is as before. */
function unscrolled(slider: HTMLInputElement, value: Value, sync: () => void): void {
  let before = "";
  slider.addEventListener("pointerdown", () => (before = value.get()));
  slider.addEventListener("pointercancel", () => {
    if (value.get() !== before) value.set(before, true);
    value.settle();
    sync();
  });
}

/** A choice of words; `none` is the word for not saying. */
export function choiceField(label: string, terms: readonly Term[], none: string, value: Value): Field {
  const control = make("select", { class: "app-input" }, make("option", { value: "" }, none));
  for (const { name, means } of terms) control.append(make("option", { value: name }, means || name));
  const follow = tie(control, value, "change");
  const sync = () => {
    const now = value.get();
    const known = [...control.options].some((option) => option.value === now);
    if (!known) control.append(make("option", { value: now }, now));
    follow();
  };
  sync();
  return { element: labelled(label, control, ""), sync };
}

/** A part of a form with a title. */
export function group(title: string, ...children: (Node | null)[]): HTMLFieldSetElement {
  return make("fieldset", { class: "app-group" }, make("legend", {}, title), ...children);
}

/** One of few, all in sight, as buttons of which one is pressed. */
export function switches(
  label: string,
  choices: readonly (readonly [name: string, text: string])[],
  now: () => string,
  choose: (name: string) => void,
): Field {
  const buttons = choices.map(([name, text]) => {
    const button = make("button", { type: "button", class: "app-switch", click: () => choose(name) }, text);
    return [name, button] as const;
  });
  const sync = () => {
    for (const [name, button] of buttons) button.setAttribute("aria-pressed", String(name === now()));
  };
  sync();
  const element = make("div", { class: "app-switches", role: "group", "aria-label": label }, ...buttons.map(([, b]) => b));
  return { element, sync };
}
