/** What comes to the whole page: files that are dropped on it, and the keys that go a step back or forth. */

import type { Store } from "./model";

export function hear(store: Store, take: (files: readonly File[]) => void): void {
  document.addEventListener("dragover", (event) => event.preventDefault());
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files.length > 0) take(files);
  });
  steps(store);
}

const TYPED: Readonly<Record<string, "undo" | "redo">> = { historyUndo: "undo", historyRedo: "redo" };

/** Undo and redo are the page's everywhere: a field knows only what was typed there, and not that the page wrote in it since. */
function steps(store: Store): void {
  const go = (event: Event, step: "undo" | "redo" | null): void => {
    if (step === null) return;
    event.preventDefault();
    store[step]();
  };
  document.addEventListener("keydown", (event) => go(event, pressed(event)), { capture: true });
  // Out of the menu of the browser, or by keys that lie elsewhere on other keyboards.
  document.addEventListener("beforeinput", (event) => go(event, TYPED[event.inputType] ?? null), { capture: true });
}

/** The step that keys ask for. */
function pressed({ key, ctrlKey, metaKey, altKey, shiftKey, isComposing }: KeyboardEvent): "undo" | "redo" | null {
  if (!(ctrlKey || metaKey) || altKey || isComposing) return null;
  const letter = key.toLowerCase();
  if (letter === "z") return shiftKey ? "redo" : "undo";
  return letter === "y" ? "redo" : null;
}
