/** The snow that falls are reckoned on, in a line: a plan that fits on one snow may not on another. */

import type { Desk } from "./desk";
import { make } from "./dom";
import type { TripDoor } from "./door";
import type { State } from "./model";

/** As the trip says, else as the rules have it; nothing as long as these are not known. */
export function countedOn({ trip }: State, door: TripDoor | null, { words }: Desk): HTMLElement | null {
  const means = door?.terms["snow"]?.find(({ name }) => name === (trip.snow ?? door.snow))?.means;
  return means ? make("p", { class: "app-fine" }, `${words("draw-snow-counts")} ${means.replace(/\.$/, "")}. ${words("draw-snow-else")}`) : null;
}
