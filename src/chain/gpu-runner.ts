/** Runs one field on a GPU, on a finer grid than the processor's; where the GPU fails or is slow the processor goes on with the same flow. Knows no thread and asks for no GPU. */
import { entryAt } from "../sim/checked/present.ts";
import type { FieldSession } from "../sim/flow-field/index.ts";
import type { FlowSolver } from "../sim/flow-solver/flow-solver.ts";
import type { Gpu } from "../sim/flow-solver/gpu/gpu.ts";
import { type GpuSolver, MAX_MARKS, MAX_STEPS } from "../sim/flow-solver/gpu/gpu-solver.ts";
import { nextBatch, noteFlow } from "../sim/flow-solver/step-batch.ts";
import { fieldRunner, type RunnerOptions } from "./field-runner.ts";
import type { Slice } from "./field-slices.ts";
import type { GpuStatus, ToField } from "./worker-messages.ts";

/** Cells across on a GPU over those on the processor: 24 for the 20 of a pane alone. */
export const FINER = 1.2;
/** s of wall clock that one batch may take, as far as the last one tells */
const SLICE = 0.04;
/** Steps of the first batch, which shows how long one takes. */
const FIRST = 32;
/** Fewest of any other that the GPU is asked for: the way there and back costs as much as dozens. */
const MIN_STEPS = 64;
/** s of wall clock on end by which a GPU that falls short of what is asked is judged: it must be faster than blood */
const TRIAL = 1.5;
/** s of wall clock before that: meanwhile the same GPU draws a page that opens */
const OPENING = 2;

export interface GpuRunner {
  /** Takes effect before the next slice. */
  hear(message: ToField): void;
  /** Computes one slice; answers the s that may pass until the next. */
  work(): Promise<number>;
}

type Build = Extract<ToField, { kind: "build" }>;

export function gpuRunner({ clock, post }: RunnerOptions, gpu: Gpu): GpuRunner {
  const runner = fieldRunner({ clock, post });
  const flow = loadedFlow(gpu);
  const trial = judge(clock);
  const waiting: ToField[] = [];
  let asked: Build | undefined;
  let computes = true;
  /** s of wall clock for a step of the last batch */
  let stepCost = SLICE / FIRST;
  let least = FIRST;

  const tell = (status: GpuStatus) => post({ kind: "gpu", status }, []);
  tell("computes");

  const hear = (message: ToField) => {
    if (message.kind !== "build") {
      runner.hear(message);
      return;
    }
    asked = message;
    runner.hear(computes ? { ...message, cellsAcross: FINER * message.cellsAcross, soundSteps: 1 } : message);
  };

  /** The grid becomes the processor's; the flow is carried over. */
  const leave = (status: GpuStatus) => {
    computes = false;
    flow.release();
    tell(status);
    if (asked) hear(asked);
  };

  const slice = async (field: FieldSession, wanted: number): Promise<Slice> => {
    const began = clock();
    const { solver, readings, drive } = field.live();
    const most = Math.min(wanted, MAX_STEPS, Math.max(least, SLICE / stepCost) | 0);
    least = MIN_STEPS;
    const samples = readings.samplesWithin(most);
    const steps = samples.length < MAX_MARKS ? most : entryAt(samples, MAX_MARKS - 1);
    const batch = nextBatch(solver, steps, (time) => drive(time, noteFlow));
    let done = 0;
    const marks = [...samples.filter((sample) => sample < steps), steps];
    await flow.of(solver).run(batch, marks, (mark) => {
      solver.passed(mark - done);
      readings.sample(mark - done);
      done = mark;
    });
    const spent = clock() - began;
    stepCost = Math.max(1e-6, spent / steps);
    return { steps, passed: steps * solver.step, spent };
  };

  return {
    hear: (message) => waiting.push(message),
    async work() {
      for (const message of waiting.splice(0)) hear(message);
      if (!computes) return runner.work();
      const { field, seconds } = runner.due();
      if (!field || seconds <= 0) return runner.rest();
      try {
        const wanted = Math.ceil(seconds / field.step);
        const done = await slice(field, wanted);
        runner.passed(field, done);
        if (trial.tooSlow(done, wanted)) leave("slow");
      } catch {
        leave("lost");
      }
      return runner.rest();
    },
  };
}

/** The flow of the solver that runs now, on the GPU. */
function loadedFlow(gpu: Gpu) {
  let loaded: { readonly solver: FlowSolver; readonly flow: GpuSolver } | undefined;
  return {
    of(solver: FlowSolver): GpuSolver {
      if (loaded?.solver === solver) return loaded.flow;
      loaded?.flow.release();
      loaded = { solver, flow: gpu.load(solver) };
      return loaded.flow;
    },
    release() {
      loaded?.flow.release();
    },
  };
}

/** Whether a GPU is slower than blood and falls short. */
function judge(clock: () => number) {
  let begun: number | undefined;
  let judged = false;
  let sum = { passed: 0, spent: 0 };
  return {
    tooSlow({ steps, passed, spent }: Slice, wanted: number): boolean {
      begun ??= clock();
      const counts = !judged && clock() - begun > OPENING && steps < wanted;
      sum = counts ? { passed: sum.passed + passed, spent: sum.spent + spent } : { passed: 0, spent: 0 };
      if (sum.spent < TRIAL) return false;
      judged = true;
      return sum.passed < sum.spent;
    },
  };
}
