/** What is found at one point of a pane's blood: from the very frame that is drawn. */
import type { Pane } from "../../chain/frame.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { bilinear } from "../../sim/flow-field/bilinear.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { distanceAt } from "../../sim/tracers/tracer-plane.ts";
import { ORIGINS } from "../../sim/tracers/tracers.ts";
import { pressureIn } from "../layers/labels.ts";
import { elementAt } from "../layers/spots.ts";

export interface ProbeReading {
  /** m/s at this moment, in the computed plane */
  readonly speed: number;
  /** tracers around the point, by ORIGINS */
  readonly counts: readonly number[];
  /** The part of the pathway that the point lies in; null between parts. */
  readonly element: string | null;
  /** mmHg: the circulation's answer for that part. No pressure is read from the plane, which loses too little. */
  readonly pressure: number | null;
}

/** mm around the point in which tracers count */
const NEAR = 3;

/** Null outside the blood, and where no plane is computed. */
export function probeAt(pane: Pane, at: Point): ProbeReading | null {
  const { field, shape, geometry, circulation, tracers } = pane;
  if (!field || !shape || !geometry || distanceAt(shape, ...at) >= 0) return null;
  const [x, y] = [(at[0] - shape.originX) / shape.dx, (at[1] - shape.originY) / shape.dx];
  const element = elementAt(geometry, at);
  const counts = ORIGINS.map(() => 0);
  if (tracers)
    for (let n = 0; n < tracers.count; n++) {
      const away = Math.hypot(
        entryAt(tracers.position, 2 * n) - at[0],
        entryAt(tracers.position, 2 * n + 1) - at[1],
      );
      const origin = entryAt(tracers.origin, n);
      if (away < NEAR) counts[origin] = entryAt(counts, origin) + 1;
    }
  return {
    speed: Math.hypot(bilinear(field.u, shape.nx, x, y), bilinear(field.v, shape.nx, x, y)),
    counts,
    element,
    pressure: (circulation && element !== null ? pressureIn(element, circulation) : null) ?? null,
  };
}

/** Fewer tracers tell nothing about a share. */
const ENOUGH = 12;
/** Part of the earlier count that a new look keeps: single tracers then make no number jump. */
const KEEP = 0.8;

export interface OriginShare {
  readonly origin: string;
  /** percent */
  readonly share: number;
}

/** Percent below which an origin is not worth a word. */
const MIN_SHARE = 0.5;

/** Where the blood comes from, over the last looks at one point; null while too few tracers have passed. */
export function originShares(): {
  add(counts: readonly number[]): readonly OriginShare[] | null;
  forget(): void;
} {
  let sums: readonly number[] = ORIGINS.map(() => 0);
  return {
    add(counts) {
      sums = sums.map((sum, i) => KEEP * sum + entryAt(counts, i));
      const all = sums.reduce((total, sum) => total + sum, 0);
      if (all < ENOUGH) return null;
      return ORIGINS.map((origin, i) => ({ origin, share: (100 * entryAt(sums, i)) / all })).filter(
        ({ share }) => share >= MIN_SHARE,
      );
    },
    forget() {
      sums = ORIGINS.map(() => 0);
    },
  };
}
