/** Elements made in a line: names from files go in as text, never as HTML. */

export type Child = Node | string | null | false;

/** Attributes; `true` stands alone, `false` and `null` are left out. A function is called at the event of its name. */
export type Marks = Readonly<Record<string, string | number | boolean | null | ((event: Event) => void)>>;

/** An element with its attributes and what is in it. */
export function make<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  marks: Marks = {},
  ...children: Child[]
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name);
  for (const [mark, value] of Object.entries(marks)) {
    if (typeof value === "function") element.addEventListener(mark, value);
    else if (value === true) element.setAttribute(mark, "");
    else if (value !== false && value !== null) element.setAttribute(mark, String(value));
  }
  fill(element, ...children);
  return element;
}

/** Puts these in place of what was in it. */
export function fill(element: Element, ...children: Child[]): void {
  element.replaceChildren(...children.filter((child): child is Node | string => child !== null && child !== false));
}

/** Gives an element a text, where it has not got it: what stays is not laid out anew. */
export function retext(element: Element | null, text: string): void {
  if (element && element.textContent !== text) element.textContent = text;
}

/** An element that holds HTML of the program, which escaped it. */
export function written<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  marks: Marks,
  html: string,
): HTMLElementTagNameMap[Name] {
  const element = make(name, marks);
  element.innerHTML = html;
  return element;
}

/** What is wider or higher than its room is scrolled, by keys too. Asked after the page was laid out, since to ask before is slow. */
export function scrolled(element: Element): void {
  const more = element.scrollWidth > element.clientWidth || element.scrollHeight > element.clientHeight;
  if (more === element.hasAttribute("tabindex")) return;
  if (more) element.setAttribute("tabindex", "0");
  // Nobody loses their place.
  else if (element !== document.activeElement) element.removeAttribute("tabindex");
}

const sizes = new ResizeObserver((entries) => entries.forEach(({ target }) => scrolled(target)));

/** A piece of the report under a title. */
export function report(title: string, marks: Marks, ...children: Child[]): HTMLElement {
  const { class: also, ...others } = marks;
  const element = make("div", { class: `app-report ${also ?? ""}`, role: "group", "aria-label": title, ...others }, ...children);
  sizes.observe(element);
  return element;
}

/** Who comes to the field types over all that is in it. */
export function overtyped(control: HTMLInputElement): HTMLInputElement {
  let [came, whole] = [false, false];
  control.addEventListener("focus", () => {
    [came, whole] = [true, true];
    control.select();
  });
  // The tap that comes to the field sets the caret after that. A finger that comes again to what it typed means another number;
  // where all of it was marked already, a place in it.
  control.addEventListener("click", (event) => {
    const again = !whole && event instanceof PointerEvent && event.pointerType !== "mouse";
    const caret = control.selectionStart === control.selectionEnd;
    if ((came || again) && caret) control.select();
    [came, whole] = [false, came || again];
  });
  control.addEventListener("input", () => ([came, whole] = [false, false]));
  return control;
}

let ids = 0;

/** An id that nothing else has. */
export const newId = (): string => `app-${++ids}`;

/** A button with a text. */
export const button = (text: string, press: () => void, marks: Marks = {}): HTMLButtonElement =>
  make("button", { type: "button", class: "app-button", click: press, ...marks }, text);
