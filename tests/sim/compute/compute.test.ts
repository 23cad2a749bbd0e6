/** The headless contract, through the same text that the command reads. Long because each kind of request has its case. */
import { execFileSync, spawnSync } from "node:child_process";
import { describe, expect, test } from "vitest";
import { TRACE_NAMES } from "../../../src/sim/compute/asked-traces.ts";
import { KINDS } from "../../../src/sim/compute/kinds.ts";
import { compute, schemaText } from "../../../src/sim/compute/run-request.ts";
import { PARAMETERS } from "../../../src/sim/parameters/parameters.ts";
import { USUAL_HAEMOGLOBIN } from "../../../src/sim/parameters/request.ts";
import { within } from "../../within.ts";
import { ADULT, answer, CHILD } from "../circulation/requests.ts";

const CIRCULATION = {
  kind: "circulation",
  stage: "extracardiac",
  body: CHILD,
  volumeRule: "hold-atrial-pressure",
  set: { fenestrationDiameter: 4 },
};
const run = (input: unknown, format: "json" | "csv" = "json") => compute(JSON.stringify(input), format);

describe("kind circulation", () => {
  test("answers the contract's keys, the same as the page's solver", async () => {
    const { output, exit, errors } = await run(CIRCULATION);
    expect(exit).toBe(0);
    expect(errors).toEqual([]);
    const reported = JSON.parse(output);
    expect(Object.keys(reported)).toEqual([
      "pressures",
      "flows",
      "saturations",
      "pathway",
      "shares",
      "energy",
      "exchange",
      "run",
      "extras",
    ]);
    const solved = answer("extracardiac", CHILD, CIRCULATION.set);
    expect(reported.pressures).toEqual(solved.pressures);
    expect(reported.flows).toEqual(solved.flows);
    expect(reported.pathway.ledger[0]).toHaveProperty("source");
    expect(reported.run.converged).toBe(true);
  });
  test("as CSV gives one line a number with its unit", async () => {
    const { output } = await run(CIRCULATION, "csv");
    const lines = output.split("\r\n");
    expect(lines[0]).toBe("quantity,value,unit");
    expect(lines.find((line) => line.startsWith("pressures.pathway,"))).toMatch(
      /^pressures\.pathway,[\d.]+,mmHg$/,
    );
    const unitless = lines.filter((line) => /^[^,]+,-?[\d.e-]+,$/.test(line));
    expect(unitless).toEqual([]);
  });
  test("a bad request: exit 2, nothing on standard output, a line a fault", async () => {
    const { output, errors, exit } = await run({ ...CIRCULATION, stage: "x", set: { conduitDiameter: 3 } });
    expect(exit).toBe(2);
    expect(output).toBe("");
    expect(errors).toHaveLength(2);
    expect(errors[1]).toMatch(/^set\.conduitDiameter: found 3; allowed: a number from 8 to 30 mm$/);
  });
  test("no answer: exit 3 and the reason", async () => {
    const { output, errors, exit } = await run({
      ...CIRCULATION,
      volumeRule: "fixed-volume",
      set: { bloodVolume: 300 },
    });
    expect(exit).toBe(3);
    expect(output).toBe("");
    expect(errors[0]).toMatch(/blood volume/);
  });
  test.each(["", "{", "[]", "3", '{"kind":"circus"}'])("text %j is refused", async (text) => {
    const { exit, errors } = await compute(text, "json");
    expect(exit).toBe(2);
    expect(errors).toHaveLength(1);
  });
});

describe("kind test-occlusion", () => {
  test("answers open and closed at one blood volume", async () => {
    const { output } = await run({ ...CIRCULATION, kind: "test-occlusion" });
    const { open, closed } = JSON.parse(output);
    expect(closed.extras.bloodVolume).toBeCloseTo(open.extras.bloodVolume, 6);
    within(closed.saturations.arterial - open.saturations.arterial, 3, 10, "arterial saturation, %");
  });
  test("without a fenestration is refused", async () => {
    const { exit, errors } = await run({ ...CIRCULATION, kind: "test-occlusion", set: {} });
    expect(exit).toBe(2);
    expect(errors[0]).toMatch(/^set\.fenestrationDiameter/);
  });
});

describe("kind blood-loss", () => {
  const LOSS = { ...CIRCULATION, kind: "blood-loss", set: {}, lost: 100, minutes: 10 };
  test("answers before and after, less blood by what was lost and not given back", async () => {
    const { output } = await run(LOSS);
    const { before, after, regained } = JSON.parse(output);
    expect(before.extras.bloodVolume - after.extras.bloodVolume).toBeCloseTo(100 - regained, 0);
    expect(after.pressures.aortaMean).toBeLessThan(before.pressures.aortaMean);
    within(regained, 5, 60, "mL");
  });
  test("beyond its bounds, or of a loss that no one survives, is refused", async () => {
    const { exit, errors } = await run({ ...LOSS, lost: 5000, minutes: "ten" });
    expect(exit).toBe(2);
    expect(errors.join()).toMatch(/^lost: found 5000.*minutes: found "ten"/);
    expect((await run({ ...LOSS, lost: 1000 })).exit).toBe(3);
  });
  test("of someone who is not at rest is refused, setting by setting", async () => {
    const { exit, errors } = await run({ ...LOSS, set: { posture: "upright", metabolicEquivalents: 3 } });
    expect(exit).toBe(2);
    expect(errors.join()).toMatch(/^set\.posture: found "upright".*set\.metabolicEquivalents: found 3/);
    expect((await run({ ...LOSS, set: { posture: "lying", metabolicEquivalents: 1 } })).exit).toBe(0);
  });
  test("begins with a named person, haematocrit being that of the thinned blood", async () => {
    const asked = { kind: "blood-loss", preset: "typical-adult", lost: 300, minutes: 5 };
    const { exit, output } = await run(asked);
    expect(exit).toBe(0);
    const { regained, before, haematocritBefore, haematocritAfter } = JSON.parse(output);
    const left = before.extras.bloodVolume - 300;
    expect(haematocritBefore).toBe(45);
    expect(haematocritAfter).toBeCloseTo((45 * left) / (left + regained), 1);
  });
});

describe("kind sweep", () => {
  const SWEEP = {
    kind: "sweep",
    base: { ...CIRCULATION, set: {} },
    over: [
      { parameter: "fenestrationDiameter", from: 0, to: 4, count: 3 },
      { parameter: "pulmonaryResistanceIndex", values: [1.6, 3] },
    ],
    outputs: ["pressures.pathway", "saturations.arterial"],
  };
  test("gives rows for each value of the second quantity, the same as single answers", async () => {
    const { output } = await run(SWEEP);
    const reported = JSON.parse(output);
    expect(reported.axes[0].values).toEqual([0, 2, 4]);
    const single = answer("extracardiac", CHILD, { fenestrationDiameter: 4, pulmonaryResistanceIndex: 3 });
    expect(reported.outputs[0].values[1][2]).toBeCloseTo(single.pressures.pathway, 2);
  });
  test("as CSV one line a point, with units in the head", async () => {
    const { output } = await run(SWEEP, "csv");
    const lines = output.trim().split("\r\n");
    expect(lines).toHaveLength(7);
    expect(lines[0]).toContain(
      "fenestrationDiameter (mm),pulmonaryResistanceIndex (WU.m2),pressures.pathway (mmHg)",
    );
  });
  test("refuses unknown outputs, axes out of range, and too many points", async () => {
    const { errors } = await run({
      ...SWEEP,
      over: [{ parameter: "conduitDiameter", from: 1, to: 4, count: 3 }],
      outputs: ["pressures.path"],
    });
    expect(errors.map((line) => line.split(":")[0])).toEqual(["over[0].from", "over[0].to", "outputs[0]"]);
    const many = await run({
      ...SWEEP,
      over: [
        { parameter: "body.bsa", from: 0.5, to: 2, count: 100 },
        { parameter: "conduitDiameter", from: 10, to: 30, count: 100 },
      ],
    });
    expect(many.errors[0]).toMatch(/^over: found 10000 points/);
  });
  test("runs over the body too", async () => {
    const { output } = await run({
      ...SWEEP,
      base: { ...CIRCULATION, body: ADULT, set: {} },
      over: [{ parameter: "body.haemoglobin", values: [8, 14] }],
      outputs: ["extras.oxygenDelivery"],
    });
    const [low, high] = JSON.parse(output).outputs[0].values[0];
    // Thick blood carries more and flows less.
    expect(high).toBeGreaterThan(1.2 * low);
  });
});

describe("what is held, and by whom", () => {
  const reported = async (input: object) => JSON.parse((await run(input)).output);
  test("a preset stands for stage, body and settings; what is asked beside it is laid over it", async () => {
    const failing = await reported({ kind: "circulation", preset: "failing-adult" });
    const eased = await reported({
      kind: "circulation",
      preset: "failing-adult",
      set: { lungVasodilation: 40 },
    });
    expect(failing.pressures.atrium).toBeCloseTo(15, 1);
    expect(eased.pressures.pathway).toBeLessThan(failing.pressures.pathway - 0.5);
    const { errors } = await run({ kind: "circulation", preset: "nobody" });
    expect(errors.join()).toMatch(/preset: found "nobody"/);
  });
  test("a weaker heart congests unless another rule is asked for, and the answer says what was held", async () => {
    const body = ADULT;
    const usual = await reported({ kind: "circulation", stage: "extracardiac", body });
    const weak = await reported({
      kind: "circulation",
      stage: "extracardiac",
      body,
      set: { contractility: 0.7 },
    });
    expect(usual.run.held).toBe("volume given at rest until atrial pressure stands at 7.6 mmHg");
    expect(weak.run.held).toMatch(/until output stands at 2\.75/);
    expect(weak.pressures.svc).toBeGreaterThan(usual.pressures.svc + 1);
  });
});

describe("traces", () => {
  const asked = { ...CIRCULATION, traces: ["pressures.aorta", "flows.ivc"] };
  test("come beside the numbers, over one breath", async () => {
    const { traces } = JSON.parse((await run(asked)).output);
    expect(Object.keys(traces.curves)).toEqual(asked.traces);
    expect(traces.curves["flows.ivc"]).toHaveLength(traces.time.length);
    expect(traces.time.length).toBeGreaterThan(100);
  });
  test("are the table as CSV, with their units", async () => {
    const lines = (await run(asked, "csv")).output.trim().split("\r\n");
    expect(lines[0]).toBe('"time, s","pressures.aorta, mmHg","flows.ivc, L/min"');
    expect(lines[1]!.split(",")).toHaveLength(3);
  });
  test("unknown ones are refused by their place", async () => {
    const { errors, exit } = await run({ ...CIRCULATION, traces: ["pressures.aorta", "x"] });
    expect(exit).toBe(2);
    expect(errors[0]).toMatch(/^traces\[1\]: found "x"/);
  });
  test("every listed name is a curve of the answer", () => {
    const { traces } = answer("extracardiac");
    for (const name of TRACE_NAMES) {
      const [group, key] = name.split(".") as ["flows", string];
      expect(traces[group][key], name).toBeDefined();
    }
  });
});

describe("kind exertion-test", () => {
  test("finds the greatest effort that is met: near 19 mL/min/kg after completion (15.2-23.9, Mayo CPET cohort), far beyond in health; slopes under and about 3", async () => {
    const test = async (stage: string) =>
      JSON.parse((await run({ kind: "exertion-test", stage, body: ADULT })).output);
    const single = await test("extracardiac");
    expect(single.limited).toBe(true);
    expect(single.peak.oxygenUse).toBeGreaterThan(15.2);
    expect(single.peak.oxygenUse).toBeLessThan(23.9);
    expect(single.pressureSlope).toBeGreaterThan(0.8);
    expect(single.pressureSlope).toBeLessThan(3);
    const healthy = await test("two-ventricle");
    expect(healthy.peak.oxygenUse).toBeGreaterThan(1.5 * single.peak.oxygenUse);
    const lines = (
      await run({ kind: "exertion-test", stage: "extracardiac", body: ADULT }, "csv")
    ).output.trim();
    expect(lines.split("\r\n")).toHaveLength(single.steps.length + 1);
  });
});

describe("a sweep that takes long", () => {
  const LONG = {
    kind: "sweep",
    base: { ...CIRCULATION, set: {} },
    over: [
      { parameter: "pulmonaryResistanceIndex", from: 0.5, to: 8, count: 50 },
      { parameter: "body.bsa", from: 0.5, to: 2.5, count: 50 },
    ],
    outputs: ["pressures.pathway"],
  };
  test("ends at its limit with what it has: the rest is null, with the reason, and each point was reported", async () => {
    const reported: number[] = [];
    const { output, exit } = await compute(JSON.stringify({ ...LONG, maxSeconds: 1 }), "json", (done) => {
      reported.push(done);
    });
    expect(exit).toBe(0);
    const { outputs, failures } = JSON.parse(output);
    const values: (number | null)[] = outputs[0].values.flat();
    expect(values).toHaveLength(2500);
    // The first point: lungs of 0.5 WU.m2 in a body of 0.5 m2.
    const first = {
      ...LONG.base,
      body: { ...LONG.base.body, bsa: 0.5 },
      set: { pulmonaryResistanceIndex: 0.5 },
    };
    const alone = JSON.parse((await compute(JSON.stringify(first), "json")).output);
    expect(values[0]).toBeCloseTo(alone.pressures.pathway, 9);
    expect(values.at(-1)).toBeNull();
    expect(failures.at(-1)).toEqual({ at: [8, 2.5], reason: "not reached within maxSeconds, 1 s" });
    expect(reported).toHaveLength(2501);
    expect(reported.at(-1)).toBe(1);
  });
  test("refuses a limit out of range", async () => {
    const { errors } = await run({ ...LONG, maxSeconds: 0 });
    expect(errors).toEqual(["maxSeconds: found 0; allowed: a number from 0.001 to 86400 s"]);
  });
  test("reports its progress where there is no terminal, a line now and then", () => {
    const { stderr, status } = spawnSync(
      "node",
      ["node_modules/tsx/dist/cli.mjs", "src/cli/compute.ts", "-"],
      { input: JSON.stringify({ ...LONG, maxSeconds: 7 }) },
    );
    expect(status).toBe(0);
    expect(stderr.toString()).toMatch(/^(progress: \d+ %\n)+$/);
  });
});

test("a byte-order mark in front is no fault", async () => {
  const { exit } = await compute(`\uFEFF${JSON.stringify(CIRCULATION)}`, "json");
  expect(exit).toBe(0);
});

describe("the schema", () => {
  const schema = JSON.parse(schemaText());
  test("is JSON Schema 2020-12 with one definition a kind", () => {
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(Object.keys(schema.$defs)).toEqual(KINDS.map(({ kind }) => kind));
  });
  test("asks for age and size of the body, and states the default haemoglobin", () => {
    const { body } = schema.$defs.circulation.properties;
    expect(body.required).toEqual(["ageYears", "bsa"]);
    expect(body.properties.haemoglobin.default).toBe(USUAL_HAEMOGLOBIN);
  });
  test("states every parameter's unit and range", () => {
    const { properties } = schema.$defs.circulation.properties.set;
    for (const parameter of PARAMETERS) {
      if (parameter.kind === "word") expect(properties[parameter.name].enum).toEqual(parameter.words);
      else expect(properties[parameter.name].description).toContain(`${parameter.unit}: `);
    }
  });
});

describe("the command", () => {
  const command = ["node_modules/tsx/dist/cli.mjs", "src/cli/compute.ts"];
  test("reads standard input and prints the answer alone", () => {
    const output = execFileSync("node", [...command, "-"], { input: JSON.stringify(CIRCULATION) });
    expect(JSON.parse(output.toString()).run.converged).toBe(true);
  }, 60_000);
  test("refuses unknown flags and missing files with exit 2 and one line", () => {
    for (const words of [["--nonsense"], ["/nowhere/at/all.json"], []]) {
      const { status, stdout, stderr } = spawnSync("node", [...command, ...words]);
      expect(status).toBe(2);
      expect(stdout.toString()).toBe("");
      expect(stderr.toString().trim().split("\n")).toHaveLength(1);
    }
  }, 60_000);
});
