import { describe, expect, it } from "vitest";
import { readAddress, writeAddress } from "../../src/state/address.ts";
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
import { enterScene } from "../../src/state/enter-scene.ts";
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

describe("going to a scene", () => {
  it("as an edit changes the scene alone, and a person's own value stays", () => {
    expect(setScene("calf")(START)).toEqual({ ...START, scene: "calf" });
    const own = setParameter("calfPumpPressure", 60)(setScene("calf")(START));
    expect(setScene("pathway")(own).request.set.calfPumpPressure).toBe(60);
  });

  it("of the calf begins with a calf that works, which rests again when the scene is left unchanged", () => {
    const calf = enterScene("calf")(START);
    expect(calf.request.set.calfPumpPressure).toBeGreaterThan(0);
    expect(enterScene("calf")(calf)).toBe(calf);
    expect(enterScene("pathway")(calf)).toEqual(START);
    expect(enterScene("pathway")(enterScene("circuit")(calf))).toEqual(START);
    const own = setParameter("calfPumpPressure", 100)(START);
    expect(enterScene("calf")(own).request.set.calfPumpPressure).toBe(100);
    expect(enterScene("pathway")(enterScene("calf")(own)).request.set.calfPumpPressure).toBe(100);
  });

  it("never removes what a person has set, whatever the value, before or within the calf's scene", () => {
    const own = setParameter("calfPumpPressure", 60)(START);
    expect(enterScene("pathway")(enterScene("calf")(own))).toEqual(own);
    const within = setParameter(
      "calfPumpPressure",
      60,
    )(setParameter("calfPumpPressure", 80)(enterScene("calf")(START)));
    expect(enterScene("pathway")(within).request.set.calfPumpPressure).toBe(60);
    const linked = readAddress(writeAddress(enterScene("calf")(START))).state;
    expect(enterScene("pathway")(linked).request.set.calfPumpPressure).toBe(60);
  });

  it("that was left resting goes on resting until the scene is entered anew", () => {
    const resting = setParameter("calfPumpPressure", 0)(enterScene("calf")(START));
    expect(resting.request.set).toEqual({});
    expect(enterScene("pathway")(resting)).toEqual(START);
  });
});
