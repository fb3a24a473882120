/** The strip of ground along a line, as wide to the left as to the right, its ends square. */

import { merged } from "./overlay";
import { open, thinned, type Area, type Point, type Ring } from "./rings";

/** Bends of a line that are smaller than this share of the half width are let go: fewer spots to drag. Our judgement. */
const LET_GO = 0.08;
/** An arc on the outer side of a bend has a spot at least so often, radians. */
const STEP = Math.PI / 6;
/**
 * So far, as a share of the half width, the piece at a bend reaches back over the strips beside it: where pieces only share a side,
 * slits of a centimetre stay along it. Our judgement.
 */
const BACK = 0.1;

/** One area, or several where a line is in pieces far from one another. */
export function corridor(lines: readonly (readonly Point[])[], half: number): Area[] {
  const rings = lines.flatMap((line) => strips(thinned(distinct(line), half * LET_GO), half));
  return merged(rings);
}

function distinct(line: readonly Point[]): Point[] {
  return line.filter((at, index) => index === 0 || Math.hypot(at[0] - line[index - 1]![0], at[1] - line[index - 1]![1]) > 0.01);
}

function strips(line: readonly Point[], half: number): Ring[] {
  const edges = line.slice(1).map((to, index) => edge(line[index]!, to, half));
  const joints = edges.slice(1).map((next, index) => joint(line[index + 1]!, edges[index]!, next, half));
  return [...edges.map((side) => side.ring), ...joints].filter((ring) => open(ring).length > 2);
}

interface Edge {
  readonly ring: Ring;
  readonly angle: number;
  readonly length: number;
}

function edge(a: Point, b: Point, half: number): Edge {
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const [x, y] = [-Math.sin(angle) * half, Math.cos(angle) * half];
  const ring: Ring = [[a[0] - x, a[1] - y], [b[0] - x, b[1] - y], [b[0] + x, b[1] + y], [a[0] + x, a[1] + y]];
  return { ring, angle, length: Math.hypot(b[0] - a[0], b[1] - a[1]) };
}

/** What is missing between two edges on the outer side of their bend: the tip of a small one, an arc about a great one. */
function joint(at: Point, before: Edge, after: Edge, half: number): Ring {
  let bend = after.angle - before.angle;
  bend -= 2 * Math.PI * Math.round(bend / (2 * Math.PI));
  const outer = bend > 0 ? -Math.PI / 2 : Math.PI / 2;
  const start = before.angle + outer;
  const spot = (angle: number, far: number): Point => [at[0] + Math.cos(angle) * far, at[1] + Math.sin(angle) * far];
  const within = spot(start + bend / 2, -Math.min(half * BACK, before.length, after.length));
  if (Math.abs(bend) <= 2 * STEP) {
    const tip = spot(start + bend / 2, half / Math.cos(bend / 2));
    return [within, spot(start, half), tip, spot(start + bend, half)];
  }
  const steps = Math.ceil(Math.abs(bend) / STEP);
  const arc = Array.from({ length: steps + 1 }, (_, index) => spot(start + (bend * index) / steps, half));
  return [within, ...arc];
}
