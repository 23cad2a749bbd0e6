/** Where blood that came in through one opening goes out, counted on parcels that travel with the changing flow. */
import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import { entering, follow, onFace, type Place, UNDER_WAY } from "./pathlines.ts";

/** Parcels that enter in one period, all openings together. */
const IN_A_PERIOD = 240;
/** Most that travel at once: beyond it those caught in eddies are dropped, oldest first. */
const MAX = 1200;
/** Spreads positions evenly, however many there are: the golden ratio. */
const SPREAD = 0.6180339887498949;

interface Parcel extends Place {
  readonly from: number;
}

/** from opening -> to opening -> number of parcels */
export type Passed = Record<string, Record<string, number>>;

/** Adds `count` parcels to `passed`, in place. */
export function addPassed(passed: Passed, from: string, to: string, count: number): void {
  passed[from] = { ...passed[from], [to]: (passed[from]?.[to] ?? 0) + count };
}

/** Parcels under way between the openings. */
export interface Passage {
  /** Moves all parcels for `seconds` in the present flow, and lets new ones enter in proportion to inflow. `period` (s) sets how many. */
  advance(seconds: number, period: number): void;
  /** True once some parcels of every opening have left: before that no share is known. */
  known(): boolean;
  /** What has left since this was last called. */
  taken(): Passed;
}

/** Starts without parcels; each one stands for an equal part of the inflow. */
export function trackPassage(solver: FlowSolver): Passage {
  const { openings } = solver;
  /** parcels that each opening owes, a fraction of one */
  const owed = openings.map(() => 0);
  /** solver flow that enters through all openings, followed over a period */
  let usual = 0;
  let place = 0.5;
  let travelling: Parcel[] = [];
  let passed: Passed = {};
  const entered = new Set<number>();
  const left = new Set<number>();

  const count = (from: number, to: number) => {
    left.add(from);
    addPassed(passed, openings[from]!.opening.name, openings[to]!.opening.name, 1);
  };

  const enter = (from: number, flows: readonly number[], total: number) => {
    place = (place + SPREAD) % 1;
    let rest = place * total;
    const n = flows.findIndex((flow) => {
      rest -= flow;
      return rest < 0;
    });
    if (n < 0) return;
    entered.add(from);
    travelling.push({ ...onFace(openings[from]!, n, 1 + rest / flows[n]!), from });
  };

  return {
    advance(seconds, period) {
      travelling = travelling.filter((parcel) => {
        const end = follow(solver, parcel, 1, seconds);
        if (end >= 0) count(parcel.from, end);
        return end === UNDER_WAY;
      });
      const inflows = openings.map((opening) => entering(solver, opening));
      const totals = inflows.map(({ flows, takesIn }) =>
        takesIn ? flows.reduce((sum, flow) => sum + flow, 0) : 0,
      );
      const all = totals.reduce((sum, flow) => sum + flow, 0);
      usual += (all - usual) * (usual === 0 ? 1 : Math.min(1, seconds / period));
      if (usual <= 0) return;
      totals.forEach((total, from) => {
        owed[from]! += (IN_A_PERIOD * (seconds / period) * total) / usual;
        for (; owed[from]! >= 1; owed[from]!--) enter(from, inflows[from]!.flows, total);
      });
      if (travelling.length > MAX) travelling = travelling.slice(-MAX);
    },
    known: () => [...entered].every((from) => left.has(from)),
    taken() {
      const before = passed;
      passed = {};
      return before;
    },
  };
}
