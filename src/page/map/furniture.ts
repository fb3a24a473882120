/** What stands on the rim of a map: scale bar, north, and the place pointed at in degrees, UTM and height. */

import { button, make } from "../dom";
import type { Words } from "../words";
import type { Numbers } from "./figures";
import { utmText } from "./geometry/utm";
import type { Point } from "./geometry/rings";
import type { Scene } from "./scene";

/** The bar is at most so long, pixels. */
const MOST_BAR = 120;

export class Furniture {
  readonly element: HTMLElement;
  private readonly bar = make("span", { class: "map-bar" });
  private readonly length = make("span", {});
  /** That the bar is of. */
  private resolution = 0;
  private readonly place = make("output", { class: "map-place", "aria-live": "off" });

  constructor(private readonly scene: Scene, private readonly words: Words, private readonly numbers: Numbers) {
    const north = make("span", { class: "map-north", role: "img", "aria-label": words("draw-north") });
    north.innerHTML = `<svg viewBox="0 0 24 34" width="24" height="34" aria-hidden="true"><path d="M12 2l6 17-6-4-6 4z"/><text x="12" y="32" text-anchor="middle">N</text></svg>`;
    const scale = make("span", { class: "map-scale" }, this.bar, this.length);
    this.element = make("div", { class: "map-furniture" }, this.place, scale, north);
  }

  scaled(resolution: number): void {
    if (resolution === this.resolution) return;
    this.resolution = resolution;
    const most = MOST_BAR * resolution;
    const power = 10 ** Math.floor(Math.log10(most));
    const metres = [5, 2, 1].map((times) => times * power).find((length) => length <= most) ?? power;
    this.bar.style.width = `${(metres / resolution).toFixed(1)}px`;
    this.length.textContent = metres >= 1000 ? this.numbers.km(metres / 1000) : this.numbers.metres(metres);
  }

  /** Nothing pointed at: nothing is said. */
  points(at: Point | null): void {
    this.place.replaceChildren(...(at ? this.parts(at).map((part) => make("span", {}, part)) : []));
  }

  parts(at: Point): string[] {
    const [longitude, latitude] = this.scene.frame.place(at);
    const height = this.scene.ground?.height(longitude, latitude) ?? null;
    return [...placeParts(longitude, latitude, this.words), height === null ? "" : this.numbers.height(height)].filter(Boolean);
  }
}

/** A place in decimal degrees and on the grid. */
export function placeParts(longitude: number, latitude: number, words: Words): string[] {
  const north = `${Math.abs(latitude).toFixed(5)}° ${words(latitude < 0 ? "draw-s" : "draw-n")}`;
  const east = `${Math.abs(longitude).toFixed(5)}° ${words(longitude < 0 ? "draw-w" : "draw-e")}`;
  return [`${north} ${east}`, utmText(longitude, latitude)];
}

/** Closer and wider, for who has one finger. */
export function zoomButtons(words: Words, zoom: (by: number) => void): HTMLElement {
  const one = (says: string, key: string, by: number): HTMLElement => button(says, () => zoom(by), { class: "map-act", "aria-label": words(key) });
  return make("div", { class: "map-zoom" }, one("+", "draw-tool-closer", 1), one("−", "draw-tool-wider", -1));
}
