/** The form of the picked zone: what is expected on this ice. Nothing is guessed: what is empty is not given. */

import { type Desk, type Part, isPolygon, zoneTitles } from "./desk";
import { button, fill, make, retext } from "./dom";
import type { Ground, Panel, Planned } from "./door";
import { goesOnByEnter } from "./enter";
import { faultList } from "./faults";
import { type Field, type Value, areaField, choiceField, group, sliderField, switches, textField } from "./fields";
import { people } from "./folk";
import { type Drawn, type State, touched } from "./model";
import { shown, typed, withMember } from "./number";
import { keyOf } from "./words";

type Properties = Readonly<Record<string, unknown>>;

const hasGap = ({ properties }: Drawn): boolean => ["gap_m", "gap_max_m"].some((name) => properties[name] !== undefined);

/** What is copied to the next zone: all but what makes a zone this one. */
const COPIED = [
  "gap_m", "gap_min_m", "gap_max_m", "gap_assumed", "snow_depth_m", "surface", "rope",
  "strike_deg", "strike_uncertainty_deg", "observed_on", "source",
] as const;

/** Words that a zones file has for a property. */
const WORDS = { surface: ["snow", "bare"], rope: ["auto", "always", "never"] } as const;

/** So many letters the choice shows on a phone. */
const ONE_LINE = 24;

const GAP = { least: 0, most: 30, step: 0.5 };
const SNOW = { least: 0, most: 4, step: 0.1 };
const STRIKE = { least: 0, most: 180, step: 1 };
const DOUBT = { least: 0, most: 90, step: 1 };

export class ZoneForm implements Part {
  readonly element = make("div", { class: "app-zone" });
  private readonly choice = make("select", { class: "app-input", change: () => this.choose() });
  /** The whole title where the choice, which has one line, cannot show it on a phone. */
  private readonly title = make("p", { class: "app-whole", "aria-hidden": "true" });
  private readonly faults = make("div", { class: "app-zone-faults", role: "status" });
  private readonly form = make("div");
  /** Where to go on from a zone whose gap is given: to another one, and while nobody was named yet to those who go. */
  private readonly next: HTMLElement;
  private readonly party: HTMLElement;
  /** To the first zone, once there is a route. */
  private readonly paint: HTMLElement;
  private fields: Field[] = [];
  private built: string | null = null;
  /** New zones are asked for a range. */
  private range = false;
  /** How the gap of a zone is asked for while nothing of it is written: who empties a field goes on typing in it. */
  private asked: { readonly key: number; readonly range: boolean } | null = null;
  private copied: Properties | null = null;
  private panel: Panel | null = null;
  private of: State;

  constructor(private readonly desk: Desk) {
    const { words } = desk;
    this.of = desk.store.state;
    this.choice.setAttribute("aria-label", words("draw-zone-choice"));
    this.party = button(`→ ${words("draw-start-trip")}`, () => desk.openTab("trip"));
    this.paint = button(words("draw-start-paint"), () => desk.paint(), { class: "app-button app-main app-big", hidden: true });
    this.next = make("div", { class: "app-acts", hidden: true }, button(words("draw-zone-add"), () => desk.paint()), this.party);
    this.element.append(this.choice, this.title, this.form);
    goesOnByEnter(this.form);
    this.sync(desk.store.state);
  }

  lie(ground: Ground | null): void {
    this.paint.hidden = ground === null;
  }

  sync(state: State): void {
    this.list(state);
    const zone = this.zone(state);
    const kind = zone ? `${zone.key} ${this.isRange(zone)} ${this.copied !== null}` : String(state.zones.some(isPolygon));
    this.next.hidden = !zone || !hasGap(zone);
    this.party.hidden = people(state.trip).length > 0;
    if (kind !== this.built) this.build(zone, kind);
    for (const field of this.fields) field.sync();
    this.complain();
  }

  show(panel: Panel, _: Planned | null, of: State): void {
    [this.panel, this.of] = [panel, of];
    this.complain();
  }

  private zone(state: State = this.desk.store.state): Drawn | null {
    return state.zones.find((zone) => zone.key === this.desk.picked) ?? null;
  }

  private choose(): void {
    this.desk.pick(this.choice.value === "" ? null : Number(this.choice.value));
  }

  private list(state: State): void {
    const { words, picked } = this.desk;
    const choices = [["", words("draw-zone-none")], ...zoneTitles(state, words)] as const;
    const listed = [...this.choice.options];
    // Made anew only where they are others.
    if (listed.length !== choices.length || choices.some(([key, title], at) => listed[at]?.value !== key || listed[at]?.textContent !== title)) {
      fill(this.choice, ...choices.map(([key, title]) => make("option", { value: key }, title)));
    }
    const now = picked === null ? "" : String(picked);
    if (this.choice.value !== now) this.choice.value = now;
    const title = picked === null ? "" : (choices.find(([key]) => key === now)?.[1] ?? "");
    retext(this.title, title.length > ONE_LINE ? title : "");
  }

  private complain(): void {
    const faults = this.panel ? [...this.panel.faults, ...("notices" in this.panel ? this.panel.notices : [])] : [];
    const zone = this.zone();
    const list = zone && faultList(faults, this.desk, this.of, zone.key);
    // What is said already is not said again with every key.
    if ((list?.innerHTML ?? "") !== (this.faults.firstElementChild?.innerHTML ?? "")) fill(this.faults, list);
  }

  private isRange({ key, properties }: Drawn): boolean {
    if ("gap_min_m" in properties || "gap_max_m" in properties) return true;
    if ("gap_m" in properties) return false;
    return this.asked?.key === key ? this.asked.range : this.range;
  }

  private build(zone: Drawn | null, kind: string): void {
    this.built = kind;
    this.fields = [];
    const { words } = this.desk;
    if (!zone) {
      const drawn = this.desk.store.state.zones.some(isPolygon);
      fill(this.form, make("p", { class: "app-quiet" }, words(drawn ? "draw-zone-pick" : "draw-start-ice-how")), drawn ? null : this.paint);
      return;
    }
    this.asked = { key: zone.key, range: this.isRange(zone) };
    const [first, ...others] = isPolygon(zone) ? [this.gap(zone), this.snow(), this.strike(), this.about()] : [this.about()];
    // What is missing stands below the gap, which is what mostly is.
    fill(this.form, first ?? null, this.faults, this.next, ...others, this.acts(zone));
  }

  /** The gap of a zone just made is typed at once; where fingers draw the keyboard would hide the map, so that the field only comes into sight. */
  begin(): void {
    const field = this.form.querySelector<HTMLElement>(".app-number");
    if (matchMedia("(pointer: fine)").matches) field?.focus();
    else field?.closest(".app-group")?.scrollIntoView({ block: "start" });
  }

  private add(field: Field): HTMLElement {
    this.fields.push(field);
    return field.element;
  }

  private gap(zone: Drawn): HTMLElement {
    const { words } = this.desk;
    const range = this.isRange(zone);
    const choices = [["one", words("draw-gap-one")], ["range", words("draw-gap-range")]] as const;
    const kinds = switches(words("draw-gap-kind"), choices, () => (range ? "range" : "one"), (kind) => this.turn(kind === "range"));
    const slider = (key: string, name: string) => this.add(this.slider(key, name, "draw-unit-m", GAP));
    const fields = range
      ? [slider("draw-gap-from", "gap_min_m"), slider("draw-gap-to", "gap_max_m")]
      : [slider("draw-gap-width", "gap_m")];
    return group(words("draw-gap"), this.add(kinds), ...fields);
  }

  private snow(): HTMLElement {
    const { words } = this.desk;
    const [one, two] = [this.choiceOf("draw-surface", "surface"), this.choiceOf("draw-rope", "rope")];
    return group(words("draw-snow-and-rope"), this.add(this.slider("draw-snow-depth", "snow_depth_m", "draw-unit-m", SNOW)), one, two);
  }

  private strike(): HTMLElement {
    const strike = this.slider("draw-strike-deg", "strike_deg", "draw-unit-deg", STRIKE);
    const doubt = this.slider("draw-strike-doubt", "strike_uncertainty_deg", "draw-unit-deg", DOUBT);
    return group(this.desk.words("draw-strike"), this.add(strike), this.add(doubt));
  }

  private about(): HTMLElement {
    const text = (name: string) => textField(this.desk.words(keyOf("draw-zone", name)), this.value(name, false));
    const note = areaField(this.desk.words("draw-zone-note"), this.value("note", false));
    const observed = textField(this.desk.words("draw-zone-observed-on"), this.value("observed_on", false), { placeholder: "2027-08-21" });
    return group(this.desk.words("draw-zone-about"), this.add(text("name")), this.add(observed), this.add(text("source")), this.add(note));
  }

  private slider(key: string, name: string, unit: string, bounds: typeof GAP): Field {
    const { words } = this.desk;
    return sliderField(words(key), words(unit), words("draw-not-given"), this.value(name, true), bounds);
  }

  private choiceOf(key: string, name: keyof typeof WORDS): HTMLElement {
    const { words } = this.desk;
    const terms = WORDS[name].map((word) => ({ name: word, means: words(`${key}-${word}`) }));
    return this.add(choiceField(words(key), terms, words("draw-not-given"), this.value(name, false)));
  }

  private acts(zone: Drawn): HTMLElement {
    const { words } = this.desk;
    const copy = button(words("draw-zone-copy"), () => this.copy(zone.key), { "data-copy": true });
    const paste = this.copied && button(words("draw-zone-paste"), () => this.paste(zone.key));
    const drop = button(words("draw-zone-delete"), () => this.drop(zone.key));
    return make("div", { class: "app-acts" }, isPolygon(zone) && copy, isPolygon(zone) && paste, drop);
  }

  private value(name: string, number: boolean): Value {
    const { store } = this.desk;
    return {
      get: () => shown(this.zone()?.properties[name]),
      set: (text, going) => {
        const key = this.desk.picked;
        const value = number ? typed(text) : text === "" ? undefined : text;
        if (key !== null) store.change(keyOf("draw-did", name), (state) => this.with(state, key, name, value), going);
      },
      settle: () => store.settle(),
    };
  }

  private with(state: State, key: number, name: string, value: unknown): State {
    const before = state.zones.find((zone) => zone.key === key);
    if (!before) return state;
    const changed = withMember(before.properties, name, value);
    if (changed === before.properties) return state;
    // A width that somebody gives is no longer assumed.
    const properties = name.startsWith("gap_") ? withMember(changed, "gap_assumed", undefined) : changed;
    return touched(state, key, () => ({ properties }));
  }

  /** One number becomes the upper end of a range, and back: that end is the one that counts. */
  private turn(range: boolean): void {
    this.range = range;
    const key = this.desk.picked;
    this.asked = key === null ? null : { key, range };
    const [from, to] = range ? ["gap_m", "gap_max_m"] : ["gap_max_m", "gap_m"];
    this.desk.store.change("draw-did-gap-kind", (state) => {
      const zone = state.zones.find((one) => one.key === key);
      if (!zone || key === null) return state;
      const value = zone.properties[from] ?? zone.properties[to];
      const bare = ["gap_m", "gap_min_m", "gap_max_m"].reduce<Properties>((p, name) => withMember(p, name, undefined), zone.properties);
      const properties = withMember(bare, to, value);
      return value === undefined && bare === zone.properties ? state : touched(state, key, () => ({ properties }));
    });
    this.built = null;
    this.sync(this.desk.store.state);
    this.form.querySelector<HTMLElement>('.app-switch[aria-pressed="true"]')?.focus();
  }

  private copy(key: number): void {
    this.copied = this.desk.store.state.zones.find((zone) => zone.key === key)?.properties ?? null;
    this.desk.tell(this.desk.words("draw-zone-copied"));
    this.sync(this.desk.store.state);
    this.form.querySelector<HTMLElement>("[data-copy]")?.focus();
  }

  private paste(key: number): void {
    const { copied } = this;
    if (!copied) return;
    this.desk.store.change("draw-did-paste", (state) =>
      touched(state, key, ({ properties }) => ({
        properties: COPIED.reduce<Properties>((into, name) => withMember(into, name, copied[name]), properties),
      })),
    );
  }

  private drop(key: number): void {
    this.desk.store.change("draw-did-delete", (state) => ({ ...state, zones: state.zones.filter((zone) => zone.key !== key) }));
    this.desk.pick(null);
    this.choice.focus();
  }
}
