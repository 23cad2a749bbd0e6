import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PARAMETERS, type Parameter } from "../../src/sim/parameters.ts";
import { CASES, type Setting, STAGES, VOLUME_RULES } from "../../src/sim/request.ts";
import { LONGEST_ADDRESS, PLAY_SPEEDS, readAddress, writeAddress } from "../../src/state/address.ts";
import { parameterCode } from "../../src/state/address-pieces.ts";
import { nearestAllowed } from "../../src/state/edit.ts";
import { COLOURINGS, OVERLAYS, SCENES, type SceneState, START } from "../../src/state/scene-state.ts";

const settingFor = (parameter: Parameter): fc.Arbitrary<Setting> =>
  parameter.kind === "word"
    ? fc.constantFrom(...parameter.words)
    : fc
        .double({ min: parameter.min, max: parameter.max, noNaN: true })
        .map((value) => nearestAllowed(parameter, value) + 0);

const settings = fc
  .record(Object.fromEntries(PARAMETERS.map((parameter) => [parameter.name, settingFor(parameter)])), {
    requiredKeys: [],
  })
  .map((set) => set as Record<string, Setting>);

const states: fc.Arbitrary<SceneState> = fc.record({
  version: fc.constant(1 as const),
  scene: fc.constantFrom(...SCENES),
  request: fc.record({
    kind: fc.constant("circulation" as const),
    stage: fc.constantFrom(...STAGES),
    body: fc.constantFrom(CASES.caseA, CASES.caseB),
    volumeRule: fc.constantFrom(...VOLUME_RULES),
    set: settings,
  }),
  beside: fc.array(fc.record({ stage: fc.constantFrom(...STAGES) }), { maxLength: 2 }),
  view: fc.record({
    colouring: fc.constantFrom(...COLOURINGS),
    overlay: fc.constantFrom(...OVERLAYS),
    labels: fc.boolean(),
    handles: fc.boolean(),
    streamlines: fc.boolean(),
    gradeLine: fc.boolean(),
    ledger: fc.boolean(),
    playSpeed: fc.integer({ min: 1, max: 20 }).map((tenths) => nearestAllowed(PLAY_SPEEDS, tenths / 10)),
    paused: fc.boolean(),
    dye: fc.constant(0),
    focus: fc.constantFrom(null, "tee", "leftLungArtery"),
    camera: fc.constantFrom("whole", "fenestration"),
    clots: fc.constantFrom([], [2, 5]),
  }),
});

describe("an address", () => {
  it("gives back the very state that it was written from", () => {
    fc.assert(
      fc.property(states, (state) => {
        const read = readAddress(writeAddress(state));
        expect(read.dropped).toEqual([]);
        expect(read.state).toEqual(state);
      }),
    );
  });

  it("of the start is the version alone", () => {
    expect(writeAddress(START)).toBe("1");
  });

  it("holds characters that a URL carries unescaped", () => {
    fc.assert(
      fc.property(states, (state) => {
        expect(writeAddress(state)).toMatch(/^[A-Za-z0-9\-._~]+$/);
      }),
    );
  });

  it("fits 300 characters with every control of one stage moved", () => {
    for (const stage of STAGES) {
      const set = Object.fromEntries(
        PARAMETERS.filter((parameter) => parameter.stages?.includes(stage) ?? true).map((parameter) => [
          parameter.name,
          parameter.kind === "word"
            ? parameter.words.at(-1)!
            : nearestAllowed(parameter, parameter.min + 0.77 * (parameter.max - parameter.min)),
        ]),
      );
      const request = {
        ...START.request,
        stage,
        body: CASES.caseB,
        volumeRule: "fixed-volume" as const,
        set,
      };
      const state: SceneState = { ...START, request };
      expect(writeAddress(state).length, stage).toBeLessThanOrEqual(LONGEST_ADDRESS);
    }
  });

  it("has a different code for every parameter", () => {
    expect(new Set(PARAMETERS.map(({ name }) => parameterCode(name))).size).toBe(PARAMETERS.length);
  });

  it("keeps its codes for good: links already given out depend on them", () => {
    expect(parameterCode("conduitDiameter")).toBe("gsg");
    expect(parameterCode("fenestrationDiameter")).toBe("ipq");
  });
});

describe("a broken address", () => {
  it("opens some valid state, whatever the text", () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const { state } = readAddress(text);
        expect(readAddress(writeAddress(state))).toEqual({ state, dropped: [] });
      }),
    );
    fc.assert(
      fc.property(states, fc.nat(), fc.string({ maxLength: 3 }), (state, place, noise) => {
        const text = writeAddress(state);
        const at = place % text.length;
        const read = readAddress(text.slice(0, at) + noise + text.slice(at + 1));
        expect(readAddress(writeAddress(read.state)).dropped).toEqual([]);
      }),
    );
  });

  it("says what was dropped and takes the nearest", () => {
    const code = parameterCode("conduitDiameter");
    const { state, dropped } = readAddress(`1~textracardiak~s${code}99zzz4~cpurple`);
    expect(state.request.stage).toBe("extracardiac");
    expect(state.request.set.conduitDiameter).toBe(30);
    expect(state.view.colouring).toBe("origin");
    expect(dropped.map(({ path }) => path)).toEqual(["stage", "set.conduitDiameter", "set", "colouring"]);
  });

  it("from a newer version keeps what it understands and says so", () => {
    const { state, dropped } = readAddress("7~tlateral-tunnel");
    expect(state.request.stage).toBe("lateral-tunnel");
    expect(dropped).toEqual([{ path: "version", found: "7", allowed: "1" }]);
  });
});
