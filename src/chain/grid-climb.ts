/**
 * Moves a running field between grids: from its coarse start to the grid that it belongs on, later to the one that its ladder chooses. A
 * grid is laid a little at a time, so that the picture does not stop meanwhile.
 */
import { present } from "../sim/checked/present.ts";
import type { FieldShape } from "../sim/flow-field/flow-field.ts";
import type { FieldSession } from "../sim/flow-field/index.ts";
import { gridLadder, RUNGS } from "./grid-ladder.ts";
import type { GridChoice } from "./worker-messages.ts";

/** s of wall clock between two slices that go into another grid; and into the one that a coarse grid stands in for, whose slices are short */
const LAYING = 0.006;
const AWAITED = 0.02;
/** s of wall clock that other walls stay on the coarsest grid: while a handle is dragged the next ones come sooner */
const DRAGGED = 0.15;

/** @param onGrid hears from how many cells across the field has gone to how many, and what shape that is */
export function gridClimb(
  clock: () => number,
  rungs = RUNGS,
  onGrid: (before: number, now: number, shape: FieldShape) => void,
) {
  const ladder = gridLadder(rungs);
  /** count across of the grid that runs now, and of the one to be reached */
  let runs = 0;
  let aim = 0;
  /** s of wall clock before which no other grid is laid, known once the field has been seen */
  let wait = 0;
  let from: number | undefined;
  let part: (() => boolean) | undefined;

  return {
    /** Count across of the grid that the field belongs on; what runs may still be coarser. */
    get cellsAcross() {
      return ladder.cellsAcross;
    },
    get runs() {
      return runs;
    },
    ask: ladder.ask,
    /** Other walls, of the same pathway (`again`) or not: so many cells across they begin on. */
    begin(next: GridChoice, again: boolean): number {
      part = undefined;
      from = undefined;
      aim = ladder.begin(next.cellsAcross, again, next.finest);
      runs = Math.min(aim, again ? present(rungs[0]) : (next.lead?.cellsAcross ?? aim));
      wait = again ? DRAGGED : 0;
      return runs;
    },
    /** A moment of the walls that are there now has gone to the page. */
    seen() {
      from ??= clock() + wait;
    },
    /** What flows in has changed: a grid that was not yet run is thought of anew. */
    changed() {
      ladder.changed();
      if (aim === ladder.cellsAcross) return;
      aim = runs;
      part = undefined;
    },
    /** `passed` s of blood have taken `busy` s. */
    judge(passed: number, busy: number) {
      if (aim === runs && passed > 0) aim = ladder.note(passed, busy) ?? aim;
    },
    /** Lays a little, where there is anything to lay: whether another grid is under way, or is there now. */
    lay(field: FieldSession): boolean {
      if (aim === runs || from === undefined || clock() < from) return false;
      part ??= field.refine(aim);
      const until = clock() + (runs < ladder.cellsAcross ? AWAITED : LAYING);
      let laid = part();
      while (!laid && clock() < until) laid = part();
      if (!laid) return true;
      part = undefined;
      onGrid(runs, aim, field.shape());
      runs = aim;
      ladder.laid(aim);
      return true;
    },
  };
}
