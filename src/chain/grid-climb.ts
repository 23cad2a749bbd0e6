/** Takes a running field from one grid to another, as its ladder asks: laid a little at a time, so that the picture goes on. */
import type { FieldShape } from "../sim/flow-field/flow-field.ts";
import type { FieldSession } from "../sim/flow-field/index.ts";
import type { SoundSteps } from "../sim/flow-solver/flow-solver.ts";
import { gridLadder } from "./grid-ladder.ts";

/** s of wall clock between two slices that go into another grid */
const LAYING = 0.006;

/** What a running field has just done: s of blood, the s of wall clock that took, and how it shares its steps. */
interface Done {
  readonly passed: number;
  readonly busy: number;
  readonly soundSteps: SoundSteps | undefined;
}

/** @param onGrid hears from how many cells across the field has gone to how many, and what shape that is */
export function gridClimb(
  clock: () => number,
  rungs: readonly number[] | undefined,
  onGrid: (before: number, now: number, shape: FieldShape) => void,
) {
  const ladder = gridLadder(rungs);
  let laying: { readonly part: () => boolean; readonly cellsAcross: number } | undefined;
  return {
    get cellsAcross() {
      return ladder.cellsAcross;
    },
    ask: ladder.ask,
    begin(cellsAcross: number, again: boolean) {
      laying = undefined;
      return ladder.begin(cellsAcross, again);
    },
    changed() {
      laying = undefined;
      ladder.changed();
    },
    /** Judges what was done, or lays a little: whether another grid is under way, or is there now. */
    work(field: FieldSession | null, { passed, busy, soundSteps }: Done): boolean {
      if (!field) return false;
      if (!laying) {
        const cellsAcross = passed > 0 ? ladder.note(passed, busy) : undefined;
        if (cellsAcross === undefined) return false;
        laying = { part: field.refine({ cellsAcross, ...(soundSteps && { soundSteps }) }), cellsAcross };
      }
      const { part, cellsAcross } = laying;
      const begun = clock();
      let laid = part();
      while (!laid && clock() - begun < LAYING) laid = part();
      if (!laid) return true;
      laying = undefined;
      onGrid(ladder.cellsAcross, cellsAcross, field.shape());
      ladder.laid(cellsAcross);
      return true;
    },
  };
}
