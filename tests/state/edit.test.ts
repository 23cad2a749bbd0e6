import { describe, expect, it } from "vitest";
import {
  clearParameter,
  nearestAllowed,
  releaseDye,
  setBeside,
  setParameter,
  setScene,
  setStage,
  togglePause,
} from "../../src/state/edit.ts";
import { START, showsField } from "../../src/state/scene-state.ts";

describe("an edit", () => {
  it("leaves the state that it was given as it was", () => {
    const before = JSON.stringify(START);
    setParameter("conduitDiameter", 24)(START);
    expect(JSON.stringify(START)).toBe(before);
  });

  it("brings a number into range and on a step", () => {
    expect(setParameter("conduitDiameter", 99)(START).request.set.conduitDiameter).toBe(30);
    expect(setParameter("conduitDiameter", 20.3)(START).request.set.conduitDiameter).toBe(20.5);
    expect(nearestAllowed({ min: 0, max: 8, step: 0.1 }, 0.1 * 3)).toBe(0.3);
  });

  it("leaves out what equals the default, so that equal scenes have equal records", () => {
    const edited = setParameter("conduitDiameter", 24)(START);
    expect(setParameter("conduitDiameter", 18)(edited)).toEqual(START);
    expect(clearParameter("conduitDiameter")(edited)).toEqual(START);
  });

  it("with an unknown name changes nothing", () => {
    expect(setParameter("noSuchParameter", 3)(START)).toBe(START);
  });

  it("of the stage keeps the rest", () => {
    const edited = setStage("lateral-tunnel")(setParameter("fenestrationDiameter", 4)(START));
    expect(edited.request.set.fenestrationDiameter).toBe(4);
    expect(edited.request.stage).toBe("lateral-tunnel");
  });

  it("never opens more than two panes beside the first", () => {
    expect(setBeside([{}, {}, {}])(START).beside).toHaveLength(2);
  });

  it("releases one dye pulse more, and pauses and resumes", () => {
    expect(releaseDye(releaseDye(START)).view.dye).toBe(2);
    expect(togglePause(START).view.paused).toBe(true);
    expect(togglePause(togglePause(START))).toEqual(START);
  });
});

it("dye has a field to be released into unless every pane's blood passes a pump, or the scene shows none", () => {
  const two = { ...START, request: { ...START.request, stage: "two-ventricle" } } as const;
  expect(showsField(START)).toBe(true);
  expect(showsField(two)).toBe(false);
  expect(showsField({ ...two, beside: [{ stage: "extracardiac" }] })).toBe(true);
  expect(showsField({ ...START, scene: "circuit" })).toBe(false);
});

it("the calf's scene begins with a calf that works, which rests again when the scene is left unchanged", () => {
  const calf = setScene("calf")(START);
  expect(calf.request.set.calfPumpPressure).toBeGreaterThan(0);
  expect(setScene("pathway")(calf)).toEqual(START);
  const own = setParameter("calfPumpPressure", 100)(START);
  expect(setScene("calf")(own).request.set.calfPumpPressure).toBe(100);
  expect(setScene("pathway")(setScene("calf")(own)).request.set.calfPumpPressure).toBe(100);
});
