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

/** Hands errands to the worker and their answers back. */
export class Engine {
  private readonly worker: Worker;
  private readonly waiting = new Map<number, { done: (came: Came) => void; failed: (error: Error) => void }>();
  private count = 0;
  private lying = new Map<string, object>();
  /** Done when the program can be called. */
  readonly ready: Promise<Came>;

  /** Takes the text of the worker and the packed program. */
  constructor(text: string, core: string) {
    this.worker = new Worker(URL.createObjectURL(new Blob([text], { type: "text/javascript" })));
    this.worker.onmessage = ({ data }: MessageEvent<Reply>) => this.take(data);
    this.worker.onerror = (event) => this.fail(event.message);
    this.ready = this.order({ core });
  }

  /** Runs an errand. */
  run(errand: Errand): Promise<Came> {
    return this.order(errand);
  }

  /** Runs an errand over the files of a state: both orders are given in one breath, so that no other files come between. */
  async over(state: State, errand: Errand): Promise<Came> {
    const { route, files } = besideOf(state);
    const [, came] = await Promise.all([this.lay(route, files), this.order(errand)]);
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

  private order(order: Unnumbered<Order>): Promise<Came> {
    const id = ++this.count;
    return new Promise((done, failed) => {
      this.waiting.set(id, { done, failed });
      this.worker.postMessage({ id, ...order });
    });
  }

  private take(reply: Reply): void {
    const who = this.waiting.get(reply.id);
    this.waiting.delete(reply.id);
    if (reply.failed === undefined) who?.done(reply);
    else who?.failed(new Error(reply.failed));
  }

  private fail(message: string): void {
    for (const { failed } of this.waiting.values()) failed(new Error(message));
    this.waiting.clear();
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
