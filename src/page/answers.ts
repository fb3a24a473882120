/** What the program printed, read. */

import { make } from "./dom";
import type { Panel } from "./door";
import { BROKEN, type Came, Gone } from "./engine";
import type { Words } from "./words";

/** What was printed as JSON; null where the program broke off or printed nothing. */
export function answer<Shape>(came: Came): Shape | null {
  try {
    return came.code === BROKEN ? null : (JSON.parse(new TextDecoder().decode(came.out)) as Shape);
  } catch {
    return null;
  }
}

/** What an error says; where the program is gone, that. */
export const said = (error: unknown, words: Words): string =>
  error instanceof Gone ? words("draw-broke-off") : error instanceof Error ? error.message : String(error);

/** That the program broke off, in place of a plan; `gone` where there is none any more. */
export function broken(came: Came, gone: boolean, words: Words): Panel {
  const text = make("p", {}, gone ? words("draw-broke-off") : `${words("draw-broken")} ${came.err}`);
  return { faults: [{ code: "broken", file: null, feature: null, property: null, says: text.innerHTML, hint: null }] };
}
