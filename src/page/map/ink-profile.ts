/** The drawing of a height profile: the hill, the legs along its edge, zones under it, kilometres below. */

import { writer } from "./figures";
import { drawBands, labelBands, type Shown } from "./ink-bands";
import { drawHere } from "./ink-hands";
import { stroke } from "./ink-legs";
import { FONT, Labels } from "./labels";
import { BAND, LEFT, RIGHT, TOP, type Ruler } from "./ruler";
import { Sight } from "./sight";

export function drawProfile(pen: CanvasRenderingContext2D, ruler: Ruler, shown: Shown): void {
  const { colours } = shown.scene;
  const labels = new Labels(pen, colours, ruler.wide, ruler.high);
  heights(pen, ruler, shown);
  hill(pen, ruler, shown);
  painted(pen, ruler, shown);
  drawBands(pen, ruler, shown);
  legs(pen, ruler, shown);
  labelBands(labels, ruler, shown);
  letters(labels, ruler, shown);
  here(pen, ruler, shown);
  cursor(labels, ruler, shown);
  kilometres(labels, ruler, shown);
}

function steps(from: number, to: number, most: number): number[] {
  const room = (to - from) / most;
  const power = 10 ** Math.floor(Math.log10(room));
  const step = [1, 2, 5, 10].map((times) => times * power).find((each) => each >= room) ?? room;
  const found: number[] = [];
  for (let at = Math.ceil(from / step) * step; at <= to + 1e-9; at += step) found.push(Number(at.toFixed(6)));
  return found;
}

function heights(pen: CanvasRenderingContext2D, ruler: Ruler, { scene: { colours } }: Shown): void {
  if (!ruler.known) return;
  pen.font = `11px ${FONT}`;
  [pen.textAlign, pen.textBaseline, pen.fillStyle] = ["right", "middle", colours.soft];
  for (const height of steps(ruler.low, ruler.top, Math.max(2, (ruler.floor - TOP) / 26))) {
    const y = Math.round(ruler.y(height)) + 0.5;
    [pen.strokeStyle, pen.lineWidth] = [colours.dark ? "rgba(255,255,255,0.12)" : "rgba(27,36,48,0.12)", 1];
    pen.beginPath();
    pen.moveTo(LEFT, y);
    pen.lineTo(ruler.wide - RIGHT, y);
    pen.stroke();
    pen.fillText(String(height), LEFT - 6, y);
  }
}

function hill(pen: CanvasRenderingContext2D, ruler: Ruler, { scene: { colours } }: Shown): void {
  if (!ruler.known) return;
  pen.fillStyle = colours.dark ? "rgba(150,170,195,0.2)" : "rgba(110,125,145,0.2)";
  pen.fill(ruler.ground);
}

function painted(pen: CanvasRenderingContext2D, ruler: Ruler, { scene: { colours }, stage, painted: stretch }: Shown): void {
  if (!stretch || stretch.stage !== stage) return;
  pen.globalAlpha = 0.3;
  pen.fillStyle = colours.zoneRim;
  pen.fillRect(ruler.x(stretch.from_m), TOP - 8, ruler.x(stretch.to_m) - ruler.x(stretch.from_m), ruler.floor - TOP + 8 + BAND);
  pen.globalAlpha = 1;
}

function legs(pen: CanvasRenderingContext2D, ruler: Ruler, { scene, stage, density }: Shown): void {
  const { colours } = scene;
  const plain = new Sight([0, 0], 1, ruler.wide, ruler.high, density);
  pen.lineJoin = "round";
  const own = (scene.plan?.legs ?? []).filter((leg) => leg.stage === stage);
  if (own.length === 0) plain.stroke(pen, ruler.edge(0, ruler.length_m), colours.soft, 2);
  for (const leg of own) {
    const pieces = leg.pieces.length > 0 ? leg.pieces : [{ verdict: leg.verdict, from_m: leg.start_m, to_m: leg.end_m }];
    for (const { verdict, from_m, to_m } of pieces) stroke(pen, plain, colours, verdict, ruler.edge(from_m, to_m));
  }
}

function letters(labels: Labels, ruler: Ruler, { scene, stage }: Shown): void {
  const { pen, colours } = labels;
  for (const { letter, at_m, stage: its } of scene.plan?.changes ?? []) {
    if (its !== stage) continue;
    const x = ruler.x(at_m);
    const height = ruler.height(at_m);
    [pen.strokeStyle, pen.lineWidth] = [colours.change, 1];
    pen.globalAlpha = 0.5;
    pen.beginPath();
    pen.moveTo(x, 17);
    pen.lineTo(x, height === null ? ruler.floor : ruler.y(height));
    pen.stroke();
    pen.globalAlpha = 1;
    labels.text(letter, [0, 5, -5, 10, -10].map((by) => [x + by, 10]), "700 11px", colours.change);
  }
}

function cursor(labels: Labels, ruler: Ruler, { scene: { colours }, at_m, language, words }: Shown): void {
  if (at_m === null) return;
  const { pen } = labels;
  const [x, height] = [ruler.x(at_m), ruler.height(at_m)];
  [pen.strokeStyle, pen.lineWidth] = [colours.ink, 1.4];
  pen.beginPath();
  pen.moveTo(x, TOP - 6);
  pen.lineTo(x, ruler.floor + BAND + 2);
  pen.stroke();
  if (height !== null) {
    pen.beginPath();
    pen.arc(x, ruler.y(height), 5, 0, 2 * Math.PI);
    pen.fillStyle = colours.ink;
    pen.fill();
  }
  const km = writer(language, 2, 2).format(at_m / 1000);
  const says = `${km} ${words("draw-unit-km")}${height === null ? "" : ` · ${Math.round(height)} ${words("draw-unit-m")}`}`;
  pen.font = `700 12px ${FONT}`;
  const half = pen.measureText(says).width / 2 + 8;
  const middle = Math.min(ruler.wide - half, Math.max(half, x));
  pen.fillStyle = colours.ink;
  pen.beginPath();
  pen.roundRect(middle - half, 1, 2 * half, 19, 9);
  pen.fill();
  [pen.textAlign, pen.textBaseline, pen.fillStyle] = ["center", "middle", colours.halo];
  pen.fillText(says, middle, 11);
}

/** Where somebody said they are: as on the map. */
function here(pen: CanvasRenderingContext2D, ruler: Ruler, { scene, stage }: Shown): void {
  if (scene.here?.stage !== stage) return;
  const { at_m } = scene.here;
  const height = ruler.height(at_m);
  drawHere(pen, scene.colours, [ruler.x(at_m), height === null ? ruler.floor : ruler.y(height)]);
}

function kilometres(labels: Labels, ruler: Ruler, { scene: { colours }, language, words }: Shown): void {
  const { pen } = labels;
  const number = writer(language, 0, 2);
  const y = ruler.floor + BAND + 3;
  [pen.strokeStyle, pen.lineWidth] = [colours.soft, 1];
  const km = ruler.length_m / 1000;
  for (const at of km > 0 ? steps(0, km, Math.max(2, (ruler.wide - LEFT) / 70)) : []) {
    const x = ruler.x(at * 1000);
    pen.beginPath();
    pen.moveTo(x, y);
    pen.lineTo(x, y + 4);
    pen.stroke();
    labels.text(at === 0 ? `0 ${words("draw-unit-km")}` : number.format(at), [[x, y + 12], [Math.min(x, ruler.wide - 14), y + 12]], "11px", colours.soft, null);
  }
}
