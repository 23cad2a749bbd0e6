import { describe, expect, test } from "vitest";
import { nameFault } from "../../../src/lesson/model/figure-paths.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { readPlace } from "../../../src/modes/shared/address/place.ts";
import { compute } from "../../../src/sim/compute/run-request.ts";
import { ALIASES, currentId, currentIds, currentPath } from "../../../src/sim/parameters/aliases.ts";
import { findOutput } from "../../../src/sim/parameters/outputs.ts";
import { findParameter, PARAMETERS } from "../../../src/sim/parameters/parameters.ts";
import { STAGES } from "../../../src/sim/parameters/request.ts";
import { readAddress } from "../../../src/state/address.ts";
import { parameterCode } from "../../../src/state/address-pieces.ts";

const entries = (kind: keyof typeof ALIASES) => Object.entries(ALIASES[kind]);
const BODY = { ageYears: 5, bsa: 0.72, haemoglobin: 14 };

describe("the table of earlier ids", () => {
  test("leads to ids that exist, and from none that does", () => {
    for (const [earlier, now] of entries("parameters")) {
      expect(findParameter(now), now).toBeDefined();
      expect(findParameter(earlier), earlier).toBeUndefined();
    }
    const words = [...STAGES, ...PARAMETERS.flatMap((each) => (each.kind === "word" ? each.words : []))];
    for (const [earlier, now] of entries("words")) {
      expect(words).toContain(now);
      expect(words).not.toContain(earlier);
    }
    for (const [earlier, now] of entries("outputs").filter(([path]) => path.startsWith("extras."))) {
      expect(findOutput(now), now).toBeDefined();
      expect(findOutput(earlier), earlier).toBeUndefined();
    }
  });

  test("gives each earlier and each present parameter a different code in links", () => {
    const names = [
      ...PARAMETERS.map(({ name }) => name),
      ...entries("parameters").map(([earlier]) => earlier),
    ];
    expect(new Set(names.map(parameterCode)).size).toBe(names.length);
  });

  test("knows no ids from a record's own methods", () => {
    expect(currentId("words", "toString")).toBe("toString");
  });
});

describe("earlier ids are read", () => {
  const answers = async (request: object) => {
    const { output, errors } = await compute(JSON.stringify(request), "json");
    expect(errors).toEqual([]);
    return JSON.parse(output);
  };

  test("in a request for one circulation: stage, parameters, pattern of breathing", async () => {
    const request = (stage: string, set: object) => ({
      kind: "circulation",
      stage,
      body: BODY,
      volumeRule: "hold-atrial-pressure",
      set,
    });
    for (const [earlier, now] of [
      [request("before-completion", {}), request("glenn", {})],
      [
        request("extracardiac", { inletValveLeak: 10, outletValveLeak: 5, lungDistension: 1 }),
        request("extracardiac", {
          atrioventricularValveLeak: 10,
          semilunarValveLeak: 5,
          pulmonaryDistensibility: 1,
        }),
      ],
      [
        request("extracardiac", { breathing: "strain", strainPressure: 20 }),
        request("extracardiac", { breathing: "valsalva", valsalvaPressure: 20 }),
      ],
    ] as const) {
      const [was, is] = [await answers(earlier), await answers(now)];
      expect(was.pressures).toEqual(is.pressures);
      expect(was.extras).toEqual(is.extras);
    }
  });

  test("in a sweep: what varies and what is asked for", async () => {
    const sweep = (parameter: string, output: string) => ({
      kind: "sweep",
      base: { kind: "circulation", stage: "extracardiac", body: BODY },
      over: [{ parameter, values: [1, 2] }],
      outputs: [output],
    });
    const was = await answers(sweep("lungDistension", "extras.lungArteryPressure"));
    expect(was).toEqual(await answers(sweep("pulmonaryDistensibility", "extras.pulmonaryArteryPressure")));
    expect(was.outputs[0].values[0][0]).toBeGreaterThan(5);
  });

  test("a parameter given by both of its ids is refused", async () => {
    const { exit, errors } = await compute(
      JSON.stringify({
        kind: "circulation",
        stage: "extracardiac",
        body: BODY,
        set: { strainPressure: 20, valsalvaPressure: 30 },
      }),
      "json",
    );
    expect(exit).toBe(2);
    expect(errors[0]).toContain("strainPressure");
  });

  test("in a link: stage whole and short, codes of parameters, a highlighted place, the mode", () => {
    for (const stage of ["before-completion", "bc", "glenn"]) {
      const { state, dropped } = readAddress(`1~t${stage}`);
      expect(dropped, stage).toEqual([]);
      expect(state.request.stage).toBe("glenn");
    }
    const code = parameterCode("strainPressure");
    const read = readAddress(`1~s${code}20${parameterCode("breathing")}_strain_~klungArtery`);
    expect(read.dropped).toEqual([]);
    expect(read.state.request.set).toEqual({ valsalvaPressure: 20, breathing: "valsalva" });
    expect(read.state.view.focus).toBe("pulmonaryArtery");
    expect(readPlace("?setting=kiosk")).toEqual(readPlace("?mode=kiosk"));
    expect(readPlace("?setting=kiosk").place.mode).toBe("kiosk");
  });

  test("in a lesson: scenes, claims' paths, a goal's control", () => {
    expect(
      currentIds({ states: { before: { stage: "before-completion" } }, control: "strainPressure" }),
    ).toEqual({ states: { before: { stage: "glenn" } }, control: "valsalvaPressure" });
    expect(currentPath("second.set.strainPressure")).toBe("second.set.valsalvaPressure");
    expect(nameFault("set.strainPressure", [])).toBeNull();
    const text = [
      "---",
      "id: x",
      "number: 90",
      "title: X",
      "reader: testers",
      "aim: show",
      "remember: Nothing",
      "tell: Nothing",
      "start: { stage: before-completion }",
      "---",
      "",
    ].join("\n");
    const found = JSON.stringify(readLesson(text, "x.md"));
    expect(found).not.toContain("before-completion");
  });
});
