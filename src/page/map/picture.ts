/** What stays as it is while a map is moved: relief, ice, height lines. Drawn once for more than is seen, and shifted until the hand rests. */

import Layer from "ol/layer/Layer";
import type { FrameState } from "ol/Map";
import { Labels } from "./labels";
import { closed, thinned, type Point } from "./geometry/rings";
import type { Ice, Scene } from "./scene";
import { meets, pathOf } from "./shapes";
import { Sight } from "./sight";

/** So much more than is seen, pixels on every side. */
const ROUND_IT = 160;
/** Finer than so many dots a pixel it is not drawn: what lies under everything else is soft, and a phone is slow. Our judgement. */
const FINEST = 2;
/** A picture whose edge comes into sight is drawn anew while the hand moves, but not more often than so, milliseconds. */
const PAUSE = 120;
const PATIENCE = 6;
/** Bends smaller than this are not seen, pixels. */
const UNSEEN = 0.5;

/** The sight of a frame. */
export function sightOf(frame: FrameState): Sight {
  const [x = 0, y = 0] = frame.viewState.center;
  const [wide = 0, high = 0] = frame.size;
  return new Sight([x, y], frame.viewState.resolution, wide, high, frame.pixelRatio);
}

/** Gives a canvas its room; what has it already is not laid out anew. */
export function sizeOf({ style }: HTMLElement, { wide, high }: Sight): void {
  if (style.width !== `${wide}px`) style.width = `${wide}px`;
  if (style.height !== `${high}px`) style.height = `${high}px`;
}

export class PictureLayer extends Layer {
  private readonly shown = document.createElement("canvas");
  private readonly kept = document.createElement("canvas");
  private keptSight: Sight | null = null;
  /** How the picture was laid out last. */
  private laid: { readonly kept: Sight; readonly sight: Sight } | null = null;
  private shade: HTMLCanvasElement | null = null;
  private drawnAt = 0;
  /** What the last picture took, milliseconds: a slow one is not drawn again and again under a moving hand. */
  private took = 0;
  private readonly rims = new WeakMap<Ice, { readonly size: number; readonly path: Path2D }>();

  constructor(private readonly scene: Scene) {
    super({});
    this.shown.className = "ol-layer map-picture";
  }

  override getSourceState(): "ready" {
    return "ready";
  }

  /** Other colours, or another ground. */
  renew(): void {
    [this.keptSight, this.shade] = [null, null];
    this.changed();
  }

  override render(frame: FrameState): HTMLElement {
    const sight = sightOf(frame);
    const moving = frame.viewHints.some((hint) => hint > 0);
    if (this.isStale(sight, moving)) {
      this.draw(sight, moving ? 1 : FINEST);
      [this.took, this.drawnAt] = [performance.now() - this.drawnAt, performance.now()];
    }
    this.shift(sight);
    return this.shown;
  }

  private isStale(sight: Sight, moving: boolean): boolean {
    const kept = this.keptSight;
    if (!kept) return true;
    const uncovered = !this.covers(kept, sight);
    if (moving) return uncovered && performance.now() - this.drawnAt > Math.max(PAUSE, PATIENCE * this.took);
    return uncovered || kept.resolution !== sight.resolution || kept.density !== Math.min(FINEST, sight.density);
  }

  private covers(kept: Sight, sight: Sight): boolean {
    const [west, south, east, north] = kept.box();
    const box = sight.box();
    return box[0] >= west && box[1] >= south && box[2] <= east && box[3] <= north;
  }

  private shift(sight: Sight): void {
    const { shown, kept, keptSight } = this;
    if (keptSight && this.laid?.kept === keptSight && sight.isLike(this.laid.sight)) return;
    this.laid = keptSight && { kept: keptSight, sight };
    const [wide, high] = [Math.round(sight.wide * sight.density), Math.round(sight.high * sight.density)];
    if (shown.width !== wide || shown.height !== high) [shown.width, shown.height] = [wide, high];
    sizeOf(shown, sight);
    const pen = shown.getContext("2d", { alpha: false });
    if (!pen || !keptSight) return;
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.fillStyle = this.scene.colours.paper;
    pen.fillRect(0, 0, wide, high);
    const times = (keptSight.resolution / sight.resolution) * (sight.density / keptSight.density);
    const [x, y] = sight.pixel(keptSight.place([0, 0]));
    // On whole pixels where nothing is scaled, so that lines stay sharp.
    const whole = (at: number): number => (times === 1 ? Math.round(at) : at);
    pen.drawImage(kept, whole(x * sight.density), whole(y * sight.density), kept.width * times, kept.height * times);
  }

  /** Under a moving hand coarser than at rest. */
  private draw(seen: Sight, finest: number): void {
    const sight = new Sight(seen.middle, seen.resolution, seen.wide + 2 * ROUND_IT, seen.high + 2 * ROUND_IT, Math.min(finest, seen.density));
    [this.kept.width, this.kept.height] = [Math.round(sight.wide * sight.density), Math.round(sight.high * sight.density)];
    [this.keptSight, this.drawnAt] = [sight, performance.now()];
    const pen = this.kept.getContext("2d", { alpha: false });
    if (!pen) return;
    const { colours } = this.scene;
    pen.fillStyle = colours.paper;
    pen.fillRect(0, 0, this.kept.width, this.kept.height);
    this.drawGround(pen, sight);
    sight.inMetres(pen);
    this.drawIce(pen, sight);
    const box = sight.box();
    pen.lineJoin = "round";
    for (const { contour, path } of this.heightsAt(sight)) sight.stroke(pen, path, colours.contour, contour.index ? 1.3 : 0.6);
    sight.inPixels(pen);
    this.drawHeights(pen, sight, box);
  }

  /** Where lines would lie too close, only those with a height. */
  private heightsAt(sight: Sight): Scene["heights"] {
    const { heights } = this.scene;
    return sight.resolution > 40 ? heights.filter(({ contour }) => contour.index) : heights;
  }

  private drawGround(pen: CanvasRenderingContext2D, sight: Sight): void {
    const { ground, colours } = this.scene;
    if (!ground) return;
    this.shade ??= ground.shaded(colours);
    const { width, height } = this.shade;
    const [[west, south], [east, north]] = ground.corners;
    const [left, top] = sight.pixel([west, north]);
    const [right, bottom] = sight.pixel([east, south]);
    // A spot of the lattice is the middle of its pixel.
    const [halfWide, halfHigh] = [(right - left) / (width - 1) / 2, (bottom - top) / (height - 1) / 2];
    sight.inPixels(pen);
    pen.imageSmoothingEnabled = true;
    pen.imageSmoothingQuality = "medium";
    pen.drawImage(this.shade, left - halfWide, top - halfHigh, right - left + 2 * halfWide, bottom - top + 2 * halfHigh);
  }

  private drawIce(pen: CanvasRenderingContext2D, sight: Sight): void {
    const box = sight.box();
    for (const ice of this.scene.ice) {
      if (!meets(box, ice.box)) continue;
      const path = this.rim(ice, sight.resolution);
      pen.fillStyle = this.scene.colours.ice;
      pen.fill(path, "evenodd");
      sight.stroke(pen, path, this.scene.colours.iceRim, 0.8, [3, 2.5]);
    }
  }

  /** With no more spots than can be seen: an inventory has thousands. */
  private rim(ice: Ice, resolution: number): Path2D {
    const size = Math.floor(Math.log2(resolution));
    const known = this.rims.get(ice);
    if (known?.size === size) return known.path;
    const rings = ice.area.map((ring) => thinned(closed(ring), 2 ** size * UNSEEN));
    const path = pathOf([rings.filter((ring) => ring.length > 3)]);
    this.rims.set(ice, { size, path });
    return path;
  }

  /** Heights on the heavier lines, along them and never on their heads. */
  private drawHeights(pen: CanvasRenderingContext2D, sight: Sight, box: readonly number[]): void {
    const labels = new Labels(pen, this.scene.colours, sight.wide, sight.high);
    const inside = ([x, y]: Point): boolean => x > box[0]! && y > box[1]! && x < box[2]! && y < box[3]!;
    for (const { contour, lines } of this.scene.heights) {
      if (!contour.index) continue;
      for (const line of lines) this.drawHeight(labels, sight, String(contour.height_m), line, inside);
    }
  }

  private drawHeight(labels: Labels, sight: Sight, says: string, line: readonly Point[], inside: (at: Point) => boolean): void {
    const step = Math.max(4, Math.round(line.length / 40));
    let since = 120;
    for (let index = step; index + step < line.length; index += step) {
      const [before, at, after] = [line[index - step]!, line[index]!, line[index + step]!];
      const [a, b] = [sight.pixel(before), sight.pixel(after)];
      const run = Math.hypot(b[0] - a[0], b[1] - a[1]);
      since += run / 2;
      if (since < 220 || run < 18 || !inside(at)) continue;
      const middle = sight.pixel(at);
      if (!labels.place([middle], 60, 44)) continue;
      since = 0;
      this.turnedText(labels.pen, says, middle, Math.atan2(b[1] - a[1], b[0] - a[0]));
    }
  }

  private turnedText(pen: CanvasRenderingContext2D, says: string, [x, y]: Point, angle: number): void {
    const { colours } = this.scene;
    const upright = Math.abs(angle) > Math.PI / 2 ? angle + Math.PI : angle;
    pen.save();
    pen.translate(x, y);
    pen.rotate(upright);
    pen.font = "10px system-ui, sans-serif";
    pen.textAlign = "center";
    pen.textBaseline = "middle";
    pen.lineJoin = "round";
    pen.lineWidth = 3;
    pen.strokeStyle = colours.dark ? "rgba(24,30,38,0.85)" : "rgba(255,255,255,0.8)";
    pen.strokeText(says, 0, 0);
    pen.fillStyle = colours.height;
    pen.fillText(says, 0, 0);
    pen.restore();
  }
}
