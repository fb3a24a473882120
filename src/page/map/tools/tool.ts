/** What a tool of the map is, and the bench it works at. */

import type { Store } from "../../model";
import type { Words } from "../../words";
import type { Point } from "../geometry/rings";
import type { Scene } from "../scene";

export type ToolName = "pick" | "draw" | "outline" | "paint" | "cut" | "hole" | "join" | "strike";

/** Tools that make a new zone. */
export const MAKES: readonly ToolName[] = ["draw", "outline", "paint"];

/** A finger, a mouse or the crosshair on the ground. */
export interface Touch {
  readonly at: Point;
  /** So near counts as on it, metres. */
  readonly reach: number;
  /** Nothing sticks to rims. */
  readonly free: boolean;
}

/** What tools share. */
export interface Bench {
  readonly store: Store;
  readonly scene: Scene;
  readonly words: Words;
  /** Spots that stick to the same rim are joined along it. */
  follow: boolean;
  redraw(): void;
  /** Told to who listens: the words of a key, then figures. */
  say(key: string, ...figures: string[]): void;
  pick(key: number | null): void;
  /** A zone has come to be: it is picked, seen, and told to who asks for its figures. */
  made(key: number): void;
  setTool(name: ToolName): void;
  /** The tool has other buttons or figures now. */
  refresh(): void;
  /** A place in figures. */
  told(at: Point): string;
  /** Metres walked in kilometres, as the language of the page writes them. */
  kilometres(at_m: number): string;
}

/** The map with a bench on it: what keys and buttons reach for. */
export interface Board extends Bench {
  readonly size: readonly number[];
  fit(): void;
  /** Closer by so many times two. */
  scaleBy(times: number): void;
  /** Shows what the signs mean. */
  legend(): void;
  tapped(touch: Touch): void;
  /** Closes what a label told; false where nothing was. */
  untold(): boolean;
  /** Keys go to the map. */
  focus(): void;
}

export interface Tool {
  readonly name: ToolName;
  /** What to do next: a key of words. */
  hint(): string;
  enter?(): void;
  leave(): void;
  tap(touch: Touch): void;
  /** This tap is the tool's, whatever label lies there. */
  claims?(touch: Touch): boolean;
  hover?(touch: Touch | null): void;
  /** Takes a drag that begins here. */
  press?(touch: Touch): boolean;
  drag?(touch: Touch): void;
  release?(): void;
  /** Something is begun that can be finished, taken back by one spot, or given up. */
  readonly begun?: boolean;
  finish?(): void;
  /** What is begun would make something as it is. */
  readonly ready?: boolean;
  back?(): void;
  /** Something begun was given up, and can be taken up again. */
  readonly left?: boolean;
  again?(): void;
  /** Fields of its own beside the hint. */
  fields?(): HTMLElement | null;
}
