/** The enter key in a line of a form goes on to the next line, as people know it from lists that they fill in. */

const LINES = 'input[type="text"], textarea';

/** `last` does something else in the last line. */
export function goesOnByEnter(form: HTMLElement, last: () => void = () => {}): void {
  form.addEventListener("focusin", ({ target }) => {
    if (target instanceof HTMLInputElement) target.enterKeyHint = "next";
  });
  form.addEventListener("keydown", (event) => {
    const { target } = event;
    if (event.key !== "Enter" || event.isComposing || !(target instanceof HTMLInputElement) || target.type !== "text") return;
    event.preventDefault();
    const lines = [...form.querySelectorAll<HTMLElement>(LINES)].filter((line) => line.offsetParent);
    const next = lines[lines.indexOf(target) + 1];
    // What was typed is done, as it is where a field is left.
    target.blur();
    if (next) next.focus();
    else last();
  });
}
