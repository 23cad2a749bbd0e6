/** When the chest follows walls that have been moved: once they rest, and blood has been seen to flow between them. */
import type { Pane } from "../../chain/frame.ts";

/** s without other walls: a wall that is being dragged is another pathway at each drawing. */
const REST = 0.2;
/** s after which the chest waits for blood no longer */
const PATIENCE = 1;

export function restingWalls() {
  let walls: Pane["geometry"] = null;
  let calm = 0;
  /** what blood was drawn in last, and when the walls were moved */
  let drawn: Pane["shape"] = null;
  let old: Pane["shape"] = null;
  return {
    /** @param elapsed s since the last drawing; a picture that stands `still` shows no blood that moves */
    rest({ geometry, shape }: Pick<Pane, "geometry" | "shape">, still: boolean, elapsed: number): boolean {
      if (geometry === walls) calm += elapsed;
      else [calm, old] = [0, drawn];
      const flows = still || drawn !== old || calm >= PATIENCE;
      walls = geometry;
      drawn = shape;
      return calm >= REST && flows;
    },
  };
}
