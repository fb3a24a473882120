/** A needle on the picked zone: turned, it says in which direction the gaps run; a second handle opens the fan of its doubt. */

import { make } from "../dom";
import { touched } from "../model";
import type { Point } from "./geometry/rings";
import type { Shape } from "./shapes";
import type { Sight } from "./sight";
import type { Bench } from "./tools/tool";

const RADIUS = 84;
const FAN = 62;
/** A doubt that nobody gave is shown so wide until the handle is moved; it is not written. */
const NO_DOUBT = 20;
/** Pulled, it stops at every so many degrees; keys and fields go finer. */
const STOPS = 5;
/** So it lies where nobody gave a direction, degrees. */
const NO_STRIKE = 90;

const svg = (name: string): SVGElement => document.createElementNS("http://www.w3.org/2000/svg", name);

export class Needle {
  readonly element: HTMLElement;
  private readonly fan = svg("path");
  private readonly line = svg("path");
  private readonly turn: HTMLElement;
  private readonly open: HTMLElement;
  private readonly says = make("span", { class: "needle-says" });
  private middle: Point = [0, 0];
  /** The handle stays at the end that is pulled: 0, or 180 for the other one. */
  private end: 0 | 180 = 0;
  /** To which side of the needle the doubt is pulled. */
  private side: 1 | -1 = 1;

  constructor(private readonly bench: Bench) {
    const drawing = svg("svg");
    drawing.setAttribute("viewBox", "-110 -110 220 220");
    drawing.setAttribute("aria-hidden", "true");
    this.fan.setAttribute("class", "needle-fan");
    this.line.setAttribute("class", "needle-line");
    drawing.append(this.fan, this.line);
    this.turn = this.handle("draw-strike", 179, () => this.strike ?? NO_STRIKE, (degrees) => this.turned(degrees), (angle) => this.pulled(angle));
    this.open = this.handle("draw-strike-doubt", 90, () => this.given("strike_uncertainty_deg") ?? NO_DOUBT, (degrees) => this.doubted(degrees), (angle) => this.off(angle));
    this.element = make("div", { class: "needle", hidden: true }, this.says, this.turn, this.open);
    this.element.prepend(drawing);
  }

  private get one(): Shape | null {
    return this.bench.scene.find(this.bench.scene.picked);
  }

  private given(name: string): number | null {
    const value = this.one?.zone.properties[name];
    return typeof value === "number" && Number.isFinite(value) ? value : null;
  }

  private get strike(): number | null {
    const { one } = this;
    return this.given("strike_deg") ?? (one ? this.bench.scene.about(one).strike_deg : null);
  }

  /** The strike where the handle is pulled in a direction. */
  private pulled(angle: number): number {
    const stop = whole(Math.round(angle / STOPS) * STOPS);
    this.end = stop < 180 ? 0 : 180;
    return stop % 180;
  }

  /** Degrees between a direction and the end of the needle that has the handle of the doubt. */
  private off(angle: number): number {
    const apart = whole(angle - (this.strike ?? NO_STRIKE) - 180 - this.end);
    this.side = apart < 180 ? 1 : -1;
    return Math.min(90, Math.round(Math.min(apart, 360 - apart) / STOPS) * STOPS);
  }

  private turned(degrees: number): void {
    // By keys over north or south: the handle goes on round.
    if (degrees < 0 || degrees >= 180) this.end = this.end === 0 ? 180 : 0;
    this.write("draw-did-strike-deg", "strike_deg", whole(degrees) % 180);
  }

  private doubted(degrees: number): void {
    this.write("draw-did-strike-uncertainty-deg", "strike_uncertainty_deg", Math.min(90, Math.max(0, degrees)));
  }

  private write(did: string, name: string, degrees: number): void {
    const { one } = this;
    if (!one || one.zone.properties[name] === degrees) return;
    this.bench.store.change(did, (state) => touched(state, one.key, (zone) => ({ properties: { ...zone.properties, [name]: degrees } })), true);
  }

  private handle(key: string, most: number, now: () => number, set: (degrees: number) => void, read: (angle: number) => number): HTMLElement {
    const element = make("div", { class: "needle-handle", role: "slider", tabindex: 0, "aria-label": this.bench.words(key), "aria-valuemin": 0, "aria-valuemax": most });
    element.addEventListener("keydown", (event) => {
      const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
      if (step === undefined) return;
      event.preventDefault();
      event.stopPropagation();
      set(now() + step * (event.shiftKey ? 10 : 1));
    });
    element.addEventListener("blur", () => this.bench.store.settle());
    element.addEventListener("pointerdown", (event) => {
      element.setPointerCapture(event.pointerId);
      event.stopPropagation();
    });
    element.addEventListener("pointermove", (event) => {
      if (!element.hasPointerCapture(event.pointerId)) return;
      const box = this.element.getBoundingClientRect();
      const [x, y] = [event.clientX - box.left - box.width / 2, event.clientY - box.top - box.height / 2];
      set(read((Math.atan2(x, -y) * 180) / Math.PI));
    });
    element.addEventListener("lostpointercapture", () => this.bench.store.settle());
    return element;
  }

  /** About this pixel of the map; hidden where there is none. */
  show(middle: Point | null): void {
    this.element.hidden = !middle || !this.one;
    if (!middle || !this.one) return;
    this.middle = middle;
    this.element.style.transform = `translate(${Math.round(this.middle[0] - 110)}px, ${Math.round(this.middle[1] - 110)}px)`;
    const [strike, doubt] = [this.strike, this.given("strike_uncertainty_deg")];
    const shown = strike ?? NO_STRIKE;
    const wide = doubt ?? NO_DOUBT;
    this.element.classList.toggle("unknown", strike === null);
    this.element.classList.toggle("undoubted", doubt === null);
    const spot = (degrees: number, far: number): string => {
      const angle = (degrees * Math.PI) / 180;
      return `${(Math.sin(angle) * far).toFixed(1)} ${(-Math.cos(angle) * far).toFixed(1)}`;
    };
    const sector = (from: number): string => `M0 0L${spot(from - wide, FAN)}A${FAN} ${FAN} 0 0 1 ${spot(from + wide, FAN)}Z`;
    this.fan.setAttribute("d", sector(shown) + sector(shown + 180));
    this.line.setAttribute("d", `M${spot(shown, RADIUS)}L${spot(shown + 180, RADIUS)}`);
    place(this.turn, shown + this.end, RADIUS);
    // At the other end, so that the two handles never lie on one another.
    place(this.open, shown + 180 + this.end + this.side * wide, FAN);
    const deg = this.bench.words("draw-unit-deg");
    value(this.turn, strike, deg);
    value(this.open, doubt, deg);
    this.says.textContent = strike === null ? "?" : `${strike}${deg}${doubt === null ? "" : ` ± ${doubt}${deg}`}`;
  }
}

const whole = (degrees: number): number => ((degrees % 360) + 360) % 360;

function place(handle: HTMLElement, degrees: number, far: number): void {
  const angle = (degrees * Math.PI) / 180;
  handle.style.left = `${(110 + Math.sin(angle) * far).toFixed(1)}px`;
  handle.style.top = `${(110 - Math.cos(angle) * far).toFixed(1)}px`;
}

function value(handle: HTMLElement, degrees: number | null, unit: string): void {
  handle.setAttribute("aria-valuenow", String(degrees ?? 0));
  handle.setAttribute("aria-valuetext", degrees === null ? "?" : `${degrees}${unit}`);
}

/** The needle takes so much room about its middle, pixels. */
const NEEDLE = 106;

/** Well inside the zone where that is seen, and never over the rim of the map. */
export function needleSpot(middles: readonly Point[], sight: Sight): Point {
  const seen = middles.map((at) => sight.pixel(at));
  const room = ([x, y]: Point): number => Math.min(x, y, sight.wide - x, sight.high - y);
  const [x, y] = seen.find((at) => room(at) >= NEEDLE) ?? [...seen].sort((a, b) => room(b) - room(a))[0] ?? [sight.wide / 2, sight.high / 2];
  const within = (at: number, most: number): number => Math.min(Math.max(at, NEEDLE), Math.max(NEEDLE, most - NEEDLE));
  return [within(x, sight.wide), within(y, sight.high)];
}
