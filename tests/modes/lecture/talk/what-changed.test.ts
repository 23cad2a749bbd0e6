/** What a what-if says that it changed. */
import { expect, test } from "vitest";
import { whatChanged } from "../../../../src/modes/lecture/talk/what-changed.ts";
import { bodyAt } from "../../../../src/sim/parameters/request.ts";
import { setBody, setParameter, setStage, setVolumeRule } from "../../../../src/state/edit.ts";
import { START } from "../../../../src/state/scene-state.ts";

const changed = (...edits: readonly ((state: typeof START) => typeof START)[]) =>
  whatChanged(START.request, edits.reduce((state, edit) => edit(state), START).request);

test("nothing changed says nothing", () => {
  expect(changed()).toEqual([]);
  expect(changed(setParameter("conduitDiameter", 10), setParameter("conduitDiameter", 18))).toEqual([]);
});

test("a setting is named with both numbers and its unit, a word with both words", () => {
  expect(changed(setParameter("conduitDiameter", 10))).toEqual(["Conduit diameter: 18.0 → 10.0\u202fmm"]);
  expect(changed(setVolumeRule("fixed-volume"))).toEqual(["Held constant: Atrial pressure → Blood volume"]);
});

test("another pathway or body is named by itself, not by all that follows from it", () => {
  expect(changed(setStage("lateral-tunnel"))).toEqual(["Pathway: Extracardiac → Lateral tunnel"]);
  expect(changed(setBody(bodyAt(12)))).toEqual(["Age of the body: 5 → 12\u202fyears"]);
});

test("several changes come in one order", () => {
  const [first, second] = changed(
    setParameter("fenestrationDiameter", 4),
    setParameter("conduitDiameter", 10),
  );
  expect(first).toContain("Conduit diameter");
  expect(second).toContain("Fenestration diameter");
});
