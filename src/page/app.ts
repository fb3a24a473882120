/** The parts of the page put together: what is changed is planned, and what is planned is shown. */

import { answer, broken, said } from "./answers";
import { groundOf, panelOf, tripOf } from "./calls";
import { type Desk, type Part, type TabName } from "./desk";
import { button, fill, make } from "./dom";
import type { Ground, Panel, Trip, TripDoor } from "./door";
import { Effect } from "./effect";
import { BROKEN, type Came, Engine, Newest } from "./engine";
import { FieldMode } from "./fieldmode";
import { FilesPanel } from "./files";
import { Follow } from "./follow";
import { type Given, readCore } from "./given";
import { Header } from "./header";
import { hear } from "./hear";
import { type Steps, besideOf, sameGround } from "./held";
import type { Keep } from "./keep";
import { MapSide } from "./mapside";
import type { OnRoute } from "./map/geometry/along";
import type { State } from "./model";
import { PlanPanel } from "./panel";
import { Tabs } from "./tabs";
import { TripForm } from "./trip";
import { type Language, type Words, wordsOf } from "./words";
import { ZoneForm } from "./zone";

/** The text of the worker, put in by the bundler. */
declare const WORKER: string;

/** A plan that takes longer is waited for, milliseconds. Our judgement. */
const SLOW_MS = 150;

export class App implements Desk {
  readonly engine: Engine;
  /** Done when the program can be called, and never where it cannot run. */
  private readonly started: Promise<void>;
  words: Words;
  language: Language = "en";
  picked: number | null = null;
  private tab: TabName = "plan";
  private tabs!: Tabs<TabName>;
  private parts: Part[] = [];
  private header!: Header;
  private side!: MapSide;
  private plan!: PlanPanel;
  private files!: FilesPanel;
  private zone!: ZoneForm;
  private readonly root = document.getElementById("app") ?? document.body;
  private readonly live = make("div", { class: "app-hidden", "aria-live": "polite" });
  private readonly note = make("p", { class: "app-note", hidden: true });
  /** That the program broke off. */
  private readonly alarm = make("p", { class: "app-note app-alarm", role: "alert" });
  private readonly follow = new Follow((state, open) => this.planned(state, open), () => this.planShown());
  private readonly grounds = new Newest<State>((state) => this.survey(state));
  private running = false;
  private slow = 0;
  /** How long the program took for the last plan; null where there was nothing to plan. */
  private took_ms: number | null = null;
  /** The step that was last told of. */
  private said = 0;
  /** The ground of this state lies there, or was asked for. */
  private laid: State | null = null;
  private keeping = 0;
  private practice: string | undefined;

  constructor(
    private readonly original: string,
    private readonly given: Given,
    readonly store: Steps,
    private readonly keep: Keep,
  ) {
    this.words = wordsOf(given.words, this.language);
    this.engine = new Engine(WORKER, readCore(), (again) => this.broke(again));
    document.getElementById("core")?.replaceChildren();
    this.started = new Promise((done) => {
      const open = ({ took_ms }: Came) => {
        [this.running, document.body.dataset["ready"]] = [true, took_ms.toFixed(0)];
        done();
      };
      this.engine.ready.then(open, (error: unknown) => this.giveUp(String(error)));
    });
  }

  /** Shows the page, and plans as soon as the program is there; `restored` where it goes on with work of last time. */
  begin(language: Language, restored: boolean): void {
    this.build(language);
    this.listen();
    this.note.hidden = !restored;
    document.body.classList.add("app-on");
    document.getElementById("still")?.setAttribute("hidden", "");
    this.root.hidden = false;
  }

  pick(key: number | null): void {
    if (key === this.picked) return;
    this.picked = key;
    this.side.pick(key);
    if (key !== null && this.tab === "plan") this.openTab("zone");
    this.sync(this.store.state);
  }

  goToLeg(leg: number): void {
    this.side.goToLeg(leg);
  }

  stands(here: OnRoute | null): void {
    this.side.mark(here);
  }

  openTab(tab: TabName): void {
    this.tabs.open(tab);
  }

  chooseFiles(): void {
    this.files.choose();
  }

  save(): void {
    this.openTab("files");
    this.files.offer();
  }

  made(): void {
    this.openTab("zone");
    this.zone.begin();
  }

  paint(): void {
    this.side.paint();
  }

  tell(text: string): void {
    this.live.textContent = text;
  }

  private speak(language: Language): void {
    this.build(language);
    this.header.element.querySelector("select")?.focus();
  }

  /** Builds everything in a language. */
  private build(language: Language): void {
    this.store.silence();
    this.side?.end();
    this.language = language;
    this.words = wordsOf(this.given.words, language);
    document.documentElement.lang = language;
    this.header = new Header(this, (other) => this.speak(other));
    this.side = new MapSide(this);
    [this.plan, this.zone] = [new PlanPanel(this), new ZoneForm(this)];
    this.files = new FilesPanel(this, this.original, this.given);
    const [trip, field, effect] = [new TripForm(this), new FieldMode(this), new Effect(this)];
    this.parts = [this.header, this.plan, this.zone, trip, field, this.files, this.side, effect];
    // Figures in another language are not changes.
    this.follow.begin(this.parts);
    const tab = (name: TabName, { element }: Part) => ({ name, title: this.words(`draw-tab-${name}`), element });
    const all = [tab("plan", this.plan), tab("zone", this.zone), tab("trip", trip), tab("field", field), tab("files", this.files)];
    this.tabs = new Tabs(this.words("draw-tabs"), all, (name) => this.opened(name), effect.element, "plan");
    fill(this.note, this.words("draw-restored"));
    fill(this.root, this.header.element, this.alarm, this.note, make("main", { class: "app-body" }, this.side.element, this.tabs.element), this.live);
    this.tabs.open(this.tab);
    this.store.listen((state, did) => this.changed(state, did));
    [this.laid, this.practice] = [null, this.store.state.trip.practice];
    void this.know();
    this.changed(this.store.state, "");
  }

  private opened(tab: TabName): void {
    this.tab = tab;
    document.body.setAttribute("data-tab", tab);
    this.follow.shows();
    this.ask();
  }

  ask(): void {
    this.follow.ask();
  }

  private changed(state: State, did: string): void {
    // First what the program works at meanwhile.
    if (!this.laid || !sameGround(state, this.laid)) {
      this.laid = state;
      this.grounds.want(state);
    }
    this.follow.want(state, this.store.step);
    if (this.picked !== null && !state.zones.some((zone) => zone.key === this.picked)) this.pick(null);
    this.sync(state);
    // A slider that goes on is told of once.
    if (did && this.said !== this.store.step) this.tell(this.words(did === "undo" || did === "redo" ? `draw-did-${did}` : did));
    if (did) [this.note.hidden, this.said] = [true, this.store.step];
    if (did && !this.engine.gone) fill(this.alarm);
    if (state.trip.practice !== this.practice) {
      this.practice = state.trip.practice;
      void this.know();
    }
    this.keepSoon();
  }

  private sync(state: State): void {
    this.parts.forEach((part) => part.sync?.(state));
  }

  /** What a trip can hold, by the practice set in force; a set that cannot be read is no reason to know nothing. */
  private async know(): Promise<void> {
    await this.started;
    const { parts, store: { state } } = this;
    const { practice } = state.trip;
    const asked = async (trip: Trip) => answer<TripDoor>(await this.engine.over(state, tripOf({ ...state, trip }, this.language)));
    const known = async () => (await asked(practice === undefined ? {} : { practice })) ?? (await asked({}));
    const door = await known().catch(() => null);
    // Another set, or another language, was asked about since.
    if (!door || parts !== this.parts || practice !== this.store.state.trip.practice) return;
    for (const part of parts) part.know?.(door);
  }

  /** The ground of another route or another model; the line alone where a model cannot be read. */
  private async survey(state: State): Promise<void> {
    if (!this.running) await this.started;
    const { terrain: _, glaciers: __, ...bare } = state.trip;
    const asked = async (of: State) => answer<Ground>(await this.engine.over(state, groundOf(of, this.language)));
    const found = async () => besideOf(state).route && ((await asked(state)) ?? (await asked({ ...state, trip: bare })));
    // What the program broke off in is asked for again once there is another one.
    const ground = await found().catch(() => undefined);
    if (ground === undefined) return void (this.laid = null);
    for (const part of this.parts) part.lie?.(ground, state);
    this.follow.show(this.side);
  }

  private async planned(state: State, open: readonly string[]): Promise<Panel> {
    this.took_ms = null;
    if (!besideOf(state).route) return { faults: [] };
    // Nothing is waited for that is there: the program begins while the rest of the page follows the change.
    if (!this.running) await this.started;
    this.busy(true);
    const came = await this.came(state, open);
    this.took_ms = came.took_ms;
    return answer<Panel>(came) ?? broken(came, this.engine.gone, this.words);
  }

  private async came(state: State, open: readonly string[]): Promise<Came> {
    try {
      return await this.engine.over(state, panelOf(state, this.language, open));
    } catch (error) {
      return { code: BROKEN, out: new Uint8Array(), err: said(error, this.words), took_ms: 0 };
    }
  }

  /** That a plan is being made is seen only where it takes a while: a blink of it at every edit would be drawn for nothing. */
  private busy(busy: boolean, { element } = this.tabs): void {
    element.setAttribute("aria-busy", String(busy));
    clearTimeout(this.slow);
    element.removeAttribute("data-slow");
    if (busy) this.slow = setTimeout(() => element.setAttribute("data-slow", ""), SLOW_MS);
  }

  private planShown(): void {
    if (this.took_ms === null) return;
    this.busy(false);
    // For whoever measures: how many plans were shown, and how long the program took for the last.
    const { dataset } = document.body;
    dataset["took"] = this.took_ms.toFixed(0);
    dataset["planned"] = String(Number(dataset["planned"] ?? 0) + 1);
  }

  /** The program broke off: another one plans again, or there is none any more and the work is kept. */
  private broke(again: boolean): void {
    this.keepNow();
    const { words, keep: { works } } = this;
    const reload = !again && works && button(words("draw-reload"), () => location.reload());
    fill(this.alarm, `${words(again ? "draw-began-anew" : works ? "draw-gone-kept" : "draw-gone")} `, reload);
    if (!again) return;
    void this.engine.ready.then(() => this.know()).then(() => this.changed(this.store.state, ""), () => this.broke(false));
  }

  private giveUp(why: string): void {
    this.root.hidden = true;
    document.body.classList.remove("app-on");
    document.getElementById("still")?.removeAttribute("hidden");
    document.body.prepend(make("p", { role: "alert", class: "app-gave-up" }, `${this.words("draw-gave-up")} ${why}`));
  }

  /** Keeps the state a moment after the last change, or as soon as the page goes out of sight. */
  keepSoon(): void {
    clearTimeout(this.keeping);
    this.keeping = setTimeout(() => this.keepNow(), 400);
  }

  private keepNow(): void {
    const { store, keep, language } = this;
    void (store.canUndo || language !== this.given.language ? keep.write(store.state, language) : keep.drop());
  }

  private listen(): void {
    this.keep.guard(() => this.store.canUndo, () => this.keepNow());
    hear(this.store, (files) => {
      this.openTab("files");
      void this.files.take(files);
    });
  }
}
