import { signal } from "@preact/signals";
import { expect, test } from "vitest";
import type { Chain } from "../../../../src/chain/contract.ts";
import { knownAnswers } from "../../../../src/modes/shared/lesson/known-answers.ts";
import { solve } from "../../../../src/sim/circulation/solve.ts";
import type { CirculationRequest } from "../../../../src/sim/parameters/request.ts";
import { START } from "../../../../src/state/scene-state.ts";

const fromStart = (set: CirculationRequest["set"]): CirculationRequest => ({ ...START.request, set });
const opened = solve(START.request);

function lessonOn() {
  const scene = signal(START);
  const circulations = signal([opened]);
  const chain = { scene, circulations } as unknown as Chain;
  const ask = (request: CirculationRequest) => {
    scene.value = { ...START, request };
    return request;
  };
  return { known: knownAnswers(chain), circulations, ask };
}

test("under a moving slider the latest numbers stay until the new ones come", () => {
  const { known, ask } = lessonOn();
  expect(known.answered(START.request)).toBe(opened);
  expect(known.answered(ask(fromStart({ conduitDiameter: 16 })))).toBe(opened);
});

test("another step's words never state the numbers of the scene before, also where its answer comes late", () => {
  const { known, circulations, ask } = lessonOn();
  known.answered(START.request);
  known.leave();
  expect(known.answered(ask(fromStart({ conduitDiameter: 16 })))).toBeNull();
  circulations.value = [{ ...opened }];
  expect(known.answered(fromStart({ conduitDiameter: 16 }))).toBeNull();
  const stepped = solve(fromStart({ conduitDiameter: 16 }));
  circulations.value = [stepped];
  expect(known.answered(fromStart({ conduitDiameter: 16 }))).toBe(stepped);
  expect(known.answered(ask(fromStart({ conduitDiameter: 15 })))).toBe(stepped);
});

test("a step with the scene of the one before keeps its numbers", () => {
  const { known } = lessonOn();
  known.leave();
  expect(known.answered(START.request)).toBe(opened);
});
