/** The moment of the field that a still picture shows: taken again a few times, until the flow has settled. */

import { entryAt } from "../sim/checked/present.ts";
import type { FlowField } from "../sim/flow-field/flow-field.ts";

/** s of field time at which a still picture takes the field again, until it has settled */
const LOOKS = [0, 1, 4];

export interface HeldMoment {
  /** Copied, since the worker's arrays go back to it; the same record until the next look. */
  of(field: FlowField): FlowField;
  /** Blood moves again, or other walls have come. */
  forget(): void;
}

export function heldMoment(): HeldMoment {
  let held: FlowField | null = null;
  let looks = 0;
  return {
    of(field) {
      const due = field.readings.settled || field.time >= (LOOKS[looks] ?? Number.POSITIVE_INFINITY);
      if (held && (held.readings.settled || !due)) return held;
      while (looks < LOOKS.length && entryAt(LOOKS, looks) <= field.time) looks++;
      held = { ...field, u: field.u.slice(), v: field.v.slice(), pressure: field.pressure.slice() };
      return held;
    },
    forget() {
      held = null;
      looks = 0;
    },
  };
}
