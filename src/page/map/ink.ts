/** What changes with every act: zones, legs, labels, what is picked and what is being drawn. Drawn anew in every frame. */

import Layer from "ol/layer/Layer";
import type { FrameState } from "ol/Map";
import type { Numbers } from "./figures";
import { avoidPicked, drawHandles, drawPointers, drawSketch } from "./ink-hands";
import { drawArrows, drawChanges, drawLooks, drawRoute, drawTicks, labelLegs, labelTicks } from "./ink-legs";
import { labelZones, nameZones } from "./ink-zones";
import { KeptZones } from "./kept-zones";
import { Labels, Lines } from "./labels";
import { sightOf, sizeOf } from "./picture";
import { ROW, ROWED } from "./plane";
import type { Scene } from "./scene";
import type { Sight } from "./sight";

/** Buttons in the upper right corner stand in a row where it is not wider, else one under the other; pixels. */
const NARROW = 480;
/** What is drawn round a label, pixels. */
const RIM = 2;
/** A plan is waited for so long, milliseconds. */
const PLAN_MS = 100;

export class InkLayer extends Layer {
  private readonly canvas = document.createElement("canvas");
  private readonly zones = new KeptZones();
  private waiting = 0;
  private kept: { readonly sight: Sight; readonly lines: Lines } | null = null;
  /** Of the last frame. */
  sight: Sight | null = null;
  labels: Labels | null = null;

  constructor(private readonly scene: Scene, private readonly numbers: Numbers, private readonly coarse: () => boolean) {
    super({});
    this.canvas.className = "ol-layer map-ink";
  }

  override getSourceState(): "ready" {
    return "ready";
  }

  /** Drawn with the next plan, or a moment later where none comes: once is better than twice. */
  soon(): void {
    this.waiting ||= setTimeout(() => this.changed(), PLAN_MS);
  }

  override render(frame: FrameState): HTMLElement {
    clearTimeout(this.waiting);
    this.waiting = 0;
    const sight = sightOf(frame);
    this.sight = sight;
    const { canvas, scene } = this;
    const [wide, high] = [Math.round(sight.wide * sight.density), Math.round(sight.high * sight.density)];
    if (canvas.width !== wide || canvas.height !== high) [canvas.width, canvas.height] = [wide, high];
    sizeOf(canvas, sight);
    const pen = canvas.getContext("2d");
    if (!pen) return canvas;
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.clearRect(0, 0, wide, high);
    this.zones.draw(pen, scene, sight);
    drawRoute(pen, scene, sight);
    sight.inPixels(pen);
    const labels = new Labels(pen, scene.colours, sight.wide, sight.high, this.route(sight), RIM);
    this.labels = labels;
    const row = scene.picked !== null && sight.wide <= ROWED ? ROW : 0;
    labels.keep([sight.wide / 2, row / 2], sight.wide, row);
    const narrow = sight.wide <= NARROW;
    const [half, tall] = narrow ? [54, 60] : [30, 112];
    labels.keep([scene.buttonsLeft ? half : sight.wide - half, row + tall / 2], 2 * half, tall);
    // Figures are never under what the hand works on: an outline that hides the half of a figure makes it another.
    drawHandles(pen, scene, sight, this.coarse());
    avoidPicked(labels, scene, sight, this.coarse());
    drawTicks(pen, scene, sight);
    labelLegs(labels, scene, sight, true);
    // On a phone the widths stand on the profile below as well; the letters, which lists and field speak of, do not lie as they do here.
    if (narrow) drawChanges(labels, scene, sight);
    labelZones(labels, scene, sight, this.numbers.metres, true, !narrow);
    labelLegs(labels, scene, sight, false);
    labelZones(labels, scene, sight, this.numbers.metres, false, false);
    drawLooks(labels, scene, sight);
    if (!narrow) drawChanges(labels, scene, sight);
    labelTicks(labels, scene, sight, this.numbers.km);
    nameZones(labels, scene, sight);
    drawArrows(labels, scene, sight);
    drawSketch(pen, scene, sight, this.coarse());
    drawPointers(pen, scene, sight);
    return canvas;
  }

  /** The route as what labels keep off: the same as long as the map is not moved. */
  private route(sight: Sight): Lines {
    const { kept } = this;
    if (kept && sight.isLike(kept.sight)) return kept.lines;
    const lines = new Lines(sight.wide, sight.high);
    for (const way of this.scene.ways) for (const run of way.runs) lines.add(run.map((spot) => sight.pixel(spot.at)));
    this.kept = { sight, lines };
    return lines;
  }
}
