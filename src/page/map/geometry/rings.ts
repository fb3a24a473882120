/** Rings of spots in a plane: which way round they run, what they hold, where they touch themselves. */

export type Point = readonly [x: number, y: number];
/** Closed by itself: the first spot is not repeated. */
export type Ring = readonly Point[];
/** An outer ring, then its holes. */
export type Area = readonly Ring[];

/** Positive where a ring runs against the clock. */
export function signedArea(ring: Ring): number {
  let [sum, last] = [0, ring.at(-1)];
  for (const at of ring) {
    if (last) sum += last[0] * at[1] - at[0] * last[1];
    last = at;
  }
  return sum / 2;
}

/** The same ring against the clock, as an outer ring of RFC 7946 runs, or with it, as its holes do. */
export function wound(ring: Ring, outer: boolean): Ring {
  return signedArea(ring) > 0 === outer ? ring : [...ring].reverse();
}

/** Without the repeated end and spots that stand twice. */
export function open(ring: Ring): Point[] {
  const kept = ring.filter((at, index) => index === 0 || !same(at, ring[index - 1]));
  while (kept.length > 1 && same(kept.at(-1), kept[0])) kept.pop();
  return kept;
}

export const closed = (ring: Ring): Point[] => (ring[0] ? [...ring, ring[0]] : []);

export function same(a: Point | undefined, b: Point | undefined): boolean {
  return !!a && !!b && a[0] === b[0] && a[1] === b[1];
}

/** Whether a spot lies in a ring; on its edge either answer may come. */
export function holds(ring: Ring, [x, y]: Point): boolean {
  let [inside, last] = [false, ring.at(-1)];
  for (const at of ring) {
    if (last && at[1] > y !== last[1] > y) {
      if (x < at[0] + ((y - at[1]) / (last[1] - at[1])) * (last[0] - at[0])) inside = !inside;
    }
    last = at;
  }
  return inside;
}

/** Whether a spot lies in an area and in none of its holes. */
export function within(area: Area, at: Point): boolean {
  const [outer, ...holes] = area;
  return !!outer && holds(outer, at) && !holes.some((hole) => holds(hole, at));
}

/** A ring that comes back to one of its spots, as rings that do not. */
export function parted(ring: Ring): Ring[] {
  const done: Ring[] = [];
  const way: Point[] = [];
  const seen = new Map<string, number>();
  for (const at of ring) {
    const key = at.join();
    const before = seen.get(key);
    if (before !== undefined) {
      const loop = way.splice(before);
      for (const left of loop) seen.delete(left.join());
      done.push(loop);
    }
    seen.set(key, way.length);
    way.push(at);
  }
  done.push(way);
  return done.filter((loop) => loop.length > 2);
}

/** Rings that run against the clock with the others as holes of the smallest that holds them. */
export function areas(rings: readonly Ring[]): Area[] {
  const outers = rings.filter((ring) => signedArea(ring) > 0).map((ring): Ring[] => [ring]);
  const bySize = [...outers].sort((a, b) => signedArea(a[0]!) - signedArea(b[0]!));
  for (const hole of rings.filter((ring) => signedArea(ring) < 0)) {
    const spots = hole.map((at, index) => middle(at, hole[(index + 1) % hole.length]!));
    const around = bySize.find(([outer]) => spots.filter((at) => holds(outer!, at)).length * 2 > spots.length);
    around?.push(hole);
  }
  return outers;
}

export const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** A spot on a stretch that is nearest to another, and how far along it lies, 0 to 1. */
export function nearest(a: Point, b: Point, [x, y]: Point): { at: Point; share: number; away: number } {
  const [east, north] = [b[0] - a[0], b[1] - a[1]];
  const square = east * east + north * north;
  const share = square > 0 ? Math.min(1, Math.max(0, ((x - a[0]) * east + (y - a[1]) * north) / square)) : 0;
  const at: Point = [a[0] + share * east, a[1] + share * north];
  return { at, share, away: Math.hypot(x - at[0], y - at[1]) };
}

/** A line with fewer spots, nowhere farther from the first one than `most`. */
export function thinned(line: readonly Point[], most: number): Point[] {
  const keep = new Set([0, line.length - 1]);
  const todo: [number, number][] = [[0, line.length - 1]];
  for (let span = todo.pop(); span; span = todo.pop()) {
    const [from, to] = span;
    let [far, at] = [most, -1];
    for (let index = from + 1; index < to; index++) {
      const { away } = nearest(line[from]!, line[to]!, line[index]!);
      if (away > far) [far, at] = [away, index];
    }
    if (at < 0) continue;
    keep.add(at);
    todo.push([from, at], [at, to]);
  }
  return line.filter((_, index) => keep.has(index));
}
