/** On the ice: big targets for what turned out otherwise, the answer in a few lines, all of it taken back by one button. */

import type { Desk, Part } from "./desk";
import { button, fill, make, written } from "./dom";
import type { Ground, Html, Panel, Planned, Trip, TripDoor, TripRope } from "./door";
import { allNeeded, faultList } from "./faults";
import { type Anchor, anchorOf } from "./fieldanchor";
import { Answer, firstOf } from "./fieldanswer";
import { WayBack } from "./fieldback";
import { ClockHere, type StartHour, hourAt, sameStart } from "./fieldclock";
import { Fallen } from "./fieldfallen";
import { type Slot, ropeSlots, slots, turnPerson, turnRope } from "./fieldfolk";
import { type Change, GapHere } from "./fieldgap";
import { hereIn } from "./fieldhere";
import { group } from "./fields";
import { Where } from "./fieldwhere";
import { Fold } from "./fold";
import { type Person, people, withPeople } from "./folk";
import { Hold } from "./hold";
import { SIGNS } from "./map/palette";
import type { State } from "./model";
import { shown, withMember } from "./number";
import { kilometres } from "./panel";
import { since } from "./since";
import { TakeBack, markPlain } from "./takeback";
import { Ways } from "./ways";

/** Who is out is drawn as missing. */
const slotClass = ({ out }: Slot<unknown>): string => `app-button app-big${out ? " app-out" : ""}`;

/** The form as it was last made, in another language. */
const formOf = new WeakMap<Desk, HTMLElement>();

export class FieldMode implements Part {
  readonly element = make("div", { class: "app-field-mode" });
  private readonly answer: Answer;
  private readonly where: Where;
  private readonly clock: ClockHere;
  private readonly gap: GapHere;
  private readonly folk = make("div", { class: "app-acts" });
  private readonly snow = make("div", { class: "app-acts" });
  private readonly ways: Ways;
  private readonly table = make("div");
  private readonly fold: Fold;
  private readonly fallen: Fallen;
  private readonly taken = new TakeBack();
  private readonly back: WayBack;
  private readonly hold: Hold;
  private readonly anchor: Anchor;
  private plan: Planned | null = null;
  /** There was a plan before. */
  private had = false;
  /** What it is the plan of. */
  private of: State;
  private offered = "";
  private door: TripDoor | null = null;

  constructor(private readonly desk: Desk) {
    const { words } = desk;
    this.of = desk.store.state;
    this.anchor = anchorOf(desk);
    const act: Change = (did, change, going, name) => this.change(did, change, going, name);
    this.gap = new GapHere(desk, act, (state) => this.taken.without(state));
    this.clock = new ClockHere(desk, act, (was, planned) => this.unsaid(was, planned), () => this.here());
    this.fold = new Fold(true, () => desk.ask());
    this.fallen = new Fallen(desk);
    this.back = new WayBack(desk, this.taken);
    this.answer = new Answer(words("draw-leg"), words, this.back.element);
    this.where = new Where(desk, () => this.stands());
    this.where.element.append(this.clock.element);
    this.ways = new Ways(desk, (did, change) => this.change(did, change), { class: "app-button app-big" }, true);
    const filler = make("div");
    this.hold = new Hold(this.element, filler);
    this.element.append(
      this.answer.pinned,
      filler,
      this.fallen.element,
      this.where.element,
      this.answer.longer,
      group(words("draw-field-gap"), this.gap.element),
      group(words("draw-field-party"), this.folk, this.ways.element),
      group(words("draw-field-snow"), this.snow, make("p", { class: "app-quiet" }, words("draw-field-snow-what"))),
      this.table,
    );
    this.sync(desk.store.state);
    const before = formOf.get(desk);
    if (before) this.hold.goOn(before);
    formOf.set(desk, this.element);
  }

  sync(state: State): void {
    if (!this.desk.store.canUndo) markPlain(state);
    this.taken.come(state);
    this.back.offer(state, this.door);
    this.buttons(state);
    this.gap.sync();
    this.clock.sync(state);
    this.ways.sync(state);
  }

  lie(ground: Ground | null): void {
    this.gap.lie(ground);
    this.fallen.lie(ground);
    this.locate();
  }

  know(door: TripDoor): void {
    this.door = door;
    this.buttons(this.desk.store.state);
    this.back.offer(this.desk.store.state, door);
  }

  show(panel: Panel, _: Planned | null, of: State): void {
    this.plan = "verdict" in panel ? panel : null;
    this.of = of;
    this.locate();
    if (this.plan) this.tell(this.plan);
    else this.refuse(panel);
    this.had ||= this.plan !== null;
    const field = this.plan?.parts.find((part) => part.id === "field");
    if (field) this.fold.show(field.title, field.html);
    if ((this.table.firstElementChild !== null) !== !!field) fill(this.table, field ? this.fold.element : null);
  }

  wants(): readonly string[] {
    return this.fold.element.open && !this.element.closest("[hidden]") ? ["field"] : [];
  }

  /** The word and the set-up of the leg here, and what to do there; before anything is said the question. All that is longer stands apart. */
  private tell(plan: Planned): void {
    const { words } = this.desk;
    const { place, open } = this.where;
    const leg = this.where.leg(plan);
    this.fallen.show(leg, place, this.of);
    const changes = this.changes();
    const head = written("div", {}, plan.head);
    const stands = changes.length > 0 ? [...head.querySelectorAll<HTMLElement>(".stands")] : [];
    if (!leg || !place) return this.answer.say([make("p", {}, words(open ? "draw-field-which" : "draw-field-nowhere"))], null, () => [...stands, ...changes]);
    const { lines, spare, longer } = hereIn(plan, leg, place, this.of, this.desk);
    const all = (told: string) => {
      // What the head says already comes last.
      const isSaid = (line: HTMLElement) => told.includes(line.textContent.replace(`${words("draw-field-here")} `, ""));
      return [this.wayTo(leg.told), head.querySelector<HTMLElement>(".falls-on"), ...longer.filter((line) => !isSaid(line)), written("div", {}, leg.told), ...stands, ...changes, ...longer.filter(isSaid)];
    };
    this.answer.say(lines, spare, all, { title: `${words("draw-leg")} ${leg.leg}, ${kilometres(leg, this.desk)}` });
  }

  /** What to do where there is no plan, and what stands in its way: as grave as a stop, once there was a plan. */
  private refuse({ faults }: Panel): void {
    this.unplanned();
    const [first] = faults;
    if (!first) return;
    const grave = this.had || !allNeeded(faults);
    const sign = grave ? [make("span", { "aria-hidden": "true" }, SIGNS.stop), " "] : [];
    const says = written("p", { class: "app-set-up" }, first.says);
    const hint = first.hint === null ? null : make("p", { class: "app-act" }, firstOf(first.hint));
    (hint ?? says).prepend(...sign);
    const longer = [faultList(faults.slice(0, 1), this.desk, this.of), this.wayTo(first.hint ?? ""), ...this.changes()];
    this.answer.say(hint ? [hint, says] : [says], null, () => longer, { refused: grave });
  }

  /** Beside what tells of the ways there is one to them. */
  private wayTo(told: Html): HTMLElement | null {
    const name = this.desk.words("draw-ways");
    return told.includes(name) ? this.big(name, () => this.ways.open(), { "data-leads": true }) : null;
  }

  /** What was done here and is in the plan, in one line. */
  private changes(): HTMLElement[] {
    const said = since(this.taken.without(this.of), this.of, this.desk, this.door);
    return said.length > 0 ? [make("p", { class: "app-since" }, make("bdi", {}, said.join(" · ")))] : [];
  }

  private locate(): void {
    this.where.locate(this.plan);
    this.ask();
  }

  /** What is asked of the place. */
  private ask(): void {
    const { place } = this.where;
    this.gap.show(this.plan, this.of, place);
    this.clock.show(place);
  }

  /** Somebody is in another place. */
  private stands(): void {
    this.ask();
    if (this.plan) this.tell(this.plan);
    else this.unplanned();
  }

  /** Without a plan there is a place to call out all the same, and nothing of an older one. */
  private unplanned(): void {
    this.fallen.show(null, this.where.place, this.of, false);
  }

  /** Made anew only where they are others: who presses one of them stays there. */
  private buttons(state: State): void {
    const { trip } = state;
    const was = this.taken.without(state);
    const [folk, all] = [slots(people(was.trip), people(trip)), ropeSlots(was.trip, trip, this.desk.words)];
    const sign = JSON.stringify([folk, all, trip.snow, this.door?.terms["snow"]]);
    if (sign === this.offered) return;
    this.offered = sign;
    for (const row of [this.folk, this.snow]) {
      const at = [...row.children].indexOf(document.activeElement ?? row);
      fill(row, ...(row === this.folk ? this.folkButtons(folk, all, was) : this.snowButtons(trip)));
      if (at >= 0) (row.children[Math.min(at, row.children.length - 1)] as HTMLElement | undefined)?.focus({ preventScroll: true });
    }
  }

  private big(text: string, press: () => void, marks = {}): HTMLButtonElement {
    return button(text, press, { class: "app-button app-big", ...marks });
  }

  /** Who was left out stands where they stood, and comes back from there. */
  private folkButtons(folk: readonly Slot<Person>[], all: readonly Slot<TripRope>[], was: State): HTMLButtonElement[] {
    const { words } = this.desk;
    const persons = folk.map((slot, at) => {
      const did = slot.out ? "draw-did-field-join" : "draw-did-field-leave";
      const turn = () => this.change(did, (state) => turnPerson(state, was, slot));
      return this.big(`${slot.out ? "+" : "−"} ${slot.one.name || `${words("draw-person")} ${at + 1}`}`, turn, { class: slotClass(slot) });
    });
    const more = this.big(words("draw-field-one-more"), () => this.join());
    const lines = all.map((slot) => {
      const name = shown(slot.one["name"]) || `${shown(slot.one.length_m)} ${words("draw-unit-m")}`;
      const did = slot.out ? "draw-did-field-rope-again" : "draw-did-field-rope";
      const turn = () => this.change(did, (state) => turnRope(state, slot));
      return this.big(`${slot.out ? "+" : "−"} ${words("draw-field-rope")} ${name}`, turn, { class: slotClass(slot) });
    });
    // Behind the button that lets them in, which stays under the hand.
    const before = people(was.trip).length;
    return [...persons.slice(0, before), more, ...persons.slice(before), ...lines];
  }

  private snowButtons(trip: Trip): HTMLButtonElement[] {
    const press = (name: string) => this.change("draw-did-field-snow", (now) => ({ ...now, trip: withMember(now.trip, "snow", name) }));
    const snows = this.door?.terms["snow"] ?? [];
    return snows.map(({ name, means }) => this.big(means || name, () => press(name), { "aria-pressed": String((trip.snow ?? this.door?.snow) === name) }));
  }

  private join(): void {
    this.change("draw-did-field-join", (state) => ({ ...state, trip: withPeople(state.trip, [...people(state.trip), { name: "" }]) }));
  }

  /** The hour that counts where none is said any more: what was done meanwhile still counts from here. */
  private unsaid(was: StartHour, planned: StartHour | null): StartHour {
    const others = this.taken.standing(this.desk.store.state).length > 1;
    return others && planned && was.start_at_km === undefined ? this.anchor.at(planned) : was;
  }

  /** The hour here in the plan that is shown; null while that is one by other hours. */
  private here(): StartHour | null {
    const { place } = this.where;
    const leg = this.plan && this.where.leg(this.plan);
    return leg && place && sameStart(this.of.trip, this.desk.store.state.trip) ? hourAt(leg, place) : null;
  }

  private change(did: string, change: (state: State) => State, going = false, name = () => ""): void {
    const { store } = this.desk;
    const made = (was: State) => {
      const held = this.anchor.hold(was, change(was), this.here());
      const act = { was, left: held, did, name: name() };
      const left = this.anchor.loose(held, this.taken.bare(act));
      this.taken.add({ ...act, left });
      return left;
    };
    store.change(did, made, going);
  }
}
