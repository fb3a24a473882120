/** The program in a worker: takes errands one at a time and answers each. */

import { XzReadableStream } from "xz-decompress";
import type { Errand } from "./calls";
import { Core } from "./core";
import { fromLetters } from "./letters";

/** What a worker is told. */
export type Order =
  | { readonly id: number; readonly core: string }
  | { readonly id: number; readonly put: readonly (readonly [string, Uint8Array])[]; readonly drop: readonly string[] }
  | ({ readonly id: number } & Errand);

/** What it answers; `failed` where it could not do what it was told. */
export interface Reply {
  readonly id: number;
  readonly code: number;
  readonly out: Uint8Array;
  readonly err: string;
  readonly took_ms: number;
  readonly failed?: string;
}

const files = new Map<string, Uint8Array>();
let core: Core | undefined;

const NONE = { code: 0, out: new Uint8Array(), err: "" };

async function open(packed: string): Promise<typeof NONE> {
  const bytes = new Blob([fromLetters(packed)]).stream();
  const plain = new XzReadableStream(bytes as ReadableStream<Uint8Array>);
  core = await Core.open(await new Response(plain as ReadableStream<Uint8Array<ArrayBuffer>>).arrayBuffer());
  return NONE;
}

function run(errand: Errand): typeof NONE {
  if (!core) throw new Error("no program yet");
  const encoder = new TextEncoder();
  const here = new Map(files);
  for (const [name, holds] of errand.files) here.set(name, typeof holds === "string" ? encoder.encode(holds) : holds);
  let answer = NONE;
  for (const call of errand.calls) {
    answer = core.run([...call.args], here) as typeof NONE;
    if (call.into === undefined) continue;
    if (answer.code !== 0) break;
    here.set(call.into, answer.out);
  }
  return answer;
}

async function obey(order: Order): Promise<typeof NONE> {
  if ("core" in order) return open(order.core);
  if ("calls" in order) return run(order);
  for (const name of order.drop) files.delete(name);
  for (const [name, bytes] of order.put) files.set(name, bytes);
  return NONE;
}

/** Orders are obeyed one after the other, in their order. */
let last: Promise<void> = Promise.resolve();

self.onmessage = ({ data }: MessageEvent<Order>) => {
  last = last.then(async () => {
    const start = performance.now();
    try {
      const answer = await obey(data);
      const reply: Reply = { id: data.id, ...answer, took_ms: performance.now() - start };
      self.postMessage(reply);
    } catch (error) {
      const failed = error instanceof Error ? error.message : String(error);
      self.postMessage({ id: data.id, ...NONE, took_ms: performance.now() - start, failed } satisfies Reply);
    }
  });
};
