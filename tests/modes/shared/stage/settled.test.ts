import { signal } from "@preact/signals";
import { expect, it, vi } from "vitest";
import type { Frame } from "../../../../src/chain/frame.ts";
import type { Context } from "../../../../src/modes/shared/mode.ts";
import { settled } from "../../../../src/modes/shared/stage/settled.ts";
import type { Circulation } from "../../../../src/sim/circulation/answer/answer.ts";
import { START } from "../../../../src/state/scene-state.ts";

const answer = (name: string) => ({ name }) as unknown as Circulation;

/** A page whose last frame, answers and flow are in our hands. */
function page(scene: "circuit" | "pathway") {
  const state = { ...START, scene };
  const circulations = signal<readonly (Circulation | null)[]>([answer("before"), null]);
  const solving = signal(false);
  const readings = signal<readonly { settled: boolean }[]>([{ settled: true }, { settled: true }]);
  let shown: readonly (Circulation | null)[] = [];
  const chain = {
    ...{ scene: signal(state), circulations, solving, readings },
    moments: () => [{ time: 9, unchanged: 9 }],
  };
  const stage = {
    frame: () => ({ state, panes: shown.map((circulation) => ({ circulation })) }) as unknown as Frame,
  };
  return {
    ...{ circulations, readings },
    draw() {
      shown = circulations.value;
    },
    context: { session: { chain }, stage } as unknown as Context,
  };
}

it("takes no picture that was drawn before the answers that it is to show", async () => {
  vi.useFakeTimers({ toFake: ["setTimeout", "performance"] });
  const { context, circulations, draw } = page("circuit");
  draw();
  circulations.value = [answer("now"), answer("beside")];
  let done = false;
  void settled(context, new AbortController().signal).then(() => {
    done = true;
  });
  await vi.advanceTimersByTimeAsync(500);
  expect(done).toBe(false);
  draw();
  await vi.advanceTimersByTimeAsync(100);
  expect(done).toBe(true);
  vi.useRealTimers();
});

it("takes what is read of a flow only once it can be that of the new walls", async () => {
  vi.useFakeTimers({ toFake: ["setTimeout", "performance"] });
  const { context, readings, draw } = page("pathway");
  draw();
  let done = false;
  void settled(context, new AbortController().signal).then(() => {
    done = true;
  });
  await vi.advanceTimersByTimeAsync(200);
  expect(done).toBe(false);
  readings.value = [{ settled: false }, { settled: false }];
  await vi.advanceTimersByTimeAsync(1000);
  expect(done).toBe(false);
  readings.value = [{ settled: true }, { settled: true }];
  await vi.advanceTimersByTimeAsync(100);
  expect(done).toBe(true);
  vi.useRealTimers();
});
