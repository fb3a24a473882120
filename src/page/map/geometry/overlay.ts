/** Areas joined, taken from one another, and cut by a line. Spots are metres; what was not touched keeps its spots to the millimetre. */

import { arranged, type Half, type Loop } from "./arrangement";
import { CUT, LATTICE, latticed, noded, type Stroke } from "./noding";
import { areas, open, parted, signedArea, wound, type Area, type Point, type Ring } from "./rings";

/** Less than this is no area but a trace of rounding, square metres. Our judgement. */
const LEAST_M2 = 0.01;

/** All ground that is in one of them or more. */
export function joined(all: readonly Area[]): Area[] {
  const inputs = all.flatMap((area) => [area.slice(0, 1), area.slice(1)]);
  return kept(inputs, (winds) => all.some((_, index) => winds[2 * index] !== 0 && winds[2 * index + 1] === 0));
}

/** What of some areas is in none of the rings. */
export function without(from: readonly Area[], taken: readonly Ring[]): Area[] {
  const inputs = [from.map((area) => area[0] ?? []), from.flatMap((area) => area.slice(1)), taken];
  return kept(inputs, ([outers, holes, gone]) => outers !== 0 && holes === 0 && gone === 0);
}

/** All ground in one ring of many or more: strips and joints of a line become one area. */
export const merged = (rings: readonly Ring[]): Area[] => kept([rings], ([wind]) => wind !== 0);

/** The pieces that a line cuts an area into; one alone where it does not cross it from rim to rim. */
export function cut(area: Area, line: readonly Point[]): Area[] {
  const bounds = strokesOf([area.slice(0, 1), area.slice(1)]);
  const knife = line.slice(1).map((to, index) => ({ from: latticed(line[index]!), to: latticed(to), input: CUT }));
  const loops = whole(noded([...bounds, ...knife]));
  const inside = (loop: Loop): boolean => loop.winds?.[0] !== 0 && loop.winds?.[1] === 0;
  const pieces = loops.filter((loop) => loop.area > 0 && inside(loop)).map((rim) => {
    const holes = loops.filter((loop) => loop.around === rim);
    return areas([rim, ...holes].flatMap((loop) => parted(loop.ring)));
  });
  return pieces.flat().map(metres).filter(isGround);
}

/** Without ends of the knife that lie loose in a face: they part nothing. */
function whole(strokes: readonly Stroke[]): Loop[] {
  let now = strokes;
  for (;;) {
    const loops = arranged(now, 2);
    const loose = new Set<string>();
    for (const half of loops.flatMap((loop) => loop.halves)) {
      if (half.loop === half.twin.loop) loose.add(`${half.from} ${half.to}`);
    }
    if (loose.size === 0) return loops;
    now = now.filter(({ from, to }) => !loose.has(`${from} ${to}`));
  }
}

function strokesOf(inputs: readonly (readonly Ring[])[]): Stroke[] {
  return inputs.flatMap((rings, input) =>
    rings.flatMap((ring) => {
      const spots = wound(open(ring.map(latticed)), true);
      return spots.map((from, index) => ({ from, to: spots[(index + 1) % spots.length]!, input }));
    }),
  );
}

type Keep = (winds: readonly number[]) => boolean;

function kept(inputs: readonly (readonly Ring[])[], keep: Keep): Area[] {
  const loops = arranged(noded(strokesOf(inputs)), inputs.length);
  const stays = new Map(loops.map((loop) => [loop, keep(loop.winds ?? [])]));
  const bounds = (half: Half): boolean => !!stays.get(half.loop) && !stays.get(half.twin.loop);
  const seen = new Set<Half>();
  const rings: Ring[] = [];
  for (const start of loops.flatMap((loop) => loop.halves)) {
    if (seen.has(start) || !bounds(start)) continue;
    const way: Point[] = [];
    for (let half = start; !seen.has(half); half = following(half, bounds)) {
      seen.add(half);
      way.push(half.from);
    }
    rings.push(...parted(way).map(straightened));
  }
  return areas(rings).map(metres).filter(isGround);
}

/** The next edge of a rim: through all that ends at this spot, with the clock. */
function following(half: Half, bounds: (half: Half) => boolean): Half {
  let next = half.next;
  while (!bounds(next)) next = next.twin.next;
  return next;
}

/** Without spots that lie exactly on the way from the one before to the one after. */
function straightened(ring: Ring): Ring {
  return ring.filter((at, index) => {
    const [a, b] = [ring[(index + ring.length - 1) % ring.length]!, ring[(index + 1) % ring.length]!];
    return (at[0] - a[0]) * (b[1] - at[1]) !== (at[1] - a[1]) * (b[0] - at[0]);
  });
}

const metres = (area: Area): Area => area.map((ring) => ring.map(([x, y]): Point => [x / LATTICE, y / LATTICE]));

const isGround = (area: Area): boolean => Math.abs(signedArea(area[0] ?? [])) >= LEAST_M2;
