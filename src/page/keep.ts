/** Work in progress, kept in the browser from one opening of the page to the next. */

import type { Trip } from "./door";
import type { Given, NamedBytes, NamedText } from "./given";
import { type Ice, iceOf, onIce } from "./keepice";
import { type Held, besideOf, zonesText } from "./held";
import type { State } from "./model";
import type { Language } from "./words";
import { readAny } from "./zones";

const BASE = "schrund";
const TABLE = "work";

/** A state as it is kept. Files are left out where they are those that the page was given. */
interface Work {
  readonly zones: NamedText;
  readonly trip: Trip;
  readonly route: NamedText | null;
  readonly files: readonly NamedBytes[] | null;
  readonly language: Language;
  /** What was done on the ice. */
  readonly ice?: Ice;
}

/** The place of the work on one page. */
export class Keep {
  /** The last write came to nothing: there is no room, or it is not allowed. */
  private failed = false;

  private constructor(
    private readonly base: IDBDatabase | null,
    private readonly key: string,
    private readonly start: Held,
  ) {}

  /** Opens it; where the browser keeps nothing, now or any more, `works` is false. */
  static async open(given: Given, start: Held): Promise<Keep> {
    return new Keep(await database(), keyOf(given), start);
  }

  get works(): boolean {
    return this.base !== null && !this.failed;
  }

  /** Keeps the work by `now` as the page goes out of sight; where nothing can be kept the browser asks before it leaves what was changed. */
  guard(changed: () => boolean, now: () => void): void {
    window.addEventListener("beforeunload", (event) => {
      if (!this.works && changed()) event.preventDefault();
    });
    document.addEventListener("visibilitychange", () => document.hidden && now());
  }

  /** What was kept, and the language; null where nothing was. */
  async read(): Promise<{ state: Held; language: Language } | null> {
    const work = (await this.ask("readonly", (table) => table.get(this.key))) as Work | undefined;
    if (!work) return null;
    const read = readAny(work.zones.text);
    const files = work.files ?? this.start.beside.files;
    const beside = { route: work.route, zonesName: work.zones.name, around: read.around, files };
    const state = { zones: read.zones, trip: work.trip, beside };
    if (work.ice) onIce(state, work.ice);
    return { state, language: work.language };
  }

  /** Keeps a state; the one that the page was given needs no keeping. */
  async write(state: State, language: Language): Promise<void> {
    const { route, zonesName, files } = besideOf(state);
    const given = files === this.start.beside.files;
    const zones = { name: zonesName, text: zonesText(state) };
    const work: Work = { zones, trip: state.trip, route, files: given ? null : files, language, ice: iceOf(state) };
    await this.ask("readwrite", (table) => table.put(work, this.key));
  }

  /** Forgets it. */
  async drop(): Promise<void> {
    await this.ask("readwrite", (table) => table.delete(this.key));
  }

  private ask(mode: IDBTransactionMode, request: (table: IDBObjectStore) => IDBRequest): Promise<unknown> {
    const { base } = this;
    if (!base) return Promise.resolve(undefined);
    return new Promise((done) => {
      const end = (failed: boolean, result?: unknown) => {
        if (mode === "readwrite") this.failed = failed;
        done(result);
      };
      try {
        const deal = base.transaction(TABLE, mode);
        const asked = request(deal.objectStore(TABLE));
        deal.oncomplete = () => end(false, asked.result);
        deal.onabort = () => end(true);
      } catch {
        end(true);
      }
    });
  }
}

function database(): Promise<IDBDatabase | null> {
  return new Promise((done) => {
    try {
      const asked = indexedDB.open(BASE, 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore(TABLE);
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => done(null);
      asked.onblocked = () => done(null);
    } catch {
      done(null);
    }
  });
}

/** Tells pages apart by what they were given (FNV-1a over it, in two halves). */
function keyOf(given: Given): string {
  const text = JSON.stringify([given.route, given.zones, given.trip, given.files]);
  let [one, two] = [0x811c9dc5, 0x9dc5811c];
  for (let i = 0; i < text.length; i++) {
    const sign = text.charCodeAt(i);
    one = Math.imul(one ^ sign, 0x01000193);
    two = Math.imul(two ^ (sign + i), 0x01000193);
  }
  return [text.length, one >>> 0, two >>> 0].join("-");
}
