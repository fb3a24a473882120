/** What a finger does up and down on one element scrolls another one, where that one alone can be scrolled. */

/** `under` is asked at every move: null where the finger is not meant for it. */
export function passed(element: HTMLElement, under: () => Element | null): void {
  let last: number | null = null;
  element.addEventListener("pointerdown", ({ pointerType, clientY }) => (last = pointerType === "mouse" ? null : clientY));
  element.addEventListener("pointermove", ({ clientY }) => {
    if (last === null) return;
    under()?.scrollBy(0, last - clientY);
    last = clientY;
  });
  for (const end of ["pointerup", "pointercancel"]) element.addEventListener(end, () => (last = null));
  element.addEventListener("wheel", ({ deltaX, deltaY }) => Math.abs(deltaY) > Math.abs(deltaX) && under()?.scrollBy(0, deltaY), { passive: true });
}
