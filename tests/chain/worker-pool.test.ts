import { expect, test } from "vitest";
import { workerPool } from "../../src/chain/worker-pool.ts";
import { CASES, type CirculationRequest } from "../../src/sim/parameters/request.ts";
import { solverPorts } from "./fakes.ts";

const asked = (pulmonaryResistanceIndex: number): CirculationRequest => ({
  kind: "circulation",
  stage: "extracardiac",
  body: CASES.caseA,
  volumeRule: "hold-atrial-pressure",
  set: { pulmonaryResistanceIndex },
});

test("a worker pool spreads its questions over its workers and each starts from what it last found", async () => {
  const solver = solverPorts();
  const pool = workerPool(solver.start, 2);
  expect(solver.ports).toHaveLength(2);
  const first = await Promise.all([1.6, 2].map((index) => pool.answer(asked(index))));
  expect(solver.ports.map(({ sent }) => sent.length)).toEqual([1, 1]);
  expect(solver.asked().some(({ from }) => from)).toBe(false);
  const second = await Promise.all([1.8, 2.2].map((index) => pool.answer(asked(index))));
  expect(solver.asked().filter(({ from }) => from)).toHaveLength(2);
  const pressures = [first[0]!, second[0]!, first[1]!, second[1]!].map(({ pressures }) => pressures.pathway);
  for (let i = 1; i < pressures.length; i++) expect(pressures[i]!).toBeGreaterThan(pressures[i - 1]!);
  pool.release();
});
