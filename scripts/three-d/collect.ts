/** Puts the solver's lines and the cases together: docs/validation/three-d.json. */
import { readFileSync, writeFileSync } from "node:fs";
import { BLOOD_DENSITY } from "../../src/sim/body/blood.ts";
import { pathwaySizes } from "../../src/sim/geometry/pathways/sizes.ts";
import type { Case } from "./case.ts";
import { allCases } from "./cases.ts";
import { type GridErrors, gridErrors } from "./grid-error.ts";
import { acrossOf, flowsOf, requestOf } from "./jobs.ts";
import { METHOD } from "./method.ts";
import { PIPE, pipeDrop, pipeFlow, pipeName } from "./pipe.ts";
import { deviation, mean, type RunLine, scatterOf, sharesOf } from "./run-line.ts";

const TARGET = "docs/validation/three-d.json";

/** Later lines replace earlier ones of the same name. */
function readLines(files: readonly string[]): Map<string, RunLine> {
  const lines = new Map<string, RunLine>();
  for (const file of files)
    for (const [at, text] of readFileSync(file, "utf8").split("\n").entries()) {
      if (text === "") continue;
      try {
        const line = JSON.parse(text) as RunLine;
        lines.set(line.name, line);
      } catch {
        throw new Error(`${file}:${at + 1}: found "${text.slice(0, 40)}", allowed: one JSON object a line`);
      }
    }
  return lines;
}

const round = (value: number, digits = 5): number => Number(value.toPrecision(digits));

const gridOf = (line: RunLine, across: number) => ({
  dx: round(line.dx, 4),
  across: round(across, 3),
  cells: line.cells,
  step: round(line.dt, 4),
  solverPeak: line.peak,
});

/** @param values of the case and its repeats from other starts */
function quantity(values: readonly number[], scatter: number, grid: number) {
  const value = mean(values);
  const starts = deviation(values) / value;
  return {
    value: round(value),
    uncertainty: round(Math.abs(value) * Math.hypot(scatter, grid, starts), 3),
    scatter: round(scatter, 2),
    grid: round(grid, 2),
    ...(values.length > 1 ? { starts: round(starts, 2) } : {}),
  };
}

/**
 * Loss of jets beyond the lungs' openings, where the jet of a narrowing leaves before it has spread: mixing at constant
 * momentum takes (sqrt(k) - 1)^2 heads of the mean speed, k the kinetic factor, less what a parabola would show.
 */
function beyond(one: Case, line: RunLine) {
  const sizes = pathwaySizes(requestOf(one));
  const flows = flowsOf(one);
  const loss = (side: "left" | "right"): number => {
    const speed = flows[side] / ((Math.PI / 4) * sizes[side] ** 2); // mL/s over mm2 is m/s
    const head = 0.5 * BLOOD_DENSITY * speed ** 2;
    const excess = (Math.sqrt(line.openings[side]!.kinetic) - 1) ** 2 - (Math.SQRT2 - 1) ** 2;
    return head * Math.max(0, excess);
  };
  const power = (flows.left * loss("left") + flows.right * loss("right")) * 1e-3;
  return { power: round(power, 3), drop: round((power * 1e3) / (flows.left + flows.right) / 133.322387, 3) };
}

/** @param repeats the same from other starts */
function record(one: Case, line: RunLine, repeats: readonly RunLine[], errors: GridErrors) {
  const across = acrossOf(one, line.dx);
  const runs = [line, ...repeats];
  const share = (vein: "ivc" | "svc") => {
    const shares = runs.map((run) => sharesOf(run, vein)!);
    const to = (end: "left" | "right" | "fenestration") => shares.map((each) => each[end].value);
    const leaks = one.leak > 0 ? { fenestration: round(mean(to("fenestration")), 3) } : {};
    const { scatter } = shares[0]!.left;
    const starts = deviation(to("left"));
    const uncertainty = Math.hypot(scatter, errors.share(one.stage), starts);
    return {
      left: round(mean(to("left")), 4),
      right: round(mean(to("right")), 4),
      ...leaks,
      uncertainty: round(uncertainty, 2),
      scatter: round(scatter, 2),
      ...(runs.length > 1 ? { starts: round(starts, 2) } : {}),
    };
  };
  const of = (key: "power" | "drop") => runs.map((run) => run[key]);
  const flows = Object.fromEntries(Object.entries(flowsOf(one)).map(([name, flow]) => [name, round(flow)]));
  const totals = Object.fromEntries(
    Object.entries(line.openings).map(([name, { total }]) => [name, round(total)]),
  );
  const kinetic = Object.fromEntries(
    Object.entries(line.openings).map(([name, at]) => [name, round(at.kinetic, 3)]),
  );
  return {
    name: one.name,
    family: one.family,
    stage: one.stage,
    body: one.body,
    set: one.set,
    index: one.index,
    flows,
    inflow: one.inflow,
    ...(one.pulse ? { pulse: one.pulse } : {}),
    grid: gridOf(line, across),
    flush: round(line.flush, 3),
    averaged: round(line.averaged, 3),
    ...(repeats.length > 0 ? { starts: runs.length } : {}),
    power: quantity(of("power"), scatterOf(line, "power"), errors.power(across)),
    drop: quantity(of("drop"), scatterOf(line, "drop"), errors.drop(across)),
    beyond: beyond(one, line),
    dissipated: round(line.dissipated, 4),
    totalPressure: totals,
    kineticFactor: kinetic,
    shares: { ivc: share("ivc"), svc: share("svc") },
  };
}

function pipes(lines: ReadonlyMap<string, RunLine>) {
  const flow = pipeFlow(PIPE.reynolds, PIPE.diameter);
  const drop = pipeDrop(flow, PIPE.diameter, PIPE.length);
  const exact = { power: round(flow * drop * 1e-3), drop: round(drop / 133.322387) };
  const grids = PIPE.across.flatMap((across) => {
    const line = lines.get(pipeName(across));
    return line
      ? [
          {
            across,
            cells: line.cells,
            power: round(line.power),
            drop: round(line.drop),
            dissipated: round(line.dissipated),
          },
        ]
      : [];
  });
  return { diameter: PIPE.diameter, length: PIPE.length, reynolds: PIPE.reynolds, exact, grids };
}

export function collect(files: readonly string[]): void {
  const lines = readLines(files);
  const cases = allCases();
  const known = new Set([...cases.map(({ name }) => name), ...PIPE.across.map(pipeName)]);
  for (const name of lines.keys())
    if (!known.has(name)) throw new Error(`found the case "${name}"; allowed are those of cases.ts`);
  const run = cases.filter(({ name }) => lines.has(name));
  const done = run.filter(({ first }) => !first);
  const repeatsOf = ({ name }: Case) =>
    run
      .filter((one) => one.first && one.name === `${name}-${one.first}-first`)
      .map((one) => lines.get(one.name)!);
  const errors = gridErrors(done.map((one) => ({ one, line: lines.get(one.name)! })));
  const head = JSON.stringify(
    { method: METHOD, gridError: errors.summary, pipe: pipes(lines) },
    null,
    1,
  ).slice(0, -2);
  const rows = done.map((one) => JSON.stringify(record(one, lines.get(one.name)!, repeatsOf(one), errors)));
  writeFileSync(TARGET, `${head},\n "cases": [\n${rows.join(",\n")}\n]}\n`);
  const missing = cases.length - run.length;
  console.log(
    `${TARGET}: ${done.length} cases, ${run.length - done.length} repeats from other starts${missing > 0 ? `, ${missing} of cases.ts not run` : ""}`,
  );
}
