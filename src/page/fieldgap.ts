/** The gap as it is seen on the ice: that of the zones here, or of a zone that is made round the place where none is drawn. */

import { type Desk, zoneTitle } from "./desk";
import { fill, make, retext } from "./dom";
import type { Ground, Planned, Zone } from "./door";
import { type Field, stepField } from "./fields";
import { alone } from "./map/geometry/along";
import { corridor } from "./map/geometry/corridor";
import { geometryOf } from "./map/shapes";
import { type Drawn, type Geometry, type State, drawn, touched } from "./model";
import { about, shown, typed, withMember } from "./number";
import { metres } from "./panel";
import { gapsOf } from "./takeback";
import type { Place } from "./whereami";

/** A zone so near counts as here where none is drawn at the place itself, metres: nobody knows their place better. Our judgement. */
const NEAR_M = 50;
/** So far before and behind the place goes what was seen there, metres. Our judgement. */
const ALONG_M = 100;
/** And so far to each side, metres. Our judgement. */
const HALF_M = 150;

/** `name` is called once it is done: steps of one name are one act. */
export type Change = (did: string, change: (state: State) => State, going: boolean, name: () => string) => void;

export class GapHere {
  readonly element = make("div", { class: "app-field-gap" });
  private ground: Ground | null = null;
  private field: Field | null = null;
  private fieldOf = "";
  /** The zone that was made where the field stands. */
  private made: number | null = null;
  private readonly note = make("p", { class: "app-fine", role: "status" });

  /** `bare` is a state without what was done on the ice. */
  constructor(private readonly desk: Desk, private readonly change: Change, private readonly bare: (state: State) => State) {}

  lie(ground: Ground | null): void {
    this.ground = ground;
    this.fieldOf = "";
  }

  sync(): void {
    this.field?.sync();
  }

  /** The field for a place in a plan of that state; who is typing in it stays in it. */
  show(plan: Planned | null, of: State, place: Place | null): void {
    if (this.element.contains(document.activeElement)) return;
    // Where there is no plan nobody knows which zones are here: what was known stays.
    if (!plan && this.fieldOf !== "") return;
    const here = plan && place ? zonesAt(plan, of, place) : [];
    const sign = JSON.stringify(here.length > 0 ? here.map((zone) => zone.key) : place);
    if (sign === this.fieldOf) return;
    [this.fieldOf, this.made] = [sign, null];
    const { words } = this.desk;
    const round = here.length === 0 && place ? this.round(place) : null;
    const quiet = (key: string) => make("p", { class: "app-quiet" }, words(key));
    this.field = here.length > 0 ? this.ofZones(here) : round && this.ofPlace(round);
    const names = here.map((zone) => make("p", {}, make("bdi", {}, zoneTitle(of, zone, words))));
    const note = here.length > 0 ? quiet("draw-field-gap-type") : quiet(!place ? "draw-field-gap-where" : round ? "draw-field-no-zone-yet" : "draw-field-no-zone");
    retext(this.note, "");
    fill(this.element, ...names, note, this.field?.element ?? null, this.note);
  }

  private metres(get: () => string, set: (state: State, text: string) => State, keys: () => readonly (number | null)[]): Field {
    const { words, store } = this.desk;
    const change = (text: string, going: boolean) => this.change("draw-did-field-gap", (state) => set(state, text), going, () => `gap ${keys().join()}`);
    const value = { get, set: change, settle: () => store.settle() };
    return stepField(words("draw-field-gap-width"), words("draw-unit-m"), value);
  }

  private ofZones(here: readonly Drawn[]): Field {
    const keys = here.map((zone) => zone.key);
    const zones = () => this.desk.store.state.zones.filter((zone) => keys.includes(zone.key));
    // One number with its unit, as a text in the file, is seen as that number; a range and whatever else is left as it is.
    const seen = () => {
      const gap = widest(zones());
      return shown(typeof gap === "string" && /^\s*\d+([.,]\d{1,2})?\s*m?\s*$/.test(gap) ? about(gap) : gap);
    };
    const set = (state: State, text: string) => {
      const planned = this.bare(state).zones.filter((zone) => keys.includes(zone.key));
      this.narrower(planned, text);
      return atLeast(withGap(state, keys, text), planned);
    };
    return this.metres(seen, set, () => keys);
  }

  /** One gap that is seen says nothing of the others of a zone: it counts where it is wider than all that are planned for. */
  private narrower(planned: readonly Drawn[], text: string): void {
    const [seen, most] = [about(typed(text)), about(widest(planned))];
    const less = seen !== null && most !== null && seen < most;
    retext(this.note, less ? `${this.desk.words("draw-field-gap-narrower")} ${metres(most, this.desk)}.` : "");
  }

  /** A gap that is typed makes the zone, one that is emptied takes it away again. */
  private ofPlace(round: Geometry): Field {
    const { words, store } = this.desk;
    const known = (state: State) => state.zones.find((zone) => zone.key === this.made);
    const set = (state: State, text: string): State => {
      const [old, value] = [known(state), typed(text)];
      if (value === undefined) return old ? { ...state, zones: state.zones.filter((zone) => zone !== old) } : state;
      if (old) return withGap(state, [old.key], text);
      if (about(value) === null) return state;
      const zone = drawn(round, { name: words("draw-field-seen"), gap_m: value, note: words("draw-field-seen-note") });
      this.made = zone.key;
      return { ...state, zones: [...state.zones, zone] };
    };
    return this.metres(() => shown(known(store.state)?.properties["gap_m"]), set, () => [this.made]);
  }

  /** The ground round a place along the route; null where the line is not known. */
  private round({ stage, at_m }: Place): Geometry | null {
    const line = alone(this.ground, stage);
    if (!line) return null;
    const areas = corridor(line.way.between(at_m - ALONG_M, at_m + ALONG_M), HALF_M);
    return areas.length > 0 ? geometryOf(areas, line.frame, [null]) : null;
  }
}

/** The zones at the place, else the nearest one close by. What lies farther along the leg nobody has seen from here. */
function zonesAt(plan: Planned, of: State, place: Place): Drawn[] {
  const away = ({ crossings }: Zone) =>
    Math.min(...crossings.filter((c) => c.stage === place.stage).map((c) => Math.max(c.enter_m - place.at_m, place.at_m - c.exit_m, 0)));
  const near = plan.zones.map((zone) => ({ zone, far: away(zone) })).filter(({ far }) => far <= NEAR_M);
  const here = near.filter(({ far }) => far === 0);
  const found = here.length > 0 ? here : near.sort((a, b) => a.far - b.far).slice(0, 1);
  return found.flatMap(({ zone }) => of.zones[zone.feature - 1] ?? []);
}

/** The widest gap of zones, as it stands there. */
export function widest(zones: readonly Drawn[]): unknown {
  const values = zones.map(({ properties }) => properties["gap_max_m"] ?? properties["gap_m"]);
  return values.reduce((a, b) => ((about(b) ?? -1) > (about(a) ?? -1) ? b : a), undefined);
}

/** The state with that gap in the zones; a range keeps its lower end where it lies below. */
function withGap(state: State, keys: readonly number[], text: string): State {
  const value = typed(text);
  // An emptied field is one that is being typed in: nobody has seen that there is no width. Nor is what has no number one.
  if (about(value) === null) return state;
  return keys.reduce(
    (now, key) =>
      touched(now, key, ({ properties }) => {
        const name = "gap_max_m" in properties ? "gap_max_m" : "gap_m";
        const low = about(properties["gap_min_m"]);
        const given = withMember(withMember(properties, name, value), "gap_assumed", undefined);
        const under = low !== null && typeof value === "number" && low > value;
        return { properties: under ? withMember(given, "gap_min_m", undefined) : given };
      }),
    state,
  );
}

/** The state with no gap of some zones narrower than there. */
function atLeast(state: State, planned: readonly Drawn[]): State {
  const narrower = planned.filter((zone) => {
    const now = state.zones.find(({ key }) => key === zone.key);
    const [is, was] = [about(widest(now ? [now] : [])), about(widest([zone]))];
    return is !== null && was !== null && is < was;
  });
  return narrower.reduce((now, zone) => touched(now, zone.key, ({ properties }) => ({ properties: gapsOf(zone.properties, properties) })), state);
}
