/** Short slices of a field's work, and how fast they are. */
import type { FieldSession } from "../sim/flow-field/index.ts";
import { costs } from "./grid-ladder.ts";

/** s of wall clock computed without listening */
const SLICE = 0.012;
/** How quickly the measured cost of a step follows, per slice. */
const FOLLOW = 0.1;
/** s of blood, about a breath, over which the ability is a mean: while blood is fast it takes twice the steps, and the field may lag a little meanwhile */
const BREATH = 2.5;

/** Steps done, and the s of blood time and of wall clock that they took. */
export interface Slice {
  readonly steps: number;
  readonly passed: number;
  readonly spent: number;
}

/** Computes in slices of the clock, and measures what the processor can do. */
export function slices(clock: () => number) {
  /** s of blood and of wall clock, what is older than {@link BREATH} fading */
  let recent = { passed: 0, spent: 0 };
  /** s of wall clock for one step */
  let stepCost: number | undefined;
  return {
    /** blood seconds in a wall-clock second of computing */
    get ability(): number | undefined {
      return recent.spent > 0 ? recent.passed / recent.spent : undefined;
    },
    /** The same flow goes on, on a grid of `now` cells across instead of `before`; without that another flow begins, of whose cost nothing is known. */
    regrid(before: number | undefined, now: number) {
      recent = before ? { ...recent, passed: recent.passed * costs(before, now) } : { passed: 0, spent: 0 };
      stepCost = before && stepCost ? stepCost * (now / before) ** 2 : undefined;
    },
    /** One slice towards `wanted` s of blood time. */
    advance(field: FieldSession, wanted: number): Slice {
      const begin = clock();
      let steps = 0;
      let passed = 0;
      // A single step first shows how many fit into a quarter of the slice.
      const fit = stepCost ? Math.max(1, Math.floor(SLICE / 4 / stepCost)) : 1;
      while (passed < wanted && clock() - begin < SLICE) {
        const count = Math.min(fit, Math.max(1, Math.ceil((wanted - passed) / field.step)));
        passed += field.advance(count);
        steps += count;
      }
      return { steps, passed, spent: clock() - begin };
    },
    note(field: FieldSession, { steps, passed, spent }: Slice) {
      if (spent <= 0) return;
      field.timed(steps, spent);
      stepCost = follow(stepCost, spent / steps);
      const left = Math.exp(-passed / BREATH);
      recent = { passed: left * recent.passed + passed, spent: left * recent.spent + spent };
    },
  };
}

const follow = (before: number | undefined, now: number): number =>
  before === undefined ? now : before + FOLLOW * (now - before);
