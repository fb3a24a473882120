/** What comes to the whole page: files that are dropped on it, and the keys that go a step back or forth. */

import type { Store } from "./model";

export function hear(store: Store, take: (files: readonly File[]) => void): void {
  document.addEventListener("dragover", (event) => event.preventDefault());
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files.length > 0) take(files);
  });
  document.addEventListener("keydown", (event) => key(event, store));
}

/** Undo and redo where no text is typed, since fields have their own. */
function key(event: KeyboardEvent, store: Store): void {
  const { target } = event;
  const typing = target instanceof HTMLInputElement ? target.type !== "range" : target instanceof HTMLTextAreaElement;
  if (typing || !(event.ctrlKey || event.metaKey) || event.altKey) return;
  const pressed = event.key.toLowerCase();
  if (pressed === "z" && !event.shiftKey) store.undo();
  else if (pressed === "y" || pressed === "z") store.redo();
  else return;
  event.preventDefault();
}
