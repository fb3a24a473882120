/** The faces that strokes part a plane into, and how often each input winds round every face. */

import { CUT, type Stroke } from "./noding";
import { holds, signedArea, type Point, type Ring } from "./rings";

/** Half of an edge, walked one way; its face lies to the left. */
export interface Half {
  readonly from: Point;
  readonly to: Point;
  /** How often each input runs this way, less how often the other. */
  readonly winds: readonly number[];
  twin: Half;
  next: Half;
  loop: Loop;
}

/** A way round a face: its rim against the clock, or the rim of what lies in it. */
export interface Loop {
  readonly halves: readonly Half[];
  readonly ring: Ring;
  readonly area: number;
  group: number;
  /** For the rim of a group of edges: the loop whose face it lies in; null outside of everything. */
  around: Loop | null;
  winds: readonly number[] | null;
}

const key = (at: Point): string => `${at[0]},${at[1]}`;

/** Strokes that do not cross, as loops with their windings. */
export function arranged(strokes: readonly Stroke[], inputs: number): Loop[] {
  const loops = traced(halves(strokes, inputs));
  grouped(loops);
  nested(loops);
  for (const loop of loops) windings(loop, inputs);
  return loops;
}

/** One edge for all strokes between the same two spots. Strokes that cancel and cut nothing bound nothing. */
function halves(strokes: readonly Stroke[], inputs: number): Half[] {
  const edges = new Map<string, { from: Point; to: Point; winds: number[]; cuts: boolean }>();
  for (const { from, to, input } of strokes) {
    const forward = from[0] < to[0] || (from[0] === to[0] && from[1] < to[1]);
    const [a, b] = forward ? [from, to] : [to, from];
    const name = `${key(a)} ${key(b)}`;
    const edge = edges.get(name) ?? { from: a, to: b, winds: Array<number>(inputs).fill(0), cuts: false };
    if (input === CUT) edge.cuts = true;
    else edge.winds[input]! += forward ? 1 : -1;
    edges.set(name, edge);
  }
  const bounding = [...edges.values()].filter((edge) => edge.cuts || edge.winds.some((wind) => wind !== 0));
  return bounding.flatMap(({ from, to, winds }) => {
    const there = { from, to, winds } as unknown as Half;
    const back = { from: to, to: from, winds: winds.map((wind) => -wind), twin: there } as unknown as Half;
    there.twin = back;
    return [there, back];
  });
}

/** Next is what turns off first with the clock from the way back: so a loop keeps to one face. */
function traced(all: readonly Half[]): Loop[] {
  const leaving = new Map<string, Half[]>();
  for (const half of all) leaving.set(key(half.from), [...(leaving.get(key(half.from)) ?? []), half]);
  const angle = (half: Half): number => Math.atan2(half.to[1] - half.from[1], half.to[0] - half.from[0]);
  for (const fan of leaving.values()) {
    const sorted = fan.map((half) => ({ half, angle: angle(half) })).sort((a, b) => a.angle - b.angle);
    sorted.forEach(({ half }, index) => {
      half.twin.next = sorted[(index + sorted.length - 1) % sorted.length]!.half;
    });
  }
  const seen = new Set<Half>();
  return all.flatMap((start) => {
    if (seen.has(start)) return [];
    const way: Half[] = [];
    for (let half = start; !seen.has(half); half = half.next) {
      seen.add(half);
      way.push(half);
    }
    const ring = way.map((half) => half.from);
    const loop: Loop = { halves: way, ring, area: signedArea(ring), group: -1, around: null, winds: null };
    for (const half of way) half.loop = loop;
    return [loop];
  });
}

/** Loops that hang together by their edges. */
function grouped(loops: readonly Loop[]): void {
  let group = 0;
  for (const first of loops) {
    if (first.group >= 0) continue;
    const todo = [first];
    for (let loop = todo.pop(); loop; loop = todo.pop()) {
      if (loop.group >= 0) continue;
      loop.group = group;
      for (const half of loop.halves) if (half.twin.loop.group < 0) todo.push(half.twin.loop);
    }
    group++;
  }
}

/** The face that each group lies in. */
function nested(loops: readonly Loop[]): void {
  const rims = loops.filter((loop) => loop.area > 0).sort((a, b) => a.area - b.area);
  for (const loop of loops) {
    if (loop.area > 0) continue;
    const at = loop.ring[0]!;
    loop.around = rims.find((rim) => rim.group !== loop.group && holds(rim.ring, at)) ?? null;
  }
}

/** From the face that a group lies in across its edges: to the left of an edge an input winds once more for each time it runs there. */
function windings(start: Loop, inputs: number): readonly number[] {
  if (start.winds) return start.winds;
  if (start.area <= 0) {
    start.winds = start.around ? windings(start.around, inputs) : Array<number>(inputs).fill(0);
    spread(start);
    return start.winds;
  }
  const outside = rimOf(start);
  windings(outside, inputs);
  return start.winds ?? outside.winds!;
}

/** The loop round the whole of a group. */
function rimOf(loop: Loop): Loop {
  const seen = new Set([loop]);
  const todo = [loop];
  for (let at = todo.pop(); at; at = todo.pop()) {
    if (at.area <= 0) return at;
    for (const { twin } of at.halves) {
      if (seen.has(twin.loop)) continue;
      seen.add(twin.loop);
      todo.push(twin.loop);
    }
  }
  return loop;
}

function spread(start: Loop): void {
  const todo = [start];
  for (let loop = todo.pop(); loop; loop = todo.pop()) {
    for (const { twin } of loop.halves) {
      if (twin.loop.winds) continue;
      twin.loop.winds = loop.winds!.map((count, index) => count + twin.winds[index]!);
      todo.push(twin.loop);
    }
  }
}
