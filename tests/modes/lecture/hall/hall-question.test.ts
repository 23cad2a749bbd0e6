import { readFileSync } from "node:fs";
import { signal } from "@preact/signals";
import { expect, it, vi } from "vitest";
import type { Chain } from "../../../../src/chain/contract.ts";
import { findStep } from "../../../../src/lesson/lesson.ts";
import { readLesson } from "../../../../src/lesson/read/read.ts";
import { type HallQuestion, modelChoice } from "../../../../src/modes/lecture/hall/hall-question.ts";
import { createSession } from "../../../../src/modes/shared/session.ts";
import { solve } from "../../../../src/sim/circulation/solve.ts";
import type { CirculationRequest } from "../../../../src/sim/parameters/request.ts";
import { START } from "../../../../src/state/scene-state.ts";

const lesson = readLesson(readFileSync("lessons/en/02-steps.md", "utf8"), "02-steps.md").value!;

it("the model's number is the one that is written, so that stage, phones and the marked bar agree", async () => {
  const chain = {
    scene: signal(START),
    circulations: signal([]),
    solving: signal(false),
    answer: (request: CirculationRequest) => Promise.resolve(solve(request)),
  };
  const session = createSession(chain as unknown as Chain);
  const step = findStep(lesson, "who-goes-first");
  const { question } = lesson.steps[step]!;
  if (question?.kind !== "estimate") throw new Error("no estimate");
  const asked = signal<HallQuestion | null>({ key: "key", question, lesson, step, resolved: false });
  const { truth, release } = modelChoice(session, asked);
  await vi.waitFor(() => expect(truth.value).not.toBeNull(), { timeout: 20_000 });
  expect(truth.value).toBe(Number(Number(truth.value).toFixed(question.format.digits)));
  expect(Number(truth.value)).toBeGreaterThan(30);
  release();
}, 30_000);
