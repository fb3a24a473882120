/** The snow that falls are reckoned on, in a line: a plan that fits on one snow may not on another. */

import type { Desk } from "./desk";
import { make } from "./dom";
import type { TripDoor } from "./door";
import type { State } from "./model";

/** What a name of a snow means; nothing as long as that is not known. */
export const snowMeans = (name: string, door: TripDoor | null): string => door?.terms["snow"]?.find((term) => term.name === name)?.means ?? "";

/** As the trip says, else as the rules have it; nothing as long as these are not known. */
export function countedOn({ trip }: State, door: TripDoor | null, { words }: Desk): HTMLElement | null {
  const means = door && snowMeans(trip.snow ?? door.snow, door);
  return means ? make("p", { class: "app-fine" }, `${words("draw-snow-counts")} ${means.replace(/\.$/, "")}. ${words("draw-snow-else")}`) : null;
}
