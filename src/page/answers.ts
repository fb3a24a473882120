/** What the program printed, read. */

import { make } from "./dom";
import type { Panel } from "./door";
import { BROKEN, type Came } from "./engine";
import type { Words } from "./words";

/** What was printed as JSON; null where the program broke off or printed nothing. */
export function answer<Shape>(came: Came): Shape | null {
  try {
    return came.code === BROKEN ? null : (JSON.parse(new TextDecoder().decode(came.out)) as Shape);
  } catch {
    return null;
  }
}

/** That the program broke off, in place of a plan. */
export function broken(came: Came, words: Words): Panel {
  const text = make("p", {}, `${words("draw-broken")} ${came.err}`);
  return { faults: [{ code: "broken", file: null, feature: null, property: null, says: text.innerHTML, hint: null }] };
}
