/** The tools as buttons: what draws in a row over the map, what is done with the picked zone under it. */

import { button, fill, make, retext } from "../dom";
import { icon } from "./icons";
import { removeChosen } from "./keys";
import { roving } from "./rover";
import { split } from "./tools/acts";
import type { Board, Tool, ToolName } from "./tools/tool";

const ALWAYS: readonly ToolName[] = ["pick", "draw", "paint", "outline", "cut"];
/** Tools that are handled beside the map: who chose them by key goes on from the button. */
const OWN_FIELDS: readonly ToolName[] = ["paint", "strike"];
const PICKED: readonly ToolName[] = ["strike", "hole", "join"];

/** So long a hint stays that asks for nothing, milliseconds. */
const READ_MS = 6000;

export class Toolbar {
  readonly element = make("div", { class: "map-tools" });
  /** What to do next, over the lower rim of the map. */
  readonly hint = make("div", { class: "map-hint" });
  private readonly buttons = new Map<ToolName, HTMLButtonElement>();
  private readonly picked: HTMLElement;
  private readonly rovers: readonly (() => void)[];
  private readonly splits: HTMLButtonElement;
  private readonly removes: HTMLButtonElement;
  private readonly says = make("p", {});
  private readonly fields = make("div", { class: "map-own" });
  private readonly acts: HTMLElement;
  private readonly finish: HTMLButtonElement;
  private readonly back: HTMLButtonElement;
  private readonly again: HTMLButtonElement;
  private readonly cancel: HTMLButtonElement;
  private readonly follow: HTMLElement;
  /** The zone that was hinted about, whether that was read, and whether a point was ever held. */
  private hinted: number | null = null;
  private read = false;
  private held = false;
  private reading = 0;

  constructor(private readonly map: Board, private readonly tool: () => Tool) {
    const { words } = map;
    this.splits = this.act("split", () => this.after(() => this.split()));
    this.removes = this.act("delete", () => this.after(() => removeChosen(map)));
    const always = make("div", { class: "map-row", role: "toolbar", "aria-label": words("draw-tools") }, ...ALWAYS.map((name) => this.toolButton(name)), this.act("fit", () => map.fit()), this.act("legend", () => map.legend()));
    this.picked = make("div", { class: "map-row map-picked", role: "toolbar", "aria-label": words("draw-tools-picked") }, ...PICKED.map((name) => this.toolButton(name)), this.splits, this.removes);
    this.element.append(always, this.picked);
    this.rovers = [roving(always), roving(this.picked)];
    this.finish = button(words("draw-finish"), () => this.after(() => this.finishes()), { class: "map-act map-main" });
    this.back = button(words("draw-back"), () => this.after(() => tool().back?.()), { class: "map-act map-back" });
    this.again = button(words("draw-again"), () => this.after(() => tool().again?.()), { class: "map-act map-back" });
    this.cancel = button(words("draw-cancel"), () => this.after(() => this.givesUp()), { class: "map-act map-cancel" });
    this.acts = make("div", { class: "map-acts" }, this.cancel, this.back, this.again, this.finish);
    const box = make("input", { type: "checkbox", checked: map.follow, change: () => (map.follow = box.checked) });
    this.follow = make("label", { class: "map-follow" }, box, ` ${words("draw-follow")}`);
    this.fields.addEventListener("keydown", (event) => this.entered(event));
    this.hint.append(this.says, this.fields, this.follow, this.acts);
    this.show();
  }

  private toolButton(name: ToolName): HTMLButtonElement {
    const made = this.act(name, () => {
      this.map.setTool(name);
      if (!OWN_FIELDS.includes(name)) this.map.focus();
    });
    this.buttons.set(name, made);
    return made;
  }

  private act(name: string, press: () => void): HTMLButtonElement {
    const made = make("button", { type: "button", class: "map-tool", click: press });
    made.append(icon(name), make("span", {}, this.map.words(`draw-tool-${name}`)));
    return made;
  }

  /** What is done may take its own button away: then the map goes on. */
  private after(act: () => void): void {
    const pressed = document.activeElement;
    act();
    const now = document.activeElement;
    if (pressed?.closest("[hidden]") && (now === pressed || now === document.body)) this.map.focus();
  }

  /** By the enter key in a field what is whole is done, and what is not goes on in the next empty field. */
  private entered(event: KeyboardEvent): void {
    const { target } = event;
    if (event.key !== "Enter" || event.isComposing || !(target instanceof HTMLInputElement)) return;
    event.preventDefault();
    // What does not hold as it was typed is seen before anything is done with it.
    const { value } = target;
    target.dispatchEvent(new Event("change"));
    if (target.value !== value) target.select();
    else if (this.tool().ready) this.after(() => this.finishes());
    else this.empty?.focus();
  }

  private get empty(): HTMLInputElement | undefined {
    return [...this.fields.querySelectorAll("input")].find((one) => one.value.trim() === "");
  }

  /** What was begun and is not whole goes on in the field that is empty. */
  private finishes(): void {
    const tool = this.tool();
    if (tool.begun && !tool.ready && this.empty) this.empty.focus();
    else if (tool.finish) tool.finish();
    else this.map.setTool("pick");
  }

  /** What was begun first, so that it can be taken up again; then the tool. */
  private givesUp(): void {
    const { name, begun } = this.tool();
    this.map.setTool(begun ? name : "pick");
  }

  private split(): void {
    const { store, scene } = this.map;
    const one = scene.find(scene.picked);
    if (!one) return;
    store.change("draw-did-split", (state) => split(state, one, scene.frame));
    store.settle();
  }

  /** Whoever has had hold of a point, or a while to read, needs the hint no longer. */
  private knows(key: number): boolean {
    if (this.hinted === key || this.held) return this.held || this.read;
    [this.hinted, this.read] = [key, false];
    clearTimeout(this.reading);
    this.reading = setTimeout(() => {
      this.read = true;
      this.show();
    }, READ_MS);
    return false;
  }

  /** As things are now. */
  show(): void {
    const { scene, words } = this.map;
    const tool = this.tool();
    const one = scene.find(scene.picked);
    for (const [name, made] of this.buttons) made.setAttribute("aria-pressed", String(name === tool.name));
    this.picked.hidden = !one;
    this.splits.hidden = (one?.areas.length ?? 0) < 2;
    for (const settle of this.rovers) settle();
    if (scene.vertex) this.held = true;
    const removes = scene.vertex ? "draw-tool-delete-spot" : "draw-tool-delete";
    retext(this.removes.lastElementChild, words(removes));
    retext(this.says, words(tool.hint()));
    const fields = tool.fields?.() ?? null;
    if (this.fields.firstElementChild !== fields) fill(this.fields, fields);
    this.follow.hidden = tool.name !== "draw" && tool.name !== "hole";
    this.acts.hidden = tool.name === "pick";
    // What the needle did is done: there is nothing to give up.
    this.finish.hidden = !tool.finish && tool.name !== "strike";
    this.finish.disabled = !tool.begun && tool.name !== "strike";
    this.cancel.hidden = tool.name === "strike";
    this.again.hidden = !tool.again || !tool.left;
    // Its room stays, so that no button comes to lie where another was.
    this.back.hidden = !tool.back || !this.again.hidden;
    this.back.disabled = !tool.begun;
    this.hint.classList.toggle("map-acting", !!tool.finish);
    const idle = tool.name === "pick" && !!one && !scene.vertex;
    this.hint.classList.toggle("map-idle", idle);
    this.hint.hidden = (tool.name === "pick" && scene.shapes.length > 0 && !one) || (idle && this.knows(one.key));
  }
}
