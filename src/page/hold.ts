/** What is pressed stays where it is on the screen, whatever comes or goes above it, until somebody scrolls. */

/** An element, and how far below the top of the screen it is. */
type Spot = readonly [find: () => Element | null | undefined, top: number];

/** What keeps its place where a form is made anew. */
const MARKS = ":scope > fieldset, .app-ways";

const topOf = (element: Element): number => element.getBoundingClientRect().top;

export class Hold {
  /** The first one that is still there counts. */
  private spots: readonly Spot[] = [];

  /** `filler` is an empty element high up in the content, which grows where there is nothing left to scroll. */
  constructor(private readonly content: HTMLElement, private readonly filler: HTMLElement) {
    const at = (event: Event) => this.take(event);
    for (const name of ["pointerdown", "click", "input"]) content.addEventListener(name, at, { capture: true });
    const release = () => this.release();
    for (const name of ["pointercancel", "touchmove", "wheel", "keydown"]) content.addEventListener(name, release, { capture: true, passive: true });
    // Before anything is painted.
    const adjust = () => this.adjust();
    new MutationObserver(adjust).observe(content, { subtree: true, childList: true, characterData: true, attributes: true, attributeFilter: ["class", "hidden"] });
    new ResizeObserver(adjust).observe(content);
  }

  release(): void {
    this.spots = [];
  }

  /** Begins where the same form was before, in another language. */
  goOn(before: HTMLElement): void {
    const panel = before.closest(".app-panel:not([hidden])");
    if (!panel?.isConnected || panel.scrollTop === 0) return;
    const under = before.querySelector(".app-pinned")?.getBoundingClientRect().bottom ?? 0;
    const tops = [...before.querySelectorAll(MARKS)].map((mark, at) => ({ at, top: topOf(mark) }));
    const near = tops.sort((a, b) => Math.abs(a.top - under) - Math.abs(b.top - under))[0];
    if (near) this.spots = [[() => this.content.querySelectorAll(MARKS)[near.at], near.top]];
  }

  private take({ type, target }: Event): void {
    const control = target instanceof Element ? target.closest("button, summary") : null;
    if (type === "pointerdown") this.release();
    const typed = type === "input" && target instanceof Element ? target.closest(".app-field-gap *") : null;
    const held = control ?? typed;
    // What leads elsewhere moves the page on purpose.
    if (!held || held.closest("[data-leads]") || (type === "click" && this.spots.length > 0)) return;
    this.spots = this.stuck(held) ? this.inSight() : spotsOf(held);
  }

  /** Whether it stays in sight wherever the form is scrolled to. */
  private stuck(element: Element): boolean {
    const pinned = element.closest(".app-pinned");
    return pinned !== null && getComputedStyle(pinned).position === "sticky";
  }

  /** The part of the form that is read. */
  private inSight(): Spot[] {
    const under = this.content.querySelector(".app-pinned")?.getBoundingClientRect().bottom ?? 0;
    const part = [...this.content.querySelectorAll(MARKS)].find((one) => one.getBoundingClientRect().bottom > under + 44);
    return part ? [[() => part, topOf(part)]] : [];
  }

  private adjust(): void {
    const panel = this.content.closest(".app-panel");
    if (!panel || panel.hasAttribute("hidden")) return;
    for (const [find, top] of this.spots) {
      const element = find();
      if (!element?.isConnected) continue;
      return this.put(panel, element, top);
    }
  }

  private put(panel: Element, element: Element, top: number): void {
    const { content, filler } = this;
    filler.style.height = "";
    content.style.paddingBottom = "";
    const off = () => topOf(element) - top;
    panel.scrollTop += off();
    const left = off();
    const above = (filler.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
    if (left < -0.5 && above) filler.style.height = `${-left}px`;
    if (left <= 0.5) return;
    content.style.paddingBottom = `${left + 1}px`;
    panel.scrollTop += off();
  }
}

/** A control, or what came in its place, or its group. */
function spotsOf(control: Element): Spot[] {
  const row = control.parentElement;
  const at = row ? [...row.children].indexOf(control) : -1;
  const place = () => (row?.isConnected ? row.children[Math.min(at, row.children.length - 1)] : null);
  const group = control.closest("fieldset");
  const top = topOf(control);
  return [[() => (control.isConnected ? control : null), top], [place, top], ...(group ? [[() => group, topOf(group)] as const] : [])];
}
