/** Wires scene state -> circulation -> field -> tracers -> frame. Time, randomness and workers come from outside. */
import { batch, computed, effect, signal } from "@preact/signals";
import type { Circulation } from "../sim/circulation/answer.ts";
import { checkRequest } from "../sim/circulation/check-request.ts";
import type { Fault } from "../sim/faults.ts";
import type { FieldReadings } from "../sim/flow-field/flow-field.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import { paneRequest, type SceneState } from "../state/scene-state.ts";
import { answerCache } from "./answer-cache.ts";
import { circulationLink } from "./circulation-link.ts";
import { bloodClock } from "./clock.ts";
import type { Chain } from "./contract.ts";
import type { Frame } from "./frame.ts";
import { type PaneLink, paneLink } from "./pane-link.ts";
import type { Port } from "./port.ts";
import { sceneNeeds } from "./scene-needs.ts";
import { type WorkerPool, workerPool } from "./worker-pool.ts";

export interface ChainOptions {
  /** s, wall clock, never running backwards */
  readonly clock: () => number;
  /** 0..1 */
  readonly random: () => number;
  /** Calls back every so many seconds until the returned function is called. */
  readonly every: (seconds: number, call: () => void) => () => void;
  readonly startCirculation: () => Port;
  readonly startField: () => Port;
  /** workers for one long job; 2 when left out */
  readonly poolSize?: number;
  /** tracers in all panes together; 10,000 when left out */
  readonly tracers?: number;
  /** Motion is unwanted (the reader's setting); read at every frame. */
  readonly reducedMotion?: () => boolean;
}

/** s between looks at the workers and between refreshed readings */
const LOOK = 0.2;
const TRACERS = 10_000;
const POOL_SIZE = 2;
/** Solver cells across the narrowest great vessel: one pane can afford more than two or three that share the processor. */
const CELLS_ALONE = 12;
const CELLS_BESIDE = 9;
/** Scenes whose picture shows the computed field. */
const FIELD_SCENES: readonly string[] = ["pathway"];

export function createChain(start: SceneState, options: ChainOptions): Chain {
  const scene = signal(start);
  const circulations = signal<readonly (Circulation | null)[]>([]);
  const readings = signal<readonly (FieldReadings | null)[]>([]);
  const pace = signal(0);
  const faults = signal<readonly Fault[]>([]);
  const degraded = signal<readonly string[]>([]);
  const open = signal(0);
  const solving = computed(() => open.value > 0);

  const solver = circulationLink(options.startCirculation);
  const cache = answerCache(solver);
  const answer = (request: CirculationRequest) => {
    const answered = cache.answer(request);
    answered.catch(({ message }: Error) => addFault(unsolved(message)));
    return answered;
  };
  const needs = sceneNeeds(answer);
  const pools = new Set<WorkerPool>();
  const clock = bloodClock();
  let panes: PaneLink[] = [];
  const askedKeys: string[] = [];
  const unanswered = new Set<number>();
  /** Pulses of dye asked for so far: a rise releases one in every pane, also that of the state it begins with. */
  let dyed = 0;

  const tell = () => {
    panes.forEach((pane, i) => {
      pane.circulate(circulations.peek()[i] ?? null, circulations.peek()[0] ?? null, unanswered.size > 0);
    });
  };

  const addFault = (fault: Fault) => {
    faults.value = [...faults.peek().filter(({ path }) => path !== fault.path), fault];
  };

  const settle = (index: number, key: string, answer: Circulation | undefined, fault?: Fault) => {
    if (askedKeys[index] !== key) return;
    unanswered.delete(index);
    batch(() => {
      open.value = unanswered.size;
      if (fault) addFault(fault);
      if (answer) circulations.value = circulations.value.map((old, i) => (i === index ? answer : old));
      tell();
    });
  };

  const ask = (index: number, request: CirculationRequest, key: string) => {
    const before = circulations.peek()[index];
    const from = before?.request.stage === request.stage ? before.state : undefined;
    unanswered.add(index);
    solver.ask(`pane ${index}`, request, from, (reply) => {
      if ("reason" in reply) {
        settle(index, key, undefined, unsolved(reply.reason));
        return;
      }
      const { circulation } = reply;
      const { converged, reason } = circulation.run;
      const fault = converged ? undefined : unsolved(reason ?? "no periodic answer");
      settle(index, key, converged ? circulation : undefined, fault);
    });
  };

  const follow = (state: SceneState) => {
    const count = 1 + state.beside.length;
    const requests = Array.from({ length: count }, (_, i) => paneRequest(state, i));
    const wantsField = FIELD_SCENES.includes(state.scene);
    const capacity = Math.floor((options.tracers ?? TRACERS) / count);
    if (panes.length !== count) {
      for (const pane of panes) pane.release();
      panes = requests.map(() =>
        paneLink(options.startField, options.random, capacity, count > 1 ? CELLS_BESIDE : CELLS_ALONE),
      );
      askedKeys.length = Math.min(askedKeys.length, count);
      for (const index of unanswered) if (index >= count) unanswered.delete(index);
      circulations.value = requests.map((_, i) => circulations.peek()[i] ?? null);
      readings.value = requests.map(() => null);
    }
    const found: Fault[] = [];
    requests.forEach((request, index) => {
      const key = JSON.stringify(request);
      const checked = checkRequest(request);
      if ("faults" in checked) {
        found.push(...checked.faults);
        return;
      }
      panes[index]!.show(wantsField ? request : null);
      if (askedKeys[index] === key) return;
      askedKeys[index] = key;
      ask(index, request, key);
    });
    needs.follow(state);
    faults.value = found;
    open.value = unanswered.size;
    tell();
    panes.forEach((pane) => {
      if (state.view.dye > dyed) pane.dye();
      pane.clots(state.view.clots);
    });
    dyed = state.view.dye;
  };

  const stopFollowing = effect(() => {
    const state = scene.value;
    batch(() => follow(state));
  });

  const stopLooking = options.every(LOOK, () => {
    const now = options.clock();
    solver.watch(now);
    for (const pool of pools) pool.watch(now);
    for (const pane of panes) pane.watch(now);
    batch(() => {
      readings.value = panes.map((pane) => pane.readings());
      pace.value = clock.rate;
      const steps = [
        ...(panes.some((pane) => pane.restarting) ? ["fieldLost"] : []),
        ...(panes.some((pane) => pane.lost) ? ["fieldOff"] : []),
        ...(panes.some((pane) => pane.refused) ? ["fieldRefused"] : []),
      ];
      if (steps.join() !== degraded.peek().join()) degraded.value = steps;
    });
  });

  return {
    scene,
    circulations,
    solving,
    readings,
    pace,
    faults,
    degraded,
    answer,
    pool() {
      const pool = workerPool(options.startCirculation, options.poolSize ?? POOL_SIZE);
      const release = () => {
        pools.delete(pool);
        pool.release();
      };
      pools.add(pool);
      return { ...pool, release };
    },
    frame(): Frame {
      const state = scene.peek();
      const reduced = options.reducedMotion?.() ?? false;
      const still = reduced || state.view.paused;
      const motion = reduced ? "still" : state.view.paused ? "held" : "moving";
      const running = panes.flatMap((pane) => pane.capable ?? []);
      const step = clock.advance(options.clock(), still ? 0 : state.view.playSpeed, running);
      // A field has to settle even when the picture holds still.
      const fieldRate = still ? state.view.playSpeed : clock.rate;
      return {
        state,
        panes: panes.map((pane, i) =>
          needs.complete(state.scene, i, pane.frame(clock.time, step, fieldRate, motion), clock.time),
        ),
        time: clock.time,
        pace: clock.rate,
        degraded: degraded.peek(),
        still,
        sweep: needs.sweep(),
      };
    },
    release() {
      stopFollowing();
      stopLooking();
      needs.release();
      askedKeys.length = 0;
      solver.release();
      for (const pool of pools) pool.release();
      for (const pane of panes) pane.release();
    },
  };
}

const unsolved = (found: string): Fault => ({ path: "request", found, allowed: "a request that settles" });
