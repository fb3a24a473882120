/** The panel of files: what is opened, and what is taken along. */

import { said } from "./answers";
import type { Desk, Part } from "./desk";
import { button, fill, make } from "./dom";
import { faultList } from "./faults";
import { group } from "./fields";
import type { Panel, TripDoor } from "./door";
import type { Given } from "./given";
import { TRIP, besideOf } from "./held";
import type { State } from "./model";
import { type Opened, openAll } from "./open";
import { type Made, type Output, archive, handOut, named, outputFile, pageFile, tripFile, zonesFile } from "./save";
import { OFFERED } from "./set";
import { Title } from "./title";

/** The output that is printed. */
const PAPER = "sheet";

export class FilesPanel implements Part {
  readonly element = make("div", { class: "app-files" });
  private readonly lying = make("ul", { class: "app-lying" });
  private readonly input = make("input", { type: "file", multiple: true, accept: OFFERED, class: "app-hidden", tabindex: -1, "aria-hidden": "true" });
  private readonly came = make("div", { class: "app-came", role: "status" });
  private readonly saved = make("div", { class: "app-saved", role: "status" });
  private readonly formats = make("div", { class: "app-acts" });
  /** What is taken along on paper. */
  private readonly paper = make("div", { class: "app-way", hidden: true });
  private readonly ways: HTMLElement;
  private readonly called = new Title();
  private last: { readonly panel: Panel; readonly of: State } | null = null;
  private outputs: readonly Output[] = [];
  /** All that the list of files hangs on. */
  private listed: readonly unknown[] = [];

  constructor(
    private readonly desk: Desk,
    private readonly original: string,
    private readonly given: Given,
  ) {
    this.ways = this.saving();
    this.element.append(this.opening(), this.ways, this.saved, make("p", { class: "app-fine" }, `schrund ${given.version}`));
    this.sync(desk.store.state);
  }

  sync(state: State): void {
    const { route, zonesName, files } = besideOf(state);
    const { words } = this.desk;
    const signs = [route, zonesName, files, state.zones.length > 0, state.trip];
    if (signs.every((sign, at) => sign === this.listed[at])) return;
    this.listed = signs;
    const line = (kind: string, name: string, cut = false) =>
      make("li", {}, `${words(`draw-kind-${kind}`)}: `, make("bdi", {}, name), cut && make("p", { class: "app-quiet" }, words("draw-terrain-cut")));
    const kind = (name: string) => (name === state.trip.glaciers ? "inventory" : state.trip.terrain?.includes(name) ? "terrain" : "other");
    fill(this.lying, route && line("route", route.name), state.zones.length > 0 && line("zones", zonesName), Object.keys(state.trip).length > 0 && line("trip", TRIP), ...files.map(({ name, cut }) => line(kind(name), name, cut)));
  }

  /** Opens files. What comes next is in sight then: the plan of a set, or after the first route the ice, unless there is something to read here. */
  async take(files: readonly File[]): Promise<void> {
    const { store } = this.desk;
    const bare = !besideOf(store.state).route;
    const { opened, whole } = await openAll(files, this.desk, this.outputs.map(({ file }) => file));
    fill(this.came, ...opened.map((one) => this.told(one)));
    const routed = besideOf(store.state).route !== null;
    if (!routed || !opened.every((one) => one.kind && !one.guessed && !one.asInventory)) return;
    if (whole) this.desk.openTab("plan");
    else if (bare) this.desk.openTab("zone");
  }

  private told({ name, kind, says, guessed, asInventory }: Opened): HTMLElement {
    const { words } = this.desk;
    const line = make("div", { class: kind ? "app-took" : "app-fault" });
    line.append(make("p", {}, make("bdi", {}, name), ` – ${words(kind ? `draw-kind-${kind}` : "draw-open-not")}`));
    if (guessed && kind) line.append(make("p", {}, words("draw-open-guessed")));
    if (kind === "route" && besideOf(this.desk.store.state).files.some((file) => file.cut)) line.append(make("p", {}, words("draw-terrain-cut")));
    if (says) line.append(make("pre", { class: "app-pre" }, says));
    if (asInventory) {
      const other = button(words("draw-open-as-inventory"), () => {
        asInventory();
        line.replaceWith(this.told({ name, kind: "inventory", says: "" }));
      });
      line.append(other);
    }
    return line;
  }

  /** Asks for files. */
  choose(): void {
    this.input.click();
  }

  private opening(): HTMLElement {
    const { words } = this.desk;
    const { input } = this;
    input.addEventListener("change", () => {
      this.desk.openTab("files");
      void this.take([...(input.files ?? [])]).then(() => (input.value = ""));
    });
    const choose = button(words("draw-open"), () => this.choose(), { class: "app-button app-main" });
    return group(words("draw-open-title"), make("p", { class: "app-quiet" }, words("draw-open-what")), choose, input, this.came, this.lying);
  }

  show(panel: Panel, _: unknown, of: State): void {
    this.called.take(panel, of);
    this.last = { panel, of };
  }

  know({ outputs }: TripDoor): void {
    this.outputs = outputs;
    const { words, store } = this.desk;
    const one = (output: Output) => this.one(words(`draw-save-${output.format}`), () => outputFile(store.state, output, this.desk));
    const sheet = outputs.find(({ format }) => format === PAPER);
    fill(this.paper, ...(sheet ? [one(sheet), make("p", {}, words("draw-save-sheet-holds"))] : []));
    this.paper.hidden = !sheet;
    fill(this.formats, ...outputs.filter((output) => output !== sheet).map(one));
  }

  private page(state = this.desk.store.state): Promise<Made> {
    return pageFile(this.original, this.given, state, this.desk);
  }

  /** All of what is there as it is pressed. */
  private async whole({ store: { state } } = this.desk): Promise<Made> {
    const page = await this.page(state);
    return archive(state, this.outputs, page, this.desk);
  }

  /** Shows the ways to save, with the keys on the first. */
  offer(): void {
    this.ways.scrollIntoView({ block: "start" });
    this.ways.querySelector("button")?.focus({ preventScroll: true });
  }

  private one(text: string, made: () => Promise<Made> | Made, main = false): HTMLButtonElement {
    return button(text, () => void this.hand(made), { class: main ? "app-button app-main" : "app-button", "data-save": true });
  }

  private saving(): HTMLElement {
    const { words, store } = this.desk;
    const one = this.one.bind(this);
    const way = (act: HTMLElement, holds: string) => make("div", { class: "app-way" }, act, make("p", {}, words(holds)));
    const zones = one(words("draw-save-zones"), () => zonesFile(store.state));
    const trip = one(words("draw-save-trip"), () => tripFile(store.state, this.desk));
    return group(
      words("draw-save-title"),
      way(one(words("draw-save-zip"), () => this.whole(), true), "draw-save-zip-holds"),
      way(one(words("draw-save-page"), () => this.page()), "draw-save-page-holds"),
      this.paper,
      make("details", { class: "app-fold app-single" }, make("summary", {}, words("draw-save-single")), make("div", { class: "app-acts" }, zones, trip), this.formats),
    );
  }

  /** Makes a file and hands it out; one at a time. */
  private async hand(made: () => Promise<Made> | Made): Promise<void> {
    const pressed = document.activeElement;
    this.rest(true);
    fill(this.saved, make("p", {}, this.desk.words("draw-saving")));
    try {
      const file = named(await made(), this.called.of(this.desk.store.state));
      handOut(file);
      const { words } = this.desk;
      const lacks = file.lacks ? [make("p", {}, words("draw-saved-lacks")), this.why(file.lacks)] : [];
      fill(this.saved, make("p", {}, `${words("draw-saved")} `, make("bdi", {}, file.name)), ...lacks);
    } catch (error) {
      fill(this.saved, make("p", {}, this.desk.words("draw-save-not")), this.why(said(error, this.desk.words)));
    } finally {
      this.rest(false);
      if (document.activeElement === document.body && pressed instanceof HTMLElement) pressed.focus();
    }
  }

  /** Why there is no plan, as the page says it elsewhere; where it does not know, what the program wrote. */
  private why(says: string): HTMLElement {
    const { words, store, engine } = this.desk;
    if (engine.gone) return make("p", {}, words("draw-broke-off"));
    if (!besideOf(store.state).route) return make("p", {}, words("draw-hint-no-route"));
    const { panel, of } = this.last ?? {};
    const faults = panel && of === store.state && !("verdict" in panel) ? panel.faults : [];
    return of && faults.length > 0 ? faultList(faults, this.desk, of, null, true) : make("pre", { class: "app-pre" }, says);
  }

  /** Who pressed a button is back on it afterwards. */
  private rest(disabled: boolean): void {
    for (const one of this.element.querySelectorAll<HTMLButtonElement>("[data-save]")) one.disabled = disabled;
  }
}
