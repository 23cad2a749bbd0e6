import { signal } from "@preact/signals";
import { expect, it } from "vitest";
import type { Chain } from "../../../src/chain/contract.ts";
import { createSession } from "../../../src/modes/shared/session.ts";
import { earlierFigures } from "../../../src/modes/shared/words/earlier-figures.ts";
import type { Circulation } from "../../../src/sim/circulation/answer/answer.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";
import { setParameter, setView } from "../../../src/state/edit.ts";
import { START } from "../../../src/state/scene-state.ts";

const solved = (diameter: number) =>
  solve({ ...START.request, set: diameter === 18 ? {} : { conduitDiameter: diameter } });
const answers = { usual: solved(18), narrow: solved(12), narrower: solved(10) };

function opened() {
  const circulations = signal<readonly (Circulation | null)[]>([answers.usual]);
  const solving = signal(false);
  const session = createSession({ scene: signal(START), circulations, solving } as unknown as Chain);
  const widen = (to: number) => session.edit("conduitDiameter", setParameter("conduitDiameter", to));
  const answer = (circulation: Circulation) => {
    circulations.value = [circulation];
  };
  return { session, widen, answer };
}

it("a change keeps what was shown before it: one drag is one change, to its end", () => {
  const { session, widen, answer } = opened();
  widen(12);
  expect(session.before.value?.[0]?.circulation).toBe(answers.usual);
  expect(session.before.value?.[0]?.geometry).not.toBeNull();
  answer(answers.narrow);
  widen(10);
  expect(session.before.value?.[0]?.circulation).toBe(answers.usual);
  session.settle();
  widen(18);
  expect(session.before.value?.[0]?.circulation).toBe(answers.narrow);
});

it("nothing is compared before the answer has come, nor after a press or a scene of its own", () => {
  const { session, widen, answer } = opened();
  expect(earlierFigures(session)).toBeNull();
  widen(12);
  expect(earlierFigures(session)).toBeNull();
  answer(answers.narrow);
  expect(earlierFigures(session)?.find(({ name }) => name === "pressureDrop")?.value).toBe(
    answers.usual.pathway.pressureDrop,
  );
  session.forget();
  expect(earlierFigures(session)).toBeNull();
  session.settle();
  widen(10);
  answer(answers.narrower);
  expect(earlierFigures(session)).not.toBeNull();
  session.show(START);
  expect(earlierFigures(session)).toBeNull();
});

it("a look is no change, and taking a change back is one", () => {
  const { session, widen, answer } = opened();
  session.edit("labels", setView({ labels: false }));
  expect(session.before.value).toBeNull();
  widen(12);
  answer(answers.narrow);
  session.undo();
  expect(session.before.value?.[0]?.circulation).toBe(answers.narrow);
});
