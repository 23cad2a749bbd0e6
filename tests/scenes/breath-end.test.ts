// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { breathEnds, endsOf, outlinesAt } from "../../src/scenes/breathing/breath-end.ts";
import { fillings } from "../../src/scenes/breathing/chest.ts";
import { lightTheme } from "../../src/scenes/theme/theme.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

const breathing = (breathing: string) => solve({ ...START.request, set: { breathing } });

test.each(["spontaneous", "deep", "ventilator"])(
  "%s: both ends of the breath are apart, a deep one's more",
  (kind) => {
    const { out, in: full } = endsOf(breathing(kind))!;
    expect(full - out).toBeGreaterThan(0.05);
    const deep = endsOf(breathing("deep"))!;
    expect(deep.in - deep.out).toBeGreaterThanOrEqual(full - out);
  },
);

test.each(["held", "valsalva"])("%s: nothing moves, so no other end is drawn", (kind) => {
  expect(endsOf(breathing(kind))).toBeNull();
  const ends = breathEnds();
  ends.set(breathing(kind), lightTheme(String));
  expect(ends.view.visible).toBe(false);
});

test("at the end of expiration lungs lie further in and the dome higher than at that of inspiration", () => {
  const { out, in: full } = endsOf(breathing("spontaneous"))!;
  const [small, large] = [outlinesAt(out), outlinesAt(full)];
  const across = (line: readonly (readonly [number, number])[]) => {
    const xs = line.map(([x]) => Math.abs(x - 500));
    return Math.max(...xs);
  };
  small.forEach((line, i) => {
    const dome = i === small.length - 1;
    if (!dome) expect(across(large[i]!) - across(line)).toBeGreaterThan(6);
    else for (const [k, [, y]] of line.entries()) expect(large[i]![k]![1]).toBeGreaterThan(y + 10);
  });
});

test("it shows where the breath came from, and at its beginning where it goes", () => {
  const circulation = breathing("spontaneous");
  const ends = breathEnds();
  ends.set(circulation, lightTheme(String));
  const [out, full] = ends.view.children;
  const [fill] = fillings(circulation.traces);
  expect(ends.move(circulation, fill!.to)).toBe("out");
  expect([out!.alpha, full!.alpha]).toEqual([1, 0]);
  expect(ends.move(circulation, fill!.from)).toBe("in");
  expect(full!.alpha).toBeGreaterThan(0.95);
  expect(out!.alpha + full!.alpha).toBeCloseTo(1, 9);
});
