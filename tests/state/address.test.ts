import fc from "fast-check";
import * as v from "valibot";
import { describe, expect, it } from "vitest";
import { patchSchema } from "../../src/lesson/format/scene-patch.ts";
import { checkRequest } from "../../src/sim/circulation/check-request.ts";
import type { Parameter } from "../../src/sim/parameters/parameter.ts";
import { PARAMETERS } from "../../src/sim/parameters/parameters.ts";
import {
  BODY_RANGES,
  type Body,
  CASES,
  type ParameterValue,
  STAGES,
  VOLUME_RULES,
} from "../../src/sim/parameters/request.ts";
import { LONGEST_ADDRESS, LONGEST_READ, readAddress, writeAddress } from "../../src/state/address.ts";
import { parameterCode } from "../../src/state/address-pieces.ts";
import { nearestAllowed } from "../../src/state/edit.ts";
import {
  COLOURINGS,
  OVERLAYS,
  PLAY_SPEEDS,
  paneRequest,
  SCENES,
  type SceneState,
  START,
} from "../../src/state/scene-state.ts";

const settingFor = (parameter: Parameter): fc.Arbitrary<ParameterValue> =>
  parameter.kind === "word"
    ? fc.constantFrom(...parameter.words)
    : fc
        .double({ min: parameter.min, max: parameter.max, noNaN: true })
        .map((value) => nearestAllowed(parameter, value) + 0);

const settings = fc
  .record(Object.fromEntries(PARAMETERS.map((parameter) => [parameter.name, settingFor(parameter)])), {
    requiredKeys: [],
  })
  .map((set) => set as Record<string, ParameterValue>);

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
    focus: fc.constantFrom(null, "tee", "leftPulmonaryArtery"),
    camera: fc.constantFrom("whole", "fenestration"),
    swipe: fc.constantFrom(null, 0, 37),
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

  it(`fits ${LONGEST_ADDRESS} characters with every control of one stage moved`, () => {
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

/** Texts that look like addresses: known pieces with any number, in range or far from it. */
const number = fc.oneof(
  fc.double({ min: -100, max: 10_000, noNaN: true }).map((value) => String(Number(value.toPrecision(4)))),
  fc.constantFrom("", "-", ".", "1e9", "NaN", "Infinity", "0", "0.25", "2.45"),
);
const piece = fc.oneof(
  fc.tuple(number, number, number).map((parts) => `b${parts.join("_")}`),
  fc
    .array(fc.tuple(fc.constantFrom(...PARAMETERS), number), { maxLength: 4 })
    .chain((set) =>
      fc
        .constantFrom("s", "w~x")
        .map((head) => head + set.map(([{ name }, value]) => parameterCode(name) + value).join("")),
    ),
  number.map((value) => `r${value}`),
  fc.array(number, { maxLength: 15 }).map((clots) => `q${clots.join("_")}`),
  fc.constantFrom(...STAGES).map((stage) => `t${stage}`),
  fc.string({ maxLength: 6 }),
);
const texts = fc.array(piece, { maxLength: 6 }).map((pieces) => ["1", ...pieces].join("~"));

describe("every state that an address can hold", () => {
  it("is accepted by the model, in each of its panes", () => {
    fc.assert(
      fc.property(texts, (text) => {
        const { state } = readAddress(text);
        for (let pane = 0; pane <= state.beside.length; pane++)
          expect(checkRequest(paneRequest(state, pane))).not.toHaveProperty("faults");
      }),
      { numRuns: 2000 },
    );
  });

  it("opens as it was written, or reports what was changed", () => {
    const names = Object.keys(BODY_RANGES) as (keyof Body)[];
    fc.assert(
      fc.property(
        fc.tuple(number, number, number),
        fc.constantFrom(...PARAMETERS),
        number,
        (parts, row, value) => {
          const text = `1~b${parts.join("_")}~s${parameterCode(row.name)}${value}`;
          const { state, dropped } = readAddress(text);
          const reported = dropped.map(({ path }) => path);
          names.forEach((name, n) => {
            const asWritten = parts[n] !== "" && state.request.body[name] === Number(parts[n]);
            expect(asWritten || reported.includes(`body.${name}`), text).toBe(true);
          });
          const kept = row.name in state.request.set && state.request.set[row.name] === Number(value);
          expect(kept || reported.some((path) => path.startsWith("set")), text).toBe(true);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("has a body within the one table of ranges: 0.25 m2 is reported and raised, 2.45 m2 is accepted", () => {
    const small = readAddress("1~b1_0.25_14");
    expect(small.state.request.body.bsa).toBe(BODY_RANGES.bsa.min);
    expect(small.dropped).toEqual([{ path: "body.bsa", found: "0.25", allowed: "0.3 to 2.5" }]);
    expect(readAddress("1~b30_2.45_14")).toMatchObject({
      state: { request: { body: { bsa: 2.45 } } },
      dropped: [],
    });
  });

  it("and a lesson share that table", () => {
    const holds = (body: Body) => v.safeParse(patchSchema, { body }).success;
    for (const name of Object.keys(BODY_RANGES) as (keyof Body)[]) {
      const { min, max } = BODY_RANGES[name];
      for (const [value, good] of [
        [min, true],
        [max, true],
        [min - 0.01, false],
        [max + 0.01, false],
      ] as const)
        expect(holds({ ...CASES.caseA, [name]: value }), `${name} ${value}`).toBe(good);
    }
  });
});

describe("a broken address", () => {
  it("of 14,000 characters is read in part and reported in a few lines", () => {
    const { dropped } = readAddress(`1~${"e9~".repeat(4700)}`);
    expect(dropped[0]).toEqual({
      path: "link",
      found: "14102 characters",
      allowed: `at most ${LONGEST_READ}`,
    });
    expect(dropped.length).toBeLessThan(LONGEST_READ);
  });

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

describe("a link to the calf", () => {
  it("squeezes where it names the scene alone, for as long as the scene is shown", () => {
    const { state, dropped } = readAddress("1~pcalf");
    expect(dropped).toEqual([]);
    expect(state.request.set).toEqual({ calfPumpPressure: 60 });
    expect(state.lent).toEqual(["calfPumpPressure"]);
  });

  it("rests where someone left it at rest, and keeps a pressure of one's own", () => {
    const resting: SceneState = { ...START, scene: "calf" };
    expect(readAddress(writeAddress(resting)).state).toEqual(resting);
    const own = { ...resting, request: { ...resting.request, set: { calfPumpPressure: 30 } } };
    expect(readAddress(writeAddress(own)).state).toEqual(own);
  });
});
