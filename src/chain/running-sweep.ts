/** One quantity changed step by step, everything else held: planned from the scene state, solved beside the panes, filled in as answers come. */
import { type ReadonlySignal, signal } from "@preact/signals";
import { entryAt } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import { sewnLength } from "../sim/geometry/pathways/sizes.ts";
import { bodyAt, type CirculationRequest, type Stage } from "../sim/parameters/request.ts";
import { paneRequests, type SceneState } from "../state/scene-state.ts";

export interface SweepPoint {
  /** value of what is changed, in its own unit */
  readonly at: number;
  readonly request: CirculationRequest;
  /** null until solved, and when it does not settle */
  readonly circulation: Circulation | null;
}

export interface SweepCurve {
  /** pane's index as "0", "1", "2", or "reference" for the two-ventricle run with the same drive */
  readonly name: string;
  readonly points: readonly SweepPoint[];
}

export interface Sweep {
  /** parameter name, or "bsa" for a body that grows */
  readonly over: string;
  readonly curves: readonly SweepCurve[];
  /** 0..1 of the points answered */
  readonly progress: number;
}

/** Ages (years) of the growing body, and efforts (MET) of the exercise. */
const AGES = [5, 7, 9, 11, 13, 15, 17, 19] as const;
export const EFFORTS = [1, 2, 3, 4, 5, 6, 7, 8] as const;

/** A curve of unanswered points for one pane's request. */
export function curveOver(
  name: string,
  request: CirculationRequest,
  parameter: string,
  values: readonly number[],
): SweepCurve {
  return {
    name,
    points: values.map((at) => ({
      at,
      request: { ...request, set: { ...request.set, [parameter]: at } },
      circulation: null,
    })),
  };
}

/** A conduit of fabric keeps the length with which it was sewn in, at the first age; the vein beneath it grows. */
const grownAround = (request: CirculationRequest): CirculationRequest =>
  request.stage === "extracardiac"
    ? { ...request, set: { ...request.set, conduitLength: sewnLength(request, bodyAt(AGES[0])) } }
    : request;

/** What the scene asks for, unanswered; null for scenes that show no sweep. */
export function planSweep(state: SceneState): Sweep | null {
  const panes = paneRequests(state);
  if (state.scene === "growth")
    return {
      over: "bsa",
      progress: 0,
      curves: panes.map((request, i) => ({
        name: String(i),
        points: AGES.map(bodyAt).map((body) => ({
          at: body.bsa,
          request: grownAround({ ...request, body }),
          circulation: null,
        })),
      })),
    };
  if (state.scene !== "exercise") return null;
  const reference: Stage = "two-ventricle";
  const curves = panes.map((request, i) => curveOver(String(i), request, "metabolicEquivalents", EFFORTS));
  const withReference = panes.some(({ stage }) => stage === reference)
    ? curves
    : [...curves, curveOver("reference", referenceOf(entryAt(panes, 0)), "metabolicEquivalents", EFFORTS)];
  return { over: "metabolicEquivalents", progress: 0, curves: withReference };
}

/** The same body and breathing with two ventricles; what only a pathway or a pane's own tuning has is left out. */
function referenceOf({ kind, body, volumeRule, set }: CirculationRequest): CirculationRequest {
  const { breathing } = set;
  return {
    kind,
    stage: "two-ventricle",
    body,
    volumeRule,
    set: breathing === undefined ? {} : { breathing },
  };
}

/** Ends first, then the middles of what is left, so that the curve's shape shows early. */
export function coarseFirst(count: number): readonly number[] {
  const order: number[] = [];
  const taken = new Set<number>();
  const take = (i: number) => {
    if (!taken.has(i)) order.push(i);
    taken.add(i);
  };
  if (count > 0) take(0);
  if (count > 1) take(count - 1);
  for (let parts = 2; order.length < count; parts *= 2)
    for (let k = 1; k < parts; k += 2) take(Math.round((k * (count - 1)) / parts));
  return order;
}

export interface RunningSweep {
  readonly sweep: ReadonlySignal<Sweep>;
  /** True from `cancel` on, when points were still open. */
  readonly cancelled: ReadonlySignal<boolean>;
  /** Asks no more; answers under way are dropped. */
  cancel(): void;
}

export interface SweepOptions {
  /** Questions open at once; 1 when left out, so that a pane's own edit never waits behind a whole sweep on one worker. */
  readonly lanes?: number;
  /** Called once, when all is answered or the sweep is cancelled. */
  readonly onEnd?: () => void;
}

/** Solves the plan's points, coarse first. */
export function createSweep(
  plan: Sweep,
  answer: (request: CirculationRequest) => Promise<Circulation>,
  { lanes = 1, onEnd }: SweepOptions = {},
): RunningSweep {
  const sweep = signal(plan);
  const cancelled = signal(false);
  const longest = Math.max(0, ...plan.curves.map(({ points }) => points.length));
  const open = coarseFirst(longest).flatMap((index) =>
    plan.curves.flatMap(({ points }, curve) => (points[index] ? [{ curve, index }] : [])),
  );
  const total = open.length;
  let answered = 0;
  const runLane = async () => {
    for (let place = open.shift(); place; place = open.shift()) {
      const { curve, index } = place;
      const solved = await answer(entryAt(entryAt(plan.curves, curve).points, index).request).catch(
        () => null,
      );
      if (cancelled.peek()) return;
      answered++;
      sweep.value = {
        ...sweep.peek(),
        progress: answered / total,
        curves: sweep.peek().curves.map((old, k) => (k === curve ? withAnswer(old, index, solved) : old)),
      };
      if (answered === total) onEnd?.();
    }
  };
  for (let lane = 0; lane < lanes; lane++) void runLane();
  return {
    sweep,
    cancelled,
    cancel() {
      if (cancelled.peek() || answered === total) return;
      cancelled.value = true;
      onEnd?.();
    },
  };
}

const withAnswer = (curve: SweepCurve, index: number, solved: Circulation | null): SweepCurve => ({
  ...curve,
  points: curve.points.map((point, i) =>
    i === index && solved?.run.converged ? { ...point, circulation: solved } : point,
  ),
});

/** Keeps one sweep in step with the scene state: a new plan replaces the old one. */
export function followSweep(answer: (request: CirculationRequest) => Promise<Circulation>) {
  let key = "";
  let running: RunningSweep | null = null;
  return {
    follow(state: SceneState): void {
      const plan = planSweep(state);
      const next = JSON.stringify(plan);
      if (next === key) return;
      key = next;
      running?.cancel();
      running = plan && createSweep(plan, answer);
    },
    /** As far as it is answered; null while the scene shows none. */
    current: (): Sweep | null => running?.sweep.peek() ?? null,
    release(): void {
      running?.cancel();
      running = null;
    },
  };
}
