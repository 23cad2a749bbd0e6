/** Persons to begin with, and the volume rule that goes with what is set. */
import { describe, expect, it } from "vitest";
import { applyPatch } from "../../src/lesson/model/apply-patch.ts";
import { PRESET_NAMES, PRESETS } from "../../src/sim/presets.ts";
import { clearParameters, setParameter, setStage, setVolumeRule } from "../../src/state/edit.ts";
import { followRule } from "../../src/state/follow-rule.ts";
import { personOf, setPerson } from "../../src/state/person.ts";
import { START } from "../../src/state/scene-state.ts";

describe("a person", () => {
  it("is known again after being chosen, one after the other", () => {
    let state = START;
    for (const name of [...PRESET_NAMES, ...PRESET_NAMES.toReversed()]) {
      state = setPerson(name)(state);
      expect(personOf(state.request)).toBe(name);
      expect(state.request).toEqual(PRESETS[name]);
    }
  });

  it("keeps pathway, opening and effort, and comes after completion", () => {
    const set = setParameter("metabolicEquivalents", 4)(setParameter("fenestrationDiameter", 3)(START));
    const { request } = setPerson("typical-adult")(setStage("lateral-tunnel")(set));
    expect(request.stage).toBe("lateral-tunnel");
    expect(request.set).toMatchObject({ fenestrationDiameter: 3, metabolicEquivalents: 4, stiffness: 1.3 });
    expect(setPerson("typical-adult")(setStage("glenn")(START)).request.stage).toBe("extracardiac");
  });

  it("is none of them when its heart, body or stage is another", () => {
    const typical = setPerson("typical-adult")(START);
    expect(personOf(START.request)).toBeNull();
    expect(personOf(setParameter("stiffness", 2)(typical).request)).toBeNull();
    expect(personOf(setStage("glenn")(typical).request)).toBeNull();
  });

  it("can begin a lesson's step", () => {
    const { request } = applyPatch(START, { preset: "failing-adult", set: { fenestrationDiameter: 4 } });
    expect(request.set).toEqual({ ...PRESETS["failing-adult"].set, fenestrationDiameter: 4 });
    expect(request.body).toEqual(PRESETS["failing-adult"].body);
  });
});

describe("the volume rule that nobody has chosen", () => {
  const weaken = followRule(setParameter("contractility", 0.5));

  it("holds output for a weak heart, so that it congests, and goes back with it", () => {
    const weak = weaken(START);
    expect(weak.request.volumeRule).toBe("hold-output");
    expect(followRule(clearParameters)(weak)).toEqual(START);
    expect(followRule(setParameter("contractility", 1))(weak)).toEqual(START);
  });

  it("stays where it was chosen", () => {
    expect(weaken(setVolumeRule("fixed-volume")(START)).request.volumeRule).toBe("fixed-volume");
    const chosen = setVolumeRule("hold-atrial-pressure")(weaken(START));
    expect(followRule(setParameter("stiffness", 2))(chosen).request.volumeRule).toBe("hold-atrial-pressure");
  });

  it("stays with a person, whose atrium is part of what he or she is", () => {
    const failing = setPerson("failing-adult")(START);
    expect(followRule(setParameter("stiffness", 2))(failing).request.volumeRule).toBe("hold-atrial-pressure");
  });
});
