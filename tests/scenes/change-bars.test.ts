import type { Graphics } from "pixi.js";
import { expect, test, vi } from "vitest";
import type { Lettering } from "../../src/scenes/drawing/lettering.ts";
import { drawChanges } from "../../src/scenes/exercise/change-bars.ts";
import { CHANGES, STROKE } from "../../src/scenes/exercise/change-rows.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

vi.mock("pixi.js", () => ({}));

const at = (metabolicEquivalents: number) =>
  solve({ ...START.request, set: { ...START.request.set, metabolicEquivalents } });
const states: readonly Circulation[] = [at(1), at(5)];

function drawn(height: number) {
  const bars: { readonly x: number; readonly y: number; readonly long: number }[] = [];
  const said: string[] = [];
  const ink: Graphics = new Proxy({} as Graphics, {
    get: (_, name: string) => (x: number, y: number, long: number) => {
      if (name === "rect") bars.push({ x, y, long });
      return ink;
    },
  });
  const words = {
    write({ lines }: { lines: readonly { words: string }[] }) {
      said.push(lines[0]!.words);
      return { x: 0, y: 0, width: 0, height: 0 };
    },
  } as unknown as Lettering;
  drawChanges(
    { ink, words, type: 10, theme: darkTheme(String) },
    { states, box: { x: 0, y: 0, width: 400, height } },
  );
  return { bars, said };
}

test("bars grow outwards from the middle, all flows to one scale, the others by their own numbers", () => {
  const { bars, said } = drawn(1000);
  expect(said.filter((words) => words.startsWith("further."))).toHaveLength(CHANGES.length);
  expect(bars).toHaveLength(2 * CHANGES.length);
  const most = Math.max(...CHANGES.flatMap(({ flow, read }) => (flow ? states.map(read) : [])));
  const longest = Math.max(...bars.map(({ long }) => long));
  CHANGES.forEach(({ key, flow, read }, row) => {
    const whole = flow ? most : Math.max(...states.map(read));
    states.forEach((state, i) => {
      const { x, long } = bars[2 * row + i]!;
      expect(long / longest, key).toBeCloseTo(read(state) / whole, 1);
      if (i === 0) expect(x + long).toBeLessThan(200);
      else expect(x).toBeGreaterThan(200);
    });
  });
});

test("where there is no room for all, the heart's rate and each beat stay", () => {
  const { said } = drawn(65);
  expect(said.filter((words) => words.startsWith("further."))).toEqual([
    "further.exercise.row.rate",
    `further.exercise.row.${STROKE.key}`,
  ]);
});

test("effort raises every number but the belly's flow and the oxygen that the legs leave", () => {
  const falls = CHANGES.filter(({ read }) => read(states[1]!) < read(states[0]!)).map(({ key }) => key);
  expect(falls).toEqual(["belly", "legVeins"]);
});
