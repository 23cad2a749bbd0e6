import { expect, test } from "vitest";
import type { CirculationRequest } from "../../src/sim/parameters/request.ts";
import { setParameter } from "../../src/state/edit.ts";
import { START } from "../../src/state/scene-state.ts";
import { begin } from "./begin.ts";

/** As a sweep asks: what is varied is set, be it to its default. */
const at = (conduitDiameter: number): CirculationRequest => ({
  ...START.request,
  set: { ...START.request.set, conduitDiameter },
});

test("a state has one answer, beside the panes, in a sweep and in the pane that takes its value", async () => {
  const { chain, time } = begin();
  await time.pass(0.1);
  const shown = chain.circulations.value[0]!;
  const pool = chain.pool();
  // Each worker begins where it last stopped, so that a search of its own ends at other last digits.
  const narrow = await pool.answer(at(8));
  // The same numbers, each as the answer to what was asked.
  expect(await pool.answer(at(18))).toEqual({ ...shown, request: at(18) });
  expect((await chain.answer(at(18))).pressures).toBe(shown.pressures);
  expect((await chain.answer(at(18))).request).toEqual(at(18));
  pool.release();

  chain.scene.value = setParameter("conduitDiameter", 8)(START);
  expect(chain.solving.value).toBe(true);
  await time.pass(0.1);
  expect(chain.solving.value).toBe(false);
  expect(chain.circulations.value[0]?.pressures).toBe(narrow.pressures);
  expect((await chain.answer(at(8))).pressures).toBe(narrow.pressures);
});

test("only what has settled, and the last of it, is remembered", async () => {
  const { chain, time, solver } = begin();
  await time.pass(0.1);
  const pool = chain.pool();
  const first = await pool.answer(at(12));
  for (let i = 0; i < 32; i++)
    await pool.answer({ ...at(12), body: { ...START.request.body, ageYears: 5.1 + i / 10 } });
  const before = solver.asked().length;
  expect((await pool.answer(at(12))).pressures).not.toBe(first.pressures);
  expect(solver.asked().length).toBe(before + 1);
});
