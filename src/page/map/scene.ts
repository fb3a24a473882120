/** All that a map shows: what lies there, what is drawn, what is planned, what is pointed at. */

import type { Contour, Ground, Leg, Panel, Planned, Verdict } from "../door";
import type { Drawn, State } from "../model";
import { Way, type OnRoute } from "./geometry/along";
import { crossed, type Stretch } from "./geometry/crossed";
import { open, type Area, type Point } from "./geometry/rings";
import { beside, Walked } from "./back";
import { palette, type Palette } from "./palette";
import { Frame } from "./projection";
import { Lattice } from "./relief";
import { boxOf, lineOf, shape, type Box, type Shape, type Vertex } from "./shapes";

/** One area of the inventory. */
export interface Ice {
  readonly name: string | null;
  readonly area: Area;
  readonly box: Box;
  /** As it was given, for who takes it as a zone. */
  readonly rings: readonly (readonly (readonly number[])[])[];
}

export interface HeightLine {
  readonly contour: Contour;
  readonly lines: readonly (readonly Point[])[];
  readonly path: Path2D;
}

/** What a plan knows of a zone. */
export interface Known {
  readonly properties: unknown;
  readonly number: number | null;
  readonly met: boolean;
  readonly gap_m: number | null;
  /** What stands there in place of a plain number, until the plan has read it. */
  readonly gap_text: string | null;
  readonly assumed: boolean;
  readonly strike_deg: number | null;
}

export interface DrawnLeg {
  readonly leg: Leg;
  readonly pieces: readonly DrawnPiece[];
}

export class DrawnPiece {
  readonly box: Box;
  private path = new Path2D();
  private moved = -1;

  constructor(readonly verdict: Verdict, private readonly lines: readonly (readonly Point[])[], private readonly back: readonly (readonly boolean[])[]) {
    this.box = boxOf(lines);
  }

  /** Ways back lie so many metres beside the way out. */
  pathAt(metres: number): Path2D {
    if (this.moved !== metres) this.path = lineOf(this.lines.map((line, index) => beside(line, this.back[index]!, metres)));
    this.moved = metres;
    return this.path;
  }
}

/** A line or area that is being drawn. */
export interface Sketch {
  readonly points: readonly Point[];
  /** Where the next spot would come, and the way there. */
  readonly next: readonly Point[];
  readonly closes: boolean;
  readonly areas: readonly Area[];
}

export class Scene {
  readonly frame: Frame;
  readonly ground: Lattice | null;
  readonly ways: readonly Way[];
  readonly routePath: Path2D;
  readonly ice: readonly Ice[];
  readonly heights: readonly HeightLine[];
  readonly bounds: Box | null;
  shapes: readonly Shape[] = [];
  legs: readonly DrawnLeg[] = [];
  plan: Planned | null = null;
  /** The legs are those of the last plan, since there is none now. */
  past = false;
  readonly known = new Map<number, Known>();
  picked: number | null = null;
  vertex: Vertex | null = null;
  cursor: OnRoute | null = null;
  /** Where somebody said they are. */
  here: OnRoute | null = null;
  crosshair: Point | null = null;
  /** The leg that was gone to. */
  leg: number | null = null;
  sketch: Sketch | null = null;
  /** The buttons that change the scale stand in the left upper corner and not in the right one. */
  buttonsLeft = false;
  /** Where a spot would stick to a rim. */
  snapped: Point | null = null;
  /** The picked zone shows its spots. */
  handles = true;
  colours: Palette = palette(false);
  private last: readonly unknown[] | null = null;
  private readonly stretches = new WeakMap<Shape["areas"], Map<Way, readonly Stretch[]>>();

  constructor(ground: Ground, state: State) {
    this.frame = Frame.about(places(ground, state));
    this.ground = ground.relief && ground.relief.columns > 1 && ground.relief.rows > 1 ? new Lattice(ground.relief, this.frame) : null;
    this.ways = ground.stages.map((stage) => new Way(stage, this.frame));
    this.routePath = lineOf(this.ways.flatMap((way) => way.runs.map((run) => run.map((spot) => spot.at))));
    this.ice = ground.inventory.flatMap(({ name, polygons }) =>
      polygons.map((rings): Ice => {
        const area = rings.map((ring) => open(this.frame.line(ring)));
        return { name, area, rings, box: boxOf(area) };
      }),
    );
    this.heights = (ground.relief?.contours ?? []).map((contour) => {
      const lines = contour.lines.map((line) => this.frame.line(line));
      return { contour, lines, path: lineOf(lines) };
    });
    this.read(state);
    const route = this.ways.flatMap((way) => way.runs.map((run) => run.map((spot) => spot.at)));
    const seen = [...route, ...this.shapes.flatMap((one) => one.areas.flat())].filter((line) => line.length > 0);
    this.bounds = seen.length > 0 ? boxOf(route.some((run) => run.length > 1) ? route : seen) : this.relief();
  }

  private relief(): Box | null {
    return this.ground && [...this.ground.corners[0], ...this.ground.corners[1]];
  }

  /** Only what changed is made anew. Whether an outline is another one than before. */
  read(state: State): boolean {
    if (this.last === state.zones) return false;
    this.last = state.zones;
    const before = new Map(this.shapes.map((one) => [one.key, one]));
    const kept = (zone: Drawn): Shape | undefined => {
      const known = before.get(zone.key);
      if (known?.zone === zone) return known;
      return known && known.zone.geometry === zone.geometry ? { ...known, zone } : undefined;
    };
    const old = this.shapes;
    this.shapes = state.zones.flatMap((zone) => kept(zone) ?? shape(zone, this.frame) ?? []);
    const picked = this.find(this.picked);
    if (!picked) this.picked = null;
    const { vertex } = this;
    if (vertex && !picked?.areas[vertex.area]?.[vertex.ring]?.[vertex.spot]) this.vertex = null;
    return old.length !== this.shapes.length || old.some((one, at) => one.areas !== this.shapes[at]?.areas);
  }

  find(key: number | null): Shape | null {
    return this.shapes.find((one) => one.key === key) ?? null;
  }

  /** A plan replaces the one before; where there is none, what is known of the zones stays, and so do the legs as those of before. */
  take(panel: Panel, state: State): void {
    this.plan = "legs" in panel ? panel : null;
    this.past = !this.plan;
    if (!this.plan) return;
    const walked = new Walked();
    this.legs = this.plan.legs.map((leg) => {
      const pieces = leg.pieces.map(({ verdict, lines }) => {
        const drawn = lines.map((line) => this.frame.line(line));
        return new DrawnPiece(verdict, drawn, drawn.map((line) => walked.next(line)));
      });
      return { leg, pieces };
    });
    this.known.clear();
    for (const { feature, zone, met, gap_m, gap_assumed, strike_deg } of this.plan.zones) {
      const drawn = state.zones[feature - 1];
      if (!drawn) continue;
      this.known.set(drawn.key, { properties: drawn.properties, number: zone, met, gap_m, gap_text: null, assumed: gap_assumed, strike_deg });
    }
  }

  /** What the plan said of a zone, or what its properties say in plain numbers where it was changed since. */
  about({ key, zone }: Shape): Known {
    const known = this.known.get(key);
    if (known && known.properties === zone.properties) return known;
    const strike = zone.properties["strike_deg"];
    const number = (value: unknown): number | null => (typeof value === "number" && value >= 0 ? value : null);
    const text = zone.properties["gap_m"];
    // Where both stand there, the wider one counts.
    const gaps = [number(text), number(zone.properties["gap_max_m"])].filter((one) => one !== null);
    const gap = gaps.length > 0 ? Math.max(...gaps) : null;
    return {
      properties: zone.properties,
      number: known?.number ?? null,
      met: known?.met ?? true,
      gap_m: gap,
      gap_text: gap === null && typeof text === "string" && text.trim() !== "" ? text : null,
      assumed: false,
      strike_deg: number(strike),
    };
  }

  /** Where a stage goes over a zone by its outline, kept as long as that stays. */
  crossed({ areas, box }: Shape, way: Way): readonly Stretch[] {
    const known = this.stretches.get(areas) ?? new Map<Way, readonly Stretch[]>();
    this.stretches.set(areas, known);
    const found = known.get(way) ?? crossed(way, areas, box);
    known.set(way, found);
    return found;
  }

  way(stage: number): Way | null {
    return this.ways.find((way) => way.stage.stage === stage) ?? null;
  }

  /** Verdict of the plan at a place of the route. */
  verdictAt({ stage, at_m }: OnRoute): Verdict | null {
    const leg = this.plan?.legs.find((one) => one.stage === stage && at_m >= one.start_m && at_m <= one.end_m);
    const piece = leg?.pieces.find((one) => at_m >= one.from_m && at_m <= one.to_m);
    return piece?.verdict ?? leg?.verdict ?? null;
  }
}

function places(ground: Ground, state: State): number[][] {
  const route = ground.stages.flatMap((stage) => stage.runs.flat().map((spot) => [spot[0], spot[1]]));
  if (route.length > 0) return route;
  const { relief } = ground;
  if (relief) return [[...relief.south_west], [...relief.north_east]];
  const found: number[][] = [];
  const look = (value: unknown): void => {
    if (!Array.isArray(value)) return;
    if (typeof value[0] === "number" && typeof value[1] === "number") found.push([value[0], value[1]]);
    else value.forEach(look);
  };
  for (const zone of state.zones) look(zone.geometry?.coordinates);
  return found;
}
