/** What is told of the place where somebody is: its word and its zone, and the next word on the way, in a few words each. */

import { type Desk, zoneTitle } from "./desk";
import { make, written } from "./dom";
import type { Hour, Leg, Planned, Verdict, Walked, Zone } from "./door";
import { type Ahead, aheadOf, bars, type Behind, behindOf, harsh, pieceAt, sameBehind, zonesRound } from "./fieldahead";
import { writer } from "./map/figures";
import type { State } from "./model";
import { badge, kilometre, kilometres, metres } from "./panel";
import type { Place } from "./whereami";

export interface Here {
  /** The word and the set-up, what to do, what comes, and the hour of a late start. */
  readonly lines: readonly HTMLElement[];
  /** By when to turn back, where there is a line for it. */
  readonly spare: HTMLElement | null;
  /** All that comes, the word and the zones. */
  readonly longer: readonly HTMLElement[];
}

/** So near to a turning place somebody is there, metres. Our judgement. */
const REACHED_M = 100;

/** A place in a leg of the plan of that state. */
export function hereIn(plan: Planned, leg: Leg, place: Place, of: State, desk: Desk): Here {
  const verdict = pieceAt(leg, place)?.verdict ?? leg.verdict;
  const ahead = aheadOf(plan, leg, place);
  const comes = ahead.map((one) => make("p", {}, ...coming(one, desk)));
  const zones = zonesRound(plan, place).map((zone) => make("p", {}, ...standing(zone, of, desk)));
  const own = make("p", {}, `${desk.words("draw-field-here")} `, standsHere(verdict, leg, desk));
  const first = verdict === leg.verdict ? [standsHere(verdict, leg, desk)] : [...own.cloneNode(true).childNodes];
  // What cannot be tied, or is no answer, does not stand where somebody reads what to tie.
  const fits = !bars(leg.verdict);
  const line = make("p", {}, ...first, " ", fits ? setUp(leg, desk) : make("span", { class: "app-set-up" }, `${desk.words("draw-leg")} ${leg.leg}`));
  const would = fits ? [] : [make("p", {}, setUp(leg, desk))];
  const hour = plan.hours.find(({ stage, to_m }) => stage === place.stage && (to_m === null || place.at_m < to_m - REACHED_M));
  const back = behindOf(plan, place);
  const bothWays = back !== null && bars(back.verdict) && (bars(leg.verdict) || ahead.some((one) => bars(one.verdict)));
  const walked = walkedAt(leg, place);
  const due = isDue(leg, verdict, ahead);
  // Who was farther at the hour that was said may be on the way back, of which the plan has no hours.
  const went = wentBack(place, of) ? make("p", { class: "app-hour app-late" }, desk.words("draw-field-went-back")) : null;
  // Where no way is by the rope no hour helps.
  const says = hour && !bothWays ? hourIn(hour, plan, leg, place, { walked, of }, desk) : null;
  const [same, far] = [wayBack(bothWays ? null : sameBehind(leg, place), false, desk), wayBack(back, bothWays, desk)];
  const behind = [...same, ...far];
  // Past the turning place it matters what turning back leads over.
  const past = hour?.late === true && hour.to_m === null;
  // Of two ways that are both late the longer one is told below.
  const goesOn = past && sooner(hour.on, walked?.[2]?.[0]);
  // Where there is no room for all, what is merely to be looked at on the way back stands below.
  const mild = past && back !== null && !bars(back.verdict);
  if (mild) for (const one of bars(leg.verdict) ? far : behind) one.classList.add("app-extra");
  const off = offIce(plan, leg, place, ahead, desk);
  const waits = past && says !== null && !turnsInTime(walked);
  if (off && waits) says.append(`. ${off}`);
  const edge = off && bars(leg.verdict) && !waits ? [make("p", { class: "app-late" }, off)] : [];
  const late = says && hour?.late ? [says, ...((past || !leg.roped) && !goesOn ? behind : [])] : bothWays ? [...lateToo(hour, desk), ...behind] : [];
  // Where nothing holds it matters more than what comes behind there.
  const turnsNow = past && says !== null && turnsInTime(walked);
  const then = turnsNow ? [] : bars(leg.verdict) && !past && !bothWays && behind.length > 0 ? behind : next(goingOn(leg, ahead), { due, past }, desk);
  const what = due ? todo(leg, verdict, ahead, desk) : undue(leg, verdict, zones.length > 0, desk);
  // Who is to turn back now does not read first how going on could be tied.
  if (turnsNow) what.classList.add("app-mild");
  const barredAhead = !bars(leg.verdict) && ahead[0] !== undefined && bars(ahead[0].verdict);
  const belays = leg.belays ? [written("p", {}, leg.belays)] : [];
  const fitting = inside(leg, verdict) ? [make("p", {}, desk.words("draw-field-inside"))] : [];
  const acts = [...edge, ...ordered({ due, turnsNow, barredAhead }, what, late, then)];
  // For whom it is too late is told so before how they are tied, and that bridges are weak.
  const soonest = past && says !== null && !bars(leg.verdict) ? [says] : [];
  const lines = [...(went ? [went] : []), ...soonest, ...wet(leg, desk), line, ...acts.filter((one) => !soonest.includes(one))];
  return { lines, spare: hour?.late ? null : says, longer: [...fitting, ...belays, ...behind.map(plainly), ...comes, ...would, own, ...zones, ...(says && !hour?.late ? [says.cloneNode(true) as HTMLElement] : [])] };
}

/** A line that stands below too, where all of it is shown. */
function plainly(line: HTMLElement): HTMLElement {
  const again = line.cloneNode(true) as HTMLElement;
  again.classList.remove("app-extra");
  return again;
}

/** What no hour helps against, which the reckoned limits do not know. */
const wet = (leg: Leg, { words }: Desk): HTMLElement[] =>
  leg.weak_bridges ? [make("p", { class: "app-hour app-late" }, words("draw-field-wet"))] : [];

/** The word of the place itself: what is inside is so on a rope, and perhaps not on a crust. */
const standsHere = (verdict: Verdict, leg: Leg, desk: Desk): HTMLElement =>
  verdict === "inside" ? badge(verdict, desk, desk.words(leg.frozen_stop ? "draw-field-roped-crust" : "draw-field-roped")) : badge(verdict, desk);

/** What stands behind the word: where nothing is to be done on the ice the hour is what is to be done, but not before a place to which nobody is to go on; to turn back now comes before all that is done on the ice. */
function ordered({ due, turnsNow, barredAhead }: { due: boolean; turnsNow: boolean; barredAhead: boolean }, what: HTMLElement, late: readonly HTMLElement[], then: readonly HTMLElement[]): HTMLElement[] {
  if (due && turnsNow) return [...late.slice(0, 1), what, ...late.slice(1), ...then];
  if (due) return [what, ...late, ...then];
  return barredAhead ? [...then, ...late, what] : [...late, what, ...then];
}

/** That it is late for bridges as well, where no way is by the rope. */
const lateToo = (hour: Hour | undefined, { words }: Desk): HTMLElement[] =>
  hour?.late ? [make("p", { class: "app-hour app-late" }, words("draw-field-late-too"))] : [];

/** What an hour asks of who stands in a leg; null where it asks nothing there. */
function hourIn(hour: Hour, plan: Planned, leg: Leg, place: Place, { walked, of }: { walked: Walked | null; of: State }, desk: Desk): HTMLElement | null {
  const ropesAhead = plan.legs.some((one) => one.stage === place.stage && one.roped && one.end_m > place.at_m);
  // Who has no more bridges before them is told of none.
  if (hour.to_m === null && !ropesAhead) return null;
  // Nor of a turning place who is not to go as far.
  const barred = bars(leg.verdict) && (hour.to_m === null || hour.to_m > leg.end_m);
  const [, planned = null, back = null] = walked ?? [];
  if (barred) return hour.late ? barredAndLate(hour, planned, back, isSaid(place, of), desk) : null;
  const bothKnown = hour.turns !== null && hour.on !== null && back !== null;
  const line = hourLine(hour.turns !== null && back?.[1] ? { ...hour, says: hour.turns } : hour, bothKnown ? "" : hereAt(planned, place, of, desk));
  const offAt = hour.late && hour.to_m === null && onOrBack(hour, planned, back, isSaid(place, of), desk);
  if (offAt) line.append(`. ${offAt}`);
  return line;
}

/** Late where nobody is to go on: to turn back is no answer where that is late as well. */
function barredAndLate(hour: Hour, planned: string | null, back: Walked[2], said: boolean, desk: Desk): HTMLElement {
  const inTime = hour.to_m !== null || back === null || back[1];
  const says = desk.words(inTime ? "draw-field-turn-now" : "draw-field-late-too");
  const offAt = hour.to_m === null ? onOrBack(hour, planned, back, said, desk) : "";
  return make("p", { class: "app-hour app-late" }, offAt ? `${says.replace(/\.$/, "")}. ${offAt}` : says);
}

/** By when to turn back, and when the plan has the team there; a start that was too late stands out. */
function hourLine({ late, says }: Hour, here: string): HTMLElement {
  const line = written("p", { class: late ? "app-hour app-late" : "app-hour" }, says);
  if (here) line.append(` (${here})`);
  return line;
}

/** Where whoever is to wait gets off the ice of a leg, by the shorter way: where the rope comes off before it or behind it. */
function offIce(plan: Planned, leg: Leg, { at_m }: Place, ahead: readonly Ahead[], { words }: Desk): string {
  const unroped = (m: (one: Leg) => boolean) => plan.legs.some((one) => one.stage === leg.stage && !one.roped && m(one));
  const ways: (readonly [number, string])[] = [];
  if (unroped(({ end_m }) => end_m === leg.start_m)) ways.push([at_m - leg.start_m, "draw-field-back-way"]);
  if (unroped(({ start_m }) => start_m === leg.end_m)) ways.push([leg.end_m - at_m, "draw-field-on-way"]);
  const [nearest] = ways.sort(([a], [b]) => a - b);
  if (!leg.roped || !nearest) return "";
  // What comes ahead is told as such.
  if (nearest[1] === "draw-field-on-way" && ahead.some(({ verdict }) => verdict === "unroped")) return "";
  const away = `${Math.ceil(nearest[0] / 10) * 10}\u00a0${words("draw-unit-m")}`;
  return `${words("draw-field-off-ice")} ${away} ${words(nearest[1])}`;
}

/** Whether who turns back at once is off the bridges in time. */
const turnsInTime = (walked: Walked | null): boolean => walked?.[2]?.[1] === true;

/** When the plan has the team there, by its start or by an hour that was said on the way; where that was said nobody needs to be told. */
function hereAt(planned: string | null, place: Place, of: State, { words }: Desk): string {
  const key = of.trip.start_at_km === undefined ? "draw-field-planned" : "draw-field-reckoned";
  return planned && !isSaid(place, of) && !wentBack(place, of) ? `${words(key)} ${planned}` : "";
}

/** Whether it was said of that place what time it is there. */
const isSaid = ({ at_m }: Place, { trip: { start_at_km } }: State): boolean => start_at_km !== undefined && Math.abs(at_m - 1000 * start_at_km) < 1;

/** Whether somebody stands clearly behind the place of which an hour was said. */
const wentBack = ({ at_m }: Place, { trip: { start_at_km } }: State): boolean => start_at_km !== undefined && at_m < 1000 * start_at_km - REACHED_M;

/** The nearest place that the plan knows the hours of. */
function walkedAt({ walk }: Leg, { at_m }: Place): Walked | null {
  const away = ([there_m]: Walked) => Math.abs(there_m - at_m);
  return walk.reduce<Walked | null>((a, b) => (a && away(a) <= away(b) ? a : b), null);
}

/** Whether one hour is before another one: behind that of a later day stands how many days. */
const sooner = (some: string | null, other = ""): boolean =>
  some !== null && (some.length === other.length ? some < other : some.length < other.length);

/** When whoever is here at an hour, as planned or as was said, is off the bridges, going on and turning back, the sooner first: what to choose by past the turning place. */
function onOrBack({ on }: Hour, planned: string | null, back: Walked[2], isSaid: boolean, { words }: Desk): string {
  if (!on || !planned || !back) return "";
  const going = `${words("draw-field-off-on")} ${on}`;
  const off = sooner(back[0], on) ? `${words("draw-field-off-sooner")} ${back[0]}, ${going}` : `${words("draw-field-off")} ${going}, ${words("draw-field-off-back")} ${back[0]}`;
  return isSaid ? `${off.charAt(0).toUpperCase()}${off.slice(1)}` : `${words("draw-field-if-here")} ${planned}: ${off}`;
}

/** The figures of each rope team; what is class `app-extra` may be left out. */
function setUp(leg: Leg, desk: Desk): HTMLElement {
  const teams = [...new Set(leg.figures.map(({ id }) => id.split("-", 1)[0]))];
  const value = (team: string | undefined, name: string) => leg.figures.find(({ id }) => id === `${team}-${name}`)?.value;
  const known = teams.filter((team) => value(team, "spacing") !== undefined);
  if (known.length === 0) return make("span", { class: "app-set-up" }, `${desk.words("draw-leg")} ${leg.leg}`);
  const all = known.flatMap((team, at) => {
    const [spacing, knots, coils] = [value(team, "spacing"), value(team, "knots"), value(team, "coils")];
    const extra = knots === undefined ? null : make("span", { class: "app-extra" }, `, ${knots}`);
    const rest = coils === undefined ? null : make("span", {}, ", ", make("span", { class: "app-together" }, coils));
    return [at > 0 ? " · " : null, spacing ?? null, extra, rest];
  });
  return make("span", { class: "app-set-up" }, make("span", { class: "app-extra" }, `${desk.words("draw-leg")} ${leg.leg}: `), bars(leg.verdict) ? `${desk.words("draw-field-would-take")} ` : null, ...all);
}

/** What is worse ahead in this leg. */
const worseAhead = ([next]: readonly Ahead[]): Ahead | null => (next?.worse && next.inLeg ? next : null);

/** Whether what is to be done in a leg is to be done here or ahead of here. */
const isDue = (leg: Leg, verdict: Verdict, ahead: readonly Ahead[]): boolean =>
  leg.act !== "" && (verdict === leg.verdict || harsh(verdict) || ahead.some((one) => one.inLeg && harsh(one.verdict)));

/** What is due here or ahead in this leg. */
function todo(leg: Leg, verdict: Verdict, ahead: readonly Ahead[], desk: Desk): HTMLElement {
  const worse = worseAhead(ahead);
  const act = written("div", { class: "app-act" }, leg.act);
  // Where no set-up fits it is said there already.
  if (verdict === "stop") act.prepend(`${desk.words("draw-field-stay")} `);
  if (leg.belays) act.append(" ", written("span", { class: "app-extra" }, leg.belays));
  if (worse) act.prepend(make("span", { class: "app-comes" }, ...coming(worse, desk)), " ");
  return act;
}

const inside = (leg: Leg, verdict: Verdict): boolean => leg.verdict === "inside" && verdict === "inside";

/** What the word of a place does not say: that unroped holds only off the ice, that a fall may not be held; else how far the leg goes. */
function undue(leg: Leg, verdict: Verdict, drawn: boolean, desk: Desk): HTMLElement {
  if (verdict === "unroped" && !drawn) return make("p", {}, desk.words("draw-field-unroped"));
  return make("p", { class: "app-extra" }, inside(leg, verdict) ? desk.words("draw-field-inside") : kilometres(leg, desk));
}

/** What of it counts for who stands there: who is not to go on at all is told of nothing mild. */
const goingOn = (leg: Leg, ahead: readonly Ahead[]): readonly Ahead[] => (bars(leg.verdict) ? ahead.filter((one) => bars(one.verdict)) : ahead);

/** What comes, where what is due does not begin with it. */
function next(ahead: readonly Ahead[], { due, past }: { due: boolean; past: boolean }, desk: Desk): HTMLElement[] {
  const told = worseAhead(ahead) && due ? ahead.slice(1) : ahead;
  // Where something is to be done already what is far may be left out, but nothing that asks for something; past the turning place that too.
  const extra = (one: Ahead) => one !== ahead[0] && (past ? !bars(one.verdict) : due && !harsh(one.verdict));
  return told.map((one) => make("p", { class: extra(one) ? "app-extra" : "" }, ...coming(one, desk)));
}

/** `in 20 m, from km 7.25: ? look` */
function coming({ verdict, at_m, away_m, ropes }: Ahead, desk: Desk): (Node | string)[] {
  const { words, language } = desk;
  const far = away_m >= 1000 ? `${writer(language, 1, 1).format(away_m / 1000)} ${words("draw-unit-km")}` : `${away_m} ${words("draw-unit-m")}`;
  const start = `${words("draw-field-from-km")} ${kilometre(at_m, desk)}`;
  return [away_m > 0 ? `${words("draw-field-in")} ${far}, ${start}: ` : `${start}: `, badge(verdict, desk), ropes ? `, ${words(bars(verdict) ? "draw-field-not-on" : "draw-field-rope-up")}` : ""];
}

/** What whoever turns back comes over; where roping up is no answer there either, what is left to do. */
function wayBack(piece: Behind | null, bothWays: boolean, desk: Desk): HTMLElement[] {
  if (!piece) return [];
  const from_to = `${kilometre(piece.from_m, desk)}–${kilometre(piece.to_m, desk)}`;
  const how = bars(piece.verdict) && !piece.belays ? "draw-field-belay-there" : null;
  const says = bothWays ? "draw-field-both-ways" : how;
  const belays = piece.belays && !bothWays ? [". ", written("span", {}, piece.belays)] : [];
  const walked = piece.verdict === "outside" && piece.back ? [": ", written("span", {}, piece.back)] : null;
  return [make("p", {}, `${desk.words("draw-field-behind")}, km ${from_to}: `, badge(piece.verdict, desk), ...(walked ?? [says && `: ${desk.words(says)}`, ...belays]))];
}

/** A zone with the gap that the plan takes there. */
function standing(zone: Zone, of: State, desk: Desk): (Node | string)[] {
  const { words } = desk;
  const drawn = of.zones[zone.feature - 1];
  const gap = metres(zone.gap_m, desk);
  return [make("bdi", {}, drawn ? zoneTitle(of, drawn, words) : `${words("draw-zone")} ${zone.zone}`), `: ${words(zone.gap_assumed ? "draw-field-gap-assumed" : "draw-field-gap-up-to")} ${gap}`];
}
