/** Wires scene state -> circulation -> field -> tracers -> frame. Time, randomness and workers come from outside. */
import { batch, effect, signal } from "@preact/signals";
import { checkRequest } from "../sim/circulation/check-request.ts";
import type { Fault } from "../sim/faults.ts";
import type { FieldReadings } from "../sim/flow-field/flow-field.ts";
import { paneRequest, type SceneState } from "../state/scene-state.ts";
import { answerCache } from "./answer-cache.ts";
import { type CirculationLink, circulationLink } from "./circulation-link.ts";
import { type BloodClock, bloodClock } from "./clock.ts";
import type { Chain } from "./contract.ts";
import { setGrids } from "./field-kernel.ts";
import type { Frame } from "./frame.ts";
import { heldTime } from "./held-time.ts";
import { type FirstStart, type PaneAnswers, paneAnswers } from "./pane-answers.ts";
import { type PaneSet, type PaneSetOptions, paneSet } from "./pane-set.ts";
import type { Passing } from "./pane-tracers.ts";
import type { Port } from "./port.ts";
import { sceneNeeds } from "./scene-needs.ts";
import { type SolvedStates, solvedStates } from "./solved-states.ts";
import { stillFrame } from "./still-frame.ts";
import { stillMoment } from "./still-moment.ts";
import { type WorkerPool, workerPool } from "./worker-pool.ts";

export interface ChainOptions extends PaneSetOptions {
  /** s, wall clock, never running backwards */
  readonly clock: () => number;
  /** Calls back every so many seconds until the returned function is called. */
  readonly every: (seconds: number, call: () => void) => () => void;
  readonly startCirculation: () => Port;
  /** where a pane's first search begins; from nothing when left out */
  readonly firstStart?: FirstStart;
  /** workers for one long job; 2 when left out */
  readonly poolSize?: number;
  /** Motion is unwanted (the reader's setting); read at every frame. */
  readonly reducedMotion?: () => boolean;
}

/** s between looks at the workers and between refreshed readings */
const LOOK = 0.2;
const POOL_SIZE = 2;
/** Scenes whose picture shows the computed field. */
const FIELD_SCENES: readonly string[] = ["pathway"];

export function createChain(start: SceneState, options: ChainOptions): Chain {
  const scene = signal(start);
  const readings = signal<readonly (FieldReadings | null)[]>([]);
  const pace = signal(0);
  const faults = faultList();
  const degraded = signal<readonly string[]>([]);
  const solver = circulationLink(options.startCirculation);
  const panes = paneSet(options);
  const known = solvedStates();
  const pools = heldPools(() => workerPool(options.startCirculation, options.poolSize ?? POOL_SIZE), known);
  const answers = paneAnswers(
    solver,
    (reason) => {
      if (reason !== undefined) faults.add(unsolved(reason));
      drive();
    },
    options.firstStart,
    known,
  );
  const answer = answered(solver, faults.add, known);
  const needs = sceneNeeds(answer);
  const clock = bloodClock();
  const following = follower(panes, answers);

  function drive() {
    panes.drive(answers.circulations.peek(), answers.solving.peek());
  }

  const stopFollowing = effect(() => {
    const state = scene.value;
    batch(() => {
      if (panes.keep(1 + state.beside.length)) {
        answers.keep(panes.links.length);
        readings.value = panes.links.map(() => null);
      }
      faults.value = following.show(state);
      needs.follow(state);
      drive();
      following.wish(state);
    });
  });

  const stopLooking = options.every(LOOK, () => {
    const now = options.clock();
    for (const each of [solver, ...pools.all, ...panes.links]) each.watch(now);
    batch(() => {
      readings.value = panes.links.map((pane) => pane.readings());
      pace.value = clock.rate;
      setGrids(panes.links.flatMap(({ cellsAcross }) => cellsAcross ?? []));
      if (panes.degraded.join() !== degraded.peek().join()) degraded.value = panes.degraded;
    });
  });

  /** @param fieldRate a field has to settle even when the picture holds still */
  const frameOf = (passing: Passing, fieldRate: number): Frame => {
    const state = scene.peek();
    const { moment } = state.view;
    const circulation = answers.circulations.peek()[0] ?? null;
    const moving = passing.motion === "moving";
    const never = !moving && clock.time === 0;
    const time = heldTime(never ? stillMoment(state, circulation) : clock.time, moment, circulation);
    return {
      state,
      panes: panes.links.map((pane, i) =>
        needs.complete(state.scene, i, pane.frame(passing, fieldRate, state.view.playSpeed), time),
      ),
      time,
      pace: clock.rate,
      degraded: degraded.peek(),
      // A moment that a person holds is shown as it is, not as a mean.
      still: !moving && moment === undefined,
      sweep: needs.sweep(),
    };
  };

  return {
    scene,
    circulations: answers.circulations,
    solving: answers.solving,
    readings,
    moments: () => panes.links.map((pane) => pane.moment()),
    pace,
    faults: faults.signal,
    degraded,
    answer,
    pool: pools.start,
    still: (state) => stillFrame(state, needs, answer),
    frame() {
      const state = scene.peek();
      const passing = passed(clock, panes, state, options);
      return frameOf(passing, passing.motion === "moving" ? clock.rate : state.view.playSpeed);
    },
    // Until the next frame the fields rest: the processor is the drawing's.
    picture: () => frameOf({ time: clock.time, step: 0, motion: "picture" }, 0),
    release() {
      stopFollowing();
      stopLooking();
      for (const each of [needs, answers, solver, ...pools.all, panes]) each.release();
    },
  };
}

/** Lets blood's clock go on by what has passed since the last frame, as far as the fields can follow. */
function passed(clock: BloodClock, panes: PaneSet, { view }: SceneState, options: ChainOptions): Passing {
  const stopped = view.paused || view.moment !== undefined;
  const motion = options.reducedMotion?.() ? "still" : stopped ? "held" : "moving";
  const capable = panes.links.flatMap((pane) => pane.capable ?? []);
  const step = clock.advance(options.clock(), motion === "moving" ? view.playSpeed : 0, capable);
  // Bodies side by side are smaller in both directions, and so few marks fit into each that most would move unseen.
  const shown = view.camera === "whole" ? 1 / panes.links.length : 1;
  return { time: clock.time, step, motion, shown };
}

/** Passes on to every pane what the state asks of it. */
function follower(panes: PaneSet, answers: PaneAnswers) {
  /** Pulses of dye asked for so far: a rise releases one in every pane, also that of the state it begins with. */
  let dyed = 0;
  return {
    /** Shows each pane its request and asks for its circulation; what is refused is returned and leaves its pane as it was. */
    show(state: SceneState): readonly Fault[] {
      const wantsField = FIELD_SCENES.includes(state.scene);
      return panes.links.flatMap((pane, index) => {
        const request = paneRequest(state, index);
        const checked = checkRequest(request);
        if ("faults" in checked) return checked.faults;
        pane.show(wantsField ? request : null);
        answers.ask(index, request);
        return [];
      });
    },
    wish({ view }: SceneState) {
      for (const pane of panes.links) {
        if (view.dye > dyed) pane.dye();
        pane.clots(view.clots);
      }
      dyed = view.dye;
    },
  };
}

/** Faults of the last edit, one for each path. */
function faultList() {
  const list = signal<readonly Fault[]>([]);
  return {
    signal: list,
    set value(found: readonly Fault[]) {
      list.value = found;
    },
    add(fault: Fault) {
      list.value = [...list.peek().filter(({ path }) => path !== fault.path), fault];
    },
  };
}

/** Answers beside the panes, kept; what cannot be solved is a fault too. */
function answered(
  solver: CirculationLink,
  add: (fault: Fault) => void,
  known: SolvedStates,
): Chain["answer"] {
  const cache = answerCache(solver);
  return (request) => {
    const found = known.find(request);
    if (found) return Promise.resolve(found);
    const answer = cache.answer(request);
    answer.then(known.note, ({ message }: Error) => add(unsolved(message)));
    return answer;
  };
}

/** Workers that others have asked for and not yet released. */
function heldPools(make: () => WorkerPool, known: SolvedStates) {
  const all = new Set<WorkerPool>();
  return {
    all,
    start(): WorkerPool {
      const pool = make();
      const release = () => {
        all.delete(pool);
        pool.release();
      };
      const answer: WorkerPool["answer"] = async (request) => {
        const found = known.find(request) ?? (await pool.answer(request));
        known.note(found);
        return found;
      };
      all.add(pool);
      return { ...pool, answer, release };
    },
  };
}

const unsolved = (found: string): Fault => ({ path: "request", found, allowed: "a request that settles" });
