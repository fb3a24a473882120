/** All tools of a map, by name. */

import { CutTool, DrawTool, HoleTool } from "./drawing";
import { PaintTool } from "./painting";
import { JoinTool, OutlineTool, PickTool } from "./picking";
import type { Bench, Tool, ToolName } from "./tool";

/** The needle has handles of its own; a tap beside them picks. */
class StrikeTool extends PickTool {
  override readonly name: ToolName = "strike";

  override hint(): string {
    return "draw-hint-strike";
  }

  override press(): boolean {
    return false;
  }
}

export function toolsOf(bench: Bench): ReadonlyMap<ToolName, Tool> {
  const tools: Tool[] = [
    new PickTool(bench),
    new DrawTool(bench),
    new PaintTool(bench),
    new OutlineTool(bench),
    new CutTool(bench),
    new HoleTool(bench),
    new JoinTool(bench),
    new StrikeTool(bench),
  ];
  return new Map(tools.map((tool) => [tool.name, tool]));
}
