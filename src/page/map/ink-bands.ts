/** Zones under the hill of a profile: where the route meets them by the plan, or pale by their outlines where there is none. */

import type { Words } from "../words";
import { writer } from "./figures";
import type { Stretch } from "./geometry/crossed";
import type { Point } from "./geometry/rings";
import { widthOf, type Labels } from "./labels";
import { onFill, zoneFill } from "./palette";
import { BAND, type Ruler } from "./ruler";
import type { Scene } from "./scene";

/** So strong a zone is drawn that no plan has met yet. */
const PALE = 0.45;

export interface Shown {
  readonly scene: Scene;
  readonly stage: number;
  readonly at_m: number | null;
  readonly painted: { readonly stage: number; readonly from_m: number; readonly to_m: number } | null;
  readonly language: string;
  readonly words: Words;
  readonly density: number;
}

/** A zone where the route is on it. */
interface Band extends Stretch {
  readonly gap_m: number | null;
  readonly assumed: boolean;
  readonly planned: boolean;
}

function bands({ scene, stage }: Shown): Band[] {
  const planned = scene.plan?.zones;
  if (planned) {
    return planned.flatMap(({ gap_m, gap_assumed, crossings }) =>
      crossings.filter((each) => each.stage === stage).map(({ enter_m, exit_m }): Band => ({ from_m: enter_m, to_m: exit_m, gap_m, assumed: gap_assumed, planned: true })),
    );
  }
  const way = scene.way(stage);
  return scene.shapes.flatMap((one) => {
    const { gap_m, assumed } = scene.about(one);
    return way ? scene.crossed(one, way).map((stretch): Band => ({ ...stretch, gap_m, assumed, planned: false })) : [];
  });
}

export function drawBands(pen: CanvasRenderingContext2D, ruler: Ruler, shown: Shown): void {
  const { colours } = shown.scene;
  for (const { from_m, to_m, gap_m, assumed, planned } of bands(shown)) {
    const [left, right] = [ruler.x(from_m), ruler.x(to_m)];
    const wide = Math.max(1.5, right - left);
    pen.globalAlpha = planned ? 1 : PALE;
    pen.fillStyle = gap_m === null ? colours.halo : zoneFill(colours, gap_m);
    pen.fillRect(left, ruler.floor + 1, wide, BAND);
    pen.globalAlpha = 1;
    [pen.strokeStyle, pen.lineWidth] = [colours.zoneRim, 1];
    pen.setLineDash(gap_m === null || assumed || !planned ? [3, 2] : []);
    pen.strokeRect(left + 0.5, ruler.floor + 1.5, wide - 1, BAND - 1);
    pen.setLineDash([]);
  }
}

/** The widest gaps first; a bar too narrow for its figure has it above. */
export function labelBands(labels: Labels, ruler: Ruler, shown: Shown): void {
  const { pen, colours } = labels;
  const number = writer(shown.language, 0, 1);
  const gap = ({ gap_m }: Band): number => gap_m ?? Infinity;
  for (const { from_m, to_m, gap_m, assumed, planned } of bands(shown).sort((a, b) => (gap(a) === gap(b) ? 0 : gap(b) - gap(a)))) {
    const [left, right] = [ruler.x(from_m), ruler.x(to_m)];
    const says = gap_m === null ? "?" : `${assumed ? "? " : ""}${number.format(gap_m)} ${shown.words("draw-unit-m")}`;
    const middle = (left + right) / 2;
    if (widthOf(pen, "600 10.5px", says) + 2 < right - left) {
      // On a pale bar the ink of the page is read best.
      const ink = planned ? onFill(colours, gap_m).ink : colours.ink;
      labels.text(says, [[middle, ruler.floor + 1 + BAND / 2]], "600 10.5px", ink, null);
      continue;
    }
    const above = [7, 19, 31].flatMap((up) => [0, 6, -6, 12, -12].map((by): Point => [middle + by, ruler.floor - up]));
    labels.text(says, above, "600 10.5px", colours.ink);
  }
}
