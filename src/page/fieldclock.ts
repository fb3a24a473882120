/** What time it is where somebody stands: the start is moved so that the plan has them leave there at that hour. */

import type { Desk } from "./desk";
import { button, make, retext } from "./dom";
import type { Leg, Trip } from "./door";
import { type Field, textField } from "./fields";
import type { Change } from "./fieldgap";
import type { State } from "./model";
import { withMember } from "./number";
import type { Place } from "./whereami";

const DAY_MIN = 24 * 60;

/** An hour of the day as people type it, and one that a trip has. */
const TYPED = /^(\d{1,2})\s*[:.,h]\s*(\d{2})$|^(\d{1,2})(\d{2})$/;
const GIVEN = /^(\d{1,2}):(\d{2})(?: \+(\d))?$/;

/** Minutes after midnight; null where it is no hour of the day. */
function ofDay(text: string): number | null {
  const [known, hour, minute, hours, minutes] = TYPED.exec(text.trim()) ?? [];
  const [h, m] = [Number(hour ?? hours), Number(minute ?? minutes)];
  return known !== undefined && h < 24 && m < 60 ? h * 60 + m : null;
}

/** When a trip starts, minutes after the midnight before it; null where it does not say. */
export function startOf({ start }: Trip): number | null {
  const [known, hours, minutes, days = "0"] = GIVEN.exec(start ?? "") ?? [];
  return known === undefined ? null : Number(days) * DAY_MIN + Number(hours) * 60 + Number(minutes);
}

/** `09:40`, with ` +1` on the day after. */
export function clockOf(minutes: number): string {
  const two = (number: number) => String(number).padStart(2, "0");
  const [day, of] = [Math.floor(minutes / DAY_MIN), minutes % DAY_MIN];
  return `${two(Math.floor(of / 60))}:${two(of % 60)}${day > 0 ? ` +${day}` : ""}`;
}

/** Minutes from the start of the stage until a place of a leg is left, between the places that the plan tells. */
export function leftAfter({ walk }: Leg, { at_m }: Place): number | null {
  const before = walk.filter(([there_m]) => there_m <= at_m).at(-1) ?? walk[0];
  const behind = walk.find(([there_m]) => there_m > at_m) ?? before;
  if (!before || !behind) return null;
  const [from_m, from_min] = before;
  const [to_m, to_min] = behind;
  return to_m > from_m ? from_min + ((to_min - from_min) * (at_m - from_m)) / (to_m - from_m) : from_min;
}

/** The start by which who stands there leaves at that hour, on the day nearest to the start so far, never before its midnight. */
function startFor(trip: Trip, now_min: number, left_min: number): string {
  const first = Math.round(now_min - left_min);
  const days = Math.round(((startOf(trip) ?? 0) - first) / DAY_MIN);
  const start = startOf(trip) === null ? ((first % DAY_MIN) + DAY_MIN) % DAY_MIN : first + days * DAY_MIN;
  return clockOf(Math.max(0, start));
}

export class ClockHere {
  readonly element: HTMLElement;
  private readonly field: Field;
  private readonly note = make("p", { class: "app-fine", role: "status" });
  private text = "";
  /** The start that the hour led to. */
  private start: string | undefined;
  private leg: Leg | null = null;
  private place: Place | null = null;

  constructor(private readonly desk: Desk, private readonly change: Change) {
    const { words } = desk;
    const value = { get: () => this.text, set: (text: string) => this.type(text), settle: () => this.leave() };
    this.field = textField(words("draw-field-clock"), value, { inputmode: "decimal", class: "app-input app-number" });
    const take = button(words("draw-field-clock-take"), () => this.take(), { class: "app-button app-big" });
    this.field.element.querySelector(".app-controls")?.append(take);
    this.element = make("div", { class: "app-field-clock" }, this.field.element, this.note);
  }

  /** Who goes on, or takes it back, has said no hour yet. */
  sync({ trip }: State): void {
    if (this.start === undefined || this.start === trip.start) return;
    this.forget();
  }

  /** Where the hour counts. */
  show(leg: Leg | null, place: Place | null): void {
    const moved = this.place !== null && (place?.stage !== this.place.stage || place.at_m !== this.place.at_m);
    [this.leg, this.place] = [leg, place];
    if (moved && this.start !== undefined) this.forget();
    this.tell();
  }

  private forget(): void {
    [this.text, this.start] = ["", undefined];
    this.field.sync();
    this.tell();
  }

  /** Three digits may be the beginning of four. */
  private type(text: string): void {
    this.text = text;
    if (!/^\d{3}$/.test(text.trim())) this.apply(true);
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
    const { leg, place } = this;
    const [now_min, left_min] = [ofDay(this.text), leg && place ? leftAfter(leg, place) : null];
    if (now_min === null || left_min === null) return;
    this.text = going ? this.text : clockOf(now_min);
    this.start = startFor(this.desk.store.state.trip, now_min, left_min);
    const { start } = this;
    this.change("draw-did-field-clock", (state) => ({ ...state, trip: withMember(state.trip, "start", start) }), going, () => "clock");
  }

  /** What is missing, else what it is for. */
  private tell(): void {
    const { words } = this.desk;
    const wrong = this.text !== "" && ofDay(this.text) === null;
    const key = this.place === null ? "draw-field-clock-where" : wrong ? "draw-field-clock-wrong" : "draw-field-clock-what";
    retext(this.note, words(key));
  }
}
