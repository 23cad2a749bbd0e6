/** Kind "benchmark-field": the quantities of published tables, from the same flow solver. */

import type { Fault } from "../faults.ts";
import { solveCavity } from "../flow-field/benchmark/cavity.ts";
import { solveExpansion, solvePoiseuille, solveStep } from "../flow-field/benchmark/channels.ts";
import { solveCylinder } from "../flow-field/benchmark/cylinder.ts";
import { type Checked, numberWithin, oneOf, refuseUnknownKeys, shown } from "../input-checks.ts";
import type { Kind } from "./kind.ts";
import { object } from "./schema.ts";
import { MAX_WALL_SECONDS, secondsNow } from "./stopwatch.ts";

interface Run {
  readonly steady: boolean;
  readonly steps: number;
  readonly updates: number;
}

interface Case {
  readonly solve: (reynolds: number, cells: number, enough: () => boolean) => Run;
  readonly cells: number;
  readonly reynolds: number;
  readonly most: number;
  readonly meaning: string;
}

const CASES = {
  cavity: {
    solve: solveCavity,
    cells: 128,
    reynolds: 1000,
    most: 10000,
    meaning:
      "lid-driven cavity (Ghia, Ghia & Shin 1982): u over y on x = 0.5 and v over x on y = 0.5; lid speed and side are 1",
  },
  step: {
    solve: solveStep,
    cells: 40,
    reynolds: 400,
    most: 1000,
    meaning:
      "backward-facing step of half the channel's height (Armaly 1983; Gartling 1990): mean inlet velocity and channel height; lengths in channel heights from the step",
  },
  cylinder: {
    solve: solveCylinder,
    cells: 82,
    reynolds: 20,
    most: 40,
    meaning:
      "cylinder in a channel, case 2D-1 (Schaefer & Turek 1996): mean velocity and diameter; pressureDifference in Pa",
  },
  poiseuille: {
    solve: solvePoiseuille,
    cells: 32,
    reynolds: 100,
    most: 2000,
    meaning: "plane Poiseuille flow: mean velocity and width; u over the mean beside the exact parabola",
  },
  expansion: {
    solve: solveExpansion,
    cells: 20,
    reynolds: 100,
    most: 400,
    meaning:
      "symmetric sudden expansion 1:2 (after Fearn, Mullin & Cliffe 1990): mean velocity and height of the inlet; lengths in inlet heights",
  },
} as const satisfies Record<string, Case>;
type CaseName = keyof typeof CASES;
const NAMES = Object.keys(CASES) as CaseName[];
const CELLS = { min: 8, max: 512, unit: "" } as const;

/** One published case; Reynolds number dimensionless, `cells` a count. */
export interface BenchmarkRequest {
  readonly case: CaseName;
  readonly reynolds: number;
  readonly cells: number;
}

export const BENCHMARK_FIELD_KIND: Kind<BenchmarkRequest> = {
  kind: "benchmark-field",
  schema: object(
    {
      kind: { const: "benchmark-field" },
      case: { enum: NAMES, description: NAMES.map((name) => `${name}: ${CASES[name].meaning}`).join("; ") },
      reynolds: {
        type: "number",
        exclusiveMinimum: 0,
        maximum: 10000,
        description: "Reynolds number, formed as the case says",
      },
      cells: {
        type: "integer",
        minimum: CELLS.min,
        maximum: CELLS.max,
        description:
          "cells across the cavity's side, the channel's height (step, cylinder, poiseuille) or the inlet's (expansion); even",
      },
    },
    ["kind", "case"],
    "one published case",
  ),
  check(input): Checked<BenchmarkRequest> {
    const faults: Fault[] = [];
    refuseUnknownKeys(input, ["kind", "case", "reynolds", "cells"], "", faults);
    const name = oneOf(input.case, NAMES, "case", faults);
    if (!name) return { faults };
    const { reynolds = CASES[name].reynolds, cells = CASES[name].cells } = input;
    numberWithin(reynolds, { min: 1, max: CASES[name].most, unit: "" }, "reynolds", faults);
    numberWithin(cells, CELLS, "cells", faults);
    if (typeof cells === "number" && cells % 2 !== 0)
      faults.push({ path: "cells", found: shown(cells), allowed: "an even whole number" });
    if (faults.length > 0) return { faults };
    return { request: { case: name, reynolds: reynolds as number, cells: cells as number } };
  },
  run({ case: name, reynolds, cells }) {
    const began = secondsNow();
    const { steady, steps, updates, ...quantities }: Run & object = CASES[name].solve(
      reynolds,
      cells,
      () => secondsNow() - began > MAX_WALL_SECONDS,
    );
    const wallSeconds = secondsNow() - began;
    if (
      Object.values(quantities)
        .flat()
        .some((value) => typeof value === "number" && !Number.isFinite(value))
    )
      return { reason: `the flow grew without bound at ${cells} cells; more cells may hold it` };
    return {
      answer: {
        case: name,
        reynolds,
        cells,
        ...quantities,
        run: { steps, steady, wallSeconds, cellUpdatesPerSecond: updates / Math.max(wallSeconds, 1e-9) },
      },
    };
  },
};
