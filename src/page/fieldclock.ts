/** What time it is where somebody stands: that hour stays where it was said, whatever else changes, and all others follow from it. */

import type { Desk } from "./desk";
import { button, make, retext } from "./dom";
import type { Trip, Walked } from "./door";
import { type Field, textField } from "./fields";
import type { Change } from "./fieldgap";
import type { State } from "./model";
import { withMember } from "./number";
import type { Place } from "./whereami";

/** An hour of the day as people type it. */
const TYPED = /^(\d{1,2})\s*[:.,h]\s*(\d{2})$|^(\d{1,2})(\d{2})$/;

/** `09:40`; null where it is no hour of the day. */
function hourOf(text: string): string | null {
  const [known, hour, minute, hours, minutes] = TYPED.exec(text.trim()) ?? [];
  const [h, m] = [Number(hour ?? hours), Number(minute ?? minutes)];
  return known !== undefined && h < 24 && m < 60 ? clockOf(h, m) : null;
}

const clockOf = (...parts: readonly number[]): string => parts.map((part) => String(part).padStart(2, "0")).join(":");

/** An hour and where it counts. */
export type Hour = Pick<Trip, "start" | "start_at_km">;

/** The trip with the hour of another one, and with where that counts. */
export const withStart = (trip: Trip, { start, start_at_km }: Hour): Trip =>
  withMember(withMember(trip, "start", start), "start_at_km", start_at_km);

export class ClockHere {
  readonly element: HTMLElement;
  private readonly field: Field;
  private readonly note = make("p", { class: "app-fine", role: "status" });
  private text = "";
  /** The trip before an hour was said, and as it is with it. */
  private was: Hour | null = null;
  /** The hour here in the plan of that. */
  private planned: Walked | null = null;
  private said: Hour | null = null;
  private place: Place | null = null;

  /** `unsaid` tells which hour counts again where none is said any more, and which counted before. */
  constructor(private readonly desk: Desk, private readonly change: Change, private readonly unsaid: (was: Hour, planned: Walked | null) => Hour, private readonly here: () => Walked | null) {
    const { words } = desk;
    const value = { get: () => this.text, set: (text: string) => this.type(text), settle: () => this.leave() };
    this.field = textField(words("draw-field-clock"), value, { inputmode: "decimal", class: "app-input app-number" });
    const take = button(words("draw-field-clock-take"), () => this.take(), { class: "app-button app-big" });
    this.field.element.querySelector(".app-controls")?.append(take);
    this.element = make("div", { class: "app-field-clock" }, this.field.element, this.note);
  }

  /** Where it was taken back no hour is said. */
  sync({ trip }: State): void {
    if (this.said && (this.said.start !== trip.start || this.said.start_at_km !== trip.start_at_km)) this.forget();
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
    this.text = clockOf(now.getHours(), now.getMinutes());
    this.field.sync();
    this.leave();
    this.tell();
  }

  private apply(going: boolean): void {
    const { place } = this;
    const start = hourOf(this.text);
    if (start === null || place === null) return;
    this.text = going ? this.text : start;
    if (!this.was) [this.was, this.planned] = [this.desk.store.state.trip, this.here()];
    this.said = { start, start_at_km: Math.round(place.at_m) / 1000 };
    this.put(this.said, going);
  }

  /** An emptied field says no hour. */
  private unsay(): void {
    const { was } = this;
    if (!was) return;
    [this.was, this.said] = [null, null];
    this.put(this.unsaid(was, this.planned), true);
  }

  private put(hour: Hour, going: boolean): void {
    this.change("draw-did-field-clock", (state) => ({ ...state, trip: withStart(state.trip, hour) }), going, () => "clock");
  }

  /** What is missing, else what it is for. */
  private tell(): void {
    const { words } = this.desk;
    const wrong = this.text !== "" && hourOf(this.text) === null;
    const key = this.place === null ? "draw-field-clock-where" : wrong ? "draw-field-clock-wrong" : "draw-field-clock-what";
    retext(this.note, words(key));
  }
}
