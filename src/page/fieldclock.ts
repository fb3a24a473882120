/** What time it is where somebody stands: that hour stays where it was said, whatever else changes, and all others follow from it. */

import type { Desk } from "./desk";
import { button, make, retext } from "./dom";
import type { Leg, Trip } from "./door";
import { type Field, textField } from "./fields";
import type { Change } from "./fieldgap";
import type { State } from "./model";
import { withMember } from "./number";
import type { Place } from "./whereami";

const DAY_MIN = 24 * 60;

/** An hour of the day as people type it, and one with its day as a plan tells it. */
const TYPED = /^(\d{1,2})\s*[:.,h]\s*(\d{2})$|^(\d{1,2})(\d{2})$/;
const TOLD = /^(\d{1,2}):(\d{2})(?: \+(\d))?$/;

/** Minutes after midnight; null where it is no hour of the day. */
function ofDay(text: string): number | null {
  const [known, hour, minute, hours, minutes] = TYPED.exec(text.trim()) ?? [];
  const [h, m] = [Number(hour ?? hours), Number(minute ?? minutes)];
  return known !== undefined && h < 24 && m < 60 ? h * 60 + m : null;
}

/** Minutes after the midnight before the start. */
function told(hour: string): number | null {
  const [known, hours, minutes, days = "0"] = TOLD.exec(hour) ?? [];
  return known === undefined ? null : Number(days) * DAY_MIN + Number(hours) * 60 + Number(minutes);
}

/** `09:40`, with ` +1` on the day after the start; minutes of a plan whose start was reckoned back may lie before that day, and are its beginning. */
function clockOf(minutes: number): string {
  const all = Math.max(0, Math.round(minutes));
  const [hours, rest] = [Math.floor((all % DAY_MIN) / 60), all % 60];
  const day = Math.floor(all / DAY_MIN);
  return `${[hours, rest].map((part) => String(part).padStart(2, "0")).join(":")}${day > 0 ? ` +${day}` : ""}`;
}

/** So long before the planned hour somebody may be there; what lies farther before it is that hour of the day after. Our judgement: late is the safe side. */
const AHEAD_MIN = 6 * 60;

/** The hour of the day that somebody means: never one of the day before the start. */
function meant(of_day: number, planned: string | null): string {
  const there = planned === null ? null : told(planned);
  const days = there === null ? 0 : Math.max(0, Math.ceil((there - AHEAD_MIN - of_day) / DAY_MIN));
  return clockOf(of_day + days * DAY_MIN);
}

/** When a plan has the team leave a place of a leg, between the places whose hours it tells; null where it tells none. */
export function hourAt({ walk }: Leg, { at_m }: Place): StartHour | null {
  const before = walk.filter(([there_m]) => there_m <= at_m).at(-1) ?? walk[0];
  const behind = walk.find(([there_m]) => there_m > at_m) ?? before;
  const [from_min, to_min] = [before && told(before[1]), behind && told(behind[1])];
  if (!before || !behind || typeof from_min !== "number" || typeof to_min !== "number") return null;
  const share = behind[0] > before[0] ? (at_m - before[0]) / (behind[0] - before[0]) : 0;
  return { start: clockOf(from_min + share * (to_min - from_min)), start_at_km: kilometreOf(at_m) };
}

/** To the millimetre. */
const kilometreOf = (at_m: number): number => Math.round(1000 * at_m) / 1e6;

/** An hour and where it counts. */
export type StartHour = Pick<Trip, "start" | "start_at_km">;

export const sameStart = (some: StartHour, other: StartHour): boolean => some.start === other.start && some.start_at_km === other.start_at_km;

/** The trip with the hour of another one, and with where that counts. */
export const withStart = (trip: Trip, { start, start_at_km }: StartHour): Trip =>
  withMember(withMember(trip, "start", start), "start_at_km", start_at_km);

export class ClockHere {
  readonly element: HTMLElement;
  private readonly field: Field;
  private readonly note = make("p", { class: "app-fine", role: "status" });
  private text = "";
  /** What counted before an hour was said, what is said, and the hour here in the plan before. */
  private was: StartHour | null = null;
  private said: StartHour | null = null;
  private planned: StartHour | null = null;
  private place: Place | null = null;

  /** `unsaid` tells which hour counts again where none is said any more, and which counted before. */
  constructor(private readonly desk: Desk, private readonly change: Change, private readonly unsaid: (was: StartHour, planned: StartHour | null) => StartHour, private readonly here: () => StartHour | null) {
    const { words } = desk;
    const value = { get: () => this.text, set: (text: string) => this.type(text), settle: () => this.leave() };
    this.field = textField(words("draw-field-clock"), value, { inputmode: "decimal", class: "app-input app-number" });
    const take = button(words("draw-field-clock-take"), () => this.take(), { class: "app-button app-big" });
    this.field.element.querySelector(".app-controls")?.append(take);
    this.element = make("div", { class: "app-field-clock" }, this.field.element, this.note);
  }

  /** Where it was taken back no hour is said. */
  sync({ trip }: State): void {
    if (this.said && !sameStart(this.said, trip)) this.forget();
  }

  /** Where the hour counts: of another place nothing was said yet. */
  show(place: Place | null): void {
    const moved = this.place !== null && (place?.stage !== this.place.stage || place.at_m !== this.place.at_m);
    this.place = place;
    if (moved && this.said) this.forget();
    this.tell();
  }

  private forget(): void {
    [this.text, this.was, this.said] = ["", null, null];
    this.field.sync();
    this.tell();
  }

  /** Three digits may be the beginning of four. */
  private type(text: string): void {
    this.text = text;
    if (text.trim() === "") this.unsay();
    else if (!/^\d{3}$/.test(text.trim())) this.apply(true);
    this.tell();
  }

  private leave(): void {
    this.apply(false);
    this.desk.store.settle();
  }

  private take(): void {
    const now = new Date();
    this.text = clockOf(now.getHours() * 60 + now.getMinutes());
    this.field.sync();
    this.leave();
    this.tell();
  }

  private apply(going: boolean): void {
    const { place } = this;
    const of_day = ofDay(this.text);
    if (of_day === null || place === null) return;
    this.text = going ? this.text : clockOf(of_day);
    const here = this.here();
    if (!this.was) [this.was, this.planned] = [this.desk.store.state.trip, here];
    this.said = { start: meant(of_day, (this.planned ?? here)?.start ?? null), start_at_km: kilometreOf(place.at_m) };
    this.put(this.said, going);
  }

  /** An emptied field says no hour. */
  private unsay(): void {
    const { was } = this;
    if (!was) return;
    [this.was, this.said] = [null, null];
    this.put(this.unsaid(was, this.planned), true);
  }

  private put(hour: StartHour, going: boolean): void {
    const change = (state: State) => {
      const trip = withStart(state.trip, hour);
      return trip === state.trip ? state : { ...state, trip };
    };
    this.change("draw-did-field-clock", change, going, () => "clock");
  }

  /** What is missing, else what it is for. */
  private tell(): void {
    const { words } = this.desk;
    const wrong = this.text !== "" && ofDay(this.text) === null;
    const key = this.place === null ? "draw-field-clock-where" : wrong ? "draw-field-clock-wrong" : "draw-field-clock-what";
    retext(this.note, words(key));
  }
}
