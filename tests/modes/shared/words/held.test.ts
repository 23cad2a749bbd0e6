/** What the bench says is held. */
import { expect, test } from "vitest";
import { heldSentence } from "../../../../src/modes/shared/words/held.ts";
import { solve } from "../../../../src/sim/circulation/solve.ts";
import { setParameter, setVolumeRule } from "../../../../src/state/edit.ts";
import { START } from "../../../../src/state/scene-state.ts";

test("a pressure is held at rest alone, and exertion moves it", () => {
  const { request } = setParameter("metabolicEquivalents", 4)(START);
  expect(heldSentence(request)).toBe("Held constant at rest: Atrial pressure (7.0\u202fmmHg)");
  expect(heldSentence({ ...request, stage: "two-ventricle" })).toMatch(
    /^Held constant at rest: Left atrial pressure/,
  );
  expect(Math.abs(solve(request).pressures.atrium - 7)).toBeGreaterThan(0.3);
});

test("a volume is held whatever the body does", () => {
  expect(heldSentence(setVolumeRule("fixed-volume")(START).request)).toMatch(
    /^Held constant: Blood volume \(/,
  );
});
