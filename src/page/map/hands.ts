/** Fingers and mouse on the map, handed to the tool that is out. Two fingers move the map and never draw. */

import type MapBrowserEvent from "ol/MapBrowserEvent";
import PointerInteraction from "ol/interaction/Pointer";
import type { Tool, Touch } from "./tools/tool";

/** So near counts as on it, pixels: a finger, a mouse. */
const REACH = { touch: 22, mouse: 9 };

export class Hands extends PointerInteraction {
  /** More than one finger since the first one came down. */
  private several = false;
  private holds = false;

  constructor(private readonly tool: () => Tool, private readonly tapped: (touch: Touch) => void, private readonly hovered: (touch: Touch | null) => void) {
    super();
  }

  override handleEvent(event: MapBrowserEvent): boolean {
    const fingers = event.activePointers?.length ?? 0;
    if (event.type === "pointerdown" && fingers <= 1) this.several = false;
    if (fingers > 1) this.several = true;
    if (event.type === "click" && !this.several) this.tapped(touchOf(event));
    if (event.type === "dblclick" && (this.tool().begun || this.tool().name !== "pick")) return false;
    return super.handleEvent(event);
  }

  override handleDownEvent(event: MapBrowserEvent): boolean {
    this.holds = !this.several && (this.tool().press?.(touchOf(event)) ?? false);
    return this.holds;
  }

  override handleDragEvent(event: MapBrowserEvent): void {
    if (this.several) this.letGo();
    if (this.holds) this.tool().drag?.(touchOf(event));
  }

  override handleUpEvent(): boolean {
    this.letGo();
    return false;
  }

  private letGo(): void {
    if (this.holds) this.tool().release?.();
    this.holds = false;
  }

  override handleMoveEvent(event: MapBrowserEvent): void {
    const touch = touchOf(event);
    if (isFinger(event)) return;
    this.hovered(touch);
    this.tool().hover?.(touch);
  }
}

function isFinger(event: MapBrowserEvent): boolean {
  const { originalEvent } = event;
  return originalEvent instanceof PointerEvent && originalEvent.pointerType === "touch";
}

function touchOf(event: MapBrowserEvent): Touch {
  const [x = 0, y = 0] = event.coordinate;
  const resolution = event.map.getView().getResolution() ?? 1;
  const { originalEvent } = event;
  const free = originalEvent instanceof MouseEvent && originalEvent.altKey;
  return { at: [x, y], reach: resolution * (isFinger(event) ? REACH.touch : REACH.mouse), free };
}
