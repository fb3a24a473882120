/** The program as the page calls it: in a worker, newest wins, nothing queues. */

import type { Errand } from "./calls";
import type { NamedBytes, NamedText } from "./given";
import { besideOf } from "./held";
import type { State } from "./model";
import type { Order, Reply } from "./worker";

/** The exit code of a program that broke off. */
export const BROKEN = 134;

/** What an errand came to. */
export interface Came {
  /** The exit code as the command line promises it. */
  readonly code: number;
  readonly out: Uint8Array;
  readonly err: string;
  readonly took_ms: number;
}

type Unnumbered<T> = T extends unknown ? Omit<T, "id"> : never;

/** The worker broke off, so that this comes to nothing. */
export class Gone extends Error {}

interface Waiting {
  /** What kind of errand it is; empty where it is none. */
  readonly kind: string;
  readonly done: (came: Came) => void;
  readonly failed: (error: Error) => void;
}

/** Errands that ask for the same, whatever for. */
const kindOf = ({ calls }: Errand): string => calls.at(-1)?.args.slice(0, 2).join(" ") ?? "";

/**
 * Hands errands to the worker and their answers back. Where it breaks off another one is begun, but neither twice in a
 * row nor twice in the same kind of errand.
 */
export class Engine {
  private worker: Worker | null = null;
  private readonly waiting = new Map<number, Waiting>();
  private count = 0;
  private lying = new Map<string, object>();
  /** An errand was done since one last broke off. */
  private works = true;
  /** The kinds of errands in which one broke off, and none of which was done since. */
  private readonly deadly = new Set<string>();
  private opened: Promise<Came>;

  /** Takes the text of the worker, the packed program, and who is told when it broke off: whether another one is begun. */
  constructor(private readonly text: string, private readonly core: string, private readonly broke: (again: boolean) => void) {
    this.opened = this.start();
  }

  /** Done when the program can be called. */
  get ready(): Promise<Came> {
    const { opened } = this;
    return opened.catch((error: unknown) => (opened === this.opened ? Promise.reject(error) : this.ready));
  }

  /** There is no program any more. */
  get gone(): boolean {
    return this.worker === null;
  }

  /** Runs an errand. */
  async run(errand: Errand): Promise<Came> {
    const came = await this.order(errand);
    this.works = true;
    this.deadly.delete(kindOf(errand));
    return came;
  }

  /** Runs an errand over the files of a state: both orders are given in one breath, so that no other files come between. */
  async over(state: State, errand: Errand): Promise<Came> {
    const { route, files } = besideOf(state);
    const [, came] = await Promise.all([this.lay(route, files), this.run(errand)]);
    return came;
  }

  /** Lays out files for all errands to come, in place of those that lay there. Only what is new is handed over. */
  private async lay(route: NamedText | null, files: readonly NamedBytes[]): Promise<void> {
    const now = new Map<string, object>(files.map((file) => [file.name, file.bytes]));
    if (route) now.set(route.name, route);
    const fresh = (name: string) => this.lying.get(name) !== now.get(name);
    const put = files.filter((file) => fresh(file.name)).map((file) => [file.name, file.bytes] as const);
    if (route && fresh(route.name)) put.push([route.name, new TextEncoder().encode(route.text)]);
    const drop = [...this.lying.keys()].filter((name) => !now.has(name));
    this.lying = now;
    if (put.length + drop.length > 0) await this.order({ put, drop });
  }

  private start(): Promise<Came> {
    const worker = new Worker(URL.createObjectURL(new Blob([this.text], { type: "text/javascript" })));
    // What comes late from one that broke off is nothing any more.
    worker.onmessage = ({ data }: MessageEvent<Reply>) => worker === this.worker && this.take(data);
    worker.onerror = (event) => worker === this.worker && this.fail(event.message);
    [this.worker, this.lying] = [worker, new Map()];
    return this.order({ core: this.core });
  }

  private order(order: Unnumbered<Order>): Promise<Came> {
    const { worker } = this;
    if (!worker) return Promise.reject(new Gone());
    const id = ++this.count;
    const kind = "calls" in order ? kindOf(order) : "";
    return new Promise((done, failed) => {
      this.waiting.set(id, { kind, done, failed });
      worker.postMessage({ id, ...order });
    });
  }

  private take(reply: Reply): void {
    const who = this.waiting.get(reply.id);
    this.waiting.delete(reply.id);
    if (reply.failed === undefined) who?.done(reply);
    else who?.failed(new Error(reply.failed));
  }

  private fail(message: string): void {
    const orphans = [...this.waiting.values()];
    this.waiting.clear();
    this.worker?.terminate();
    this.worker = null;
    // They are done in their order: it broke off in the first.
    const kind = orphans[0]?.kind ?? "";
    const again = this.works && !this.deadly.has(kind);
    this.works = false;
    if (kind) this.deadly.add(kind);
    if (again) this.opened = this.start();
    for (const { failed } of orphans) failed(new Gone(message));
    this.broke(again);
  }
}

/** Does a work for the newest of what is wanted: while one is worked at, only the last of the others waits. */
export class Newest<Wanted> {
  private busy = false;
  private next: { wanted: Wanted } | null = null;

  constructor(private readonly work: (wanted: Wanted) => Promise<void>) {}

  want(wanted: Wanted): void {
    this.next = { wanted };
    if (!this.busy) void this.go();
  }

  private async go(): Promise<void> {
    this.busy = true;
    try {
      while (this.next) {
        const { wanted } = this.next;
        this.next = null;
        await this.work(wanted);
      }
    } finally {
      this.busy = false;
    }
  }
}
