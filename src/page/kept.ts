/** Elements that stay as long as they would be made the same: less is laid out anew, and nobody loses their place. */

export class Kept {
  private known = new Map<string, { readonly sign: string; readonly element: HTMLElement }>();
  private used = new Set<string>();
  /** What takes the place of an element that somebody was in. */
  private entered: HTMLElement | null = null;

  /** The element of a name; made anew where its sign is another one. */
  of(name: string, sign: string, made: () => HTMLElement): HTMLElement {
    this.used.add(name);
    const known = this.known.get(name);
    if (known?.sign === sign) return known.element;
    const element = made();
    if (known?.element.contains(document.activeElement)) this.entered = element;
    this.known.set(name, { sign, element });
    return element;
  }

  /** Puts elements into another; what stands where it belongs is not moved, and what was not asked for is forgotten. */
  settle(into: Element, children: readonly (HTMLElement | null)[]): void {
    const wanted = children.filter((child) => child !== null);
    const stay = new Set<Element>(wanted);
    for (const child of [...into.childNodes]) if (!stay.has(child as Element)) child.remove();
    wanted.forEach((child, at) => {
      if (into.children[at] !== child) into.insertBefore(child, into.children[at] ?? null);
    });
    for (const name of this.known.keys()) if (!this.used.has(name)) this.known.delete(name);
    this.used = new Set();
    this.entered?.querySelector<HTMLElement>("button, summary")?.focus({ preventScroll: true });
    this.entered = null;
  }
}
