/** Where things end: the right direction and size, or a plain refusal. */
import { expect, test } from "vitest";
import { checkRequest } from "../../../src/sim/circulation/check-request.ts";
import { occludeFenestration } from "../../../src/sim/circulation/experiments/test-occlusion.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";
import { within } from "../../within.ts";
import { lawsBroken } from "./laws-broken.ts";
import { ADULT, answer, CHILD, request } from "./requests.ts";

test("a fenestration of 0 mm is none at all", () => {
  const none = answer("extracardiac");
  const zero = answer("extracardiac", CHILD, { fenestrationDiameter: 0 });
  expect(zero.pressures).toEqual(none.pressures);
  expect(zero.flows.fenestration).toBe(0);
  expect(zero.pathway.ledger.some(({ branch }) => branch === "fenestration")).toBe(false);
});

test("the smallest opening is nearly none, and flow grows with the area until the opening itself takes the pressure off", () => {
  const flows = [0.2, 1, 2, 4, 6, 8].map(
    (diameter) => answer("extracardiac", CHILD, { fenestrationDiameter: diameter }).flows.fenestration,
  );
  expect(flows[0]).toBeLessThan(0.01);
  const growth = flows.slice(1).map((flow, i) => flow / flows[i]!);
  within(growth[1]!, 3.7, 4.1, "1 to 2 mm: four times the area");
  within(growth[2]!, 3.3, 3.9, "2 to 4 mm");
  within(flows[5]! / flows[3]!, 2, 3.3, "4 to 8 mm: less than the area's four times");
});

test("lungs three times as stiff: pathway up at held filling, output down at fixed volume", () => {
  const usual = answer("extracardiac", ADULT);
  const hard = answer("extracardiac", ADULT, { pulmonaryResistanceIndex: 4.8 });
  expect(hard.pressures.pathway - usual.pressures.pathway).toBeGreaterThan(5);
  const fixed = (set: Record<string, number>) => answer("extracardiac", ADULT, set, "fixed-volume");
  within(
    fixed({ pulmonaryResistanceIndex: 4.8 }).flows.systemic / fixed({}).flows.systemic,
    0.75,
    0.92,
    "output",
  );
});

test("a conduit of 8 mm costs several times the usual loss, and more in exertion", () => {
  const usual = answer("extracardiac", ADULT);
  const narrow = answer("extracardiac", ADULT, { conduitDiameter: 8 });
  expect(narrow.pathway.pressureDrop).toBeGreaterThan(3 * usual.pathway.pressureDrop);
  expect(narrow.pressures.ivc).toBeGreaterThan(usual.pressures.ivc + 1);
  const work = answer("extracardiac", ADULT, { conduitDiameter: 8, metabolicEquivalents: 4 });
  expect(work.pathway.pressureDrop).toBeGreaterThan(2 * narrow.pathway.pressureDrop);
});

test("a pathway all but blocked dams the lower body up and starves the lungs of its blood", () => {
  const usual = answer("extracardiac");
  const blocked = answer("extracardiac", CHILD, { conduitDiameter: 8, pathwayNarrowing: 80 });
  expect(blocked.run.converged).toBe(true);
  expect(blocked.pressures.ivc).toBeGreaterThan(usual.pressures.ivc + 5);
  within(blocked.flows.ivc / usual.flows.ivc, 0.2, 0.4, "lower body's blood");
  within(blocked.pathway.powerLoss / usual.pathway.powerLoss, 15, 40, "power");
});

test("haemoglobin from 7 to 20: blood flows less as it thickens, carries less and less more, and is drawn on less", () => {
  const answers = [7, 10, 14, 17, 20].map((haemoglobin) =>
    answer("extracardiac", { ...CHILD, haemoglobin }, { fenestrationDiameter: 4 }),
  );
  const gains: number[] = [];
  for (let i = 1; i < answers.length; i++) {
    const [less, more] = [answers[i - 1]!, answers[i]!];
    expect(more.extras.cardiacIndex!).toBeLessThan(less.extras.cardiacIndex!);
    expect(more.extras.oxygenExtraction!).toBeLessThan(less.extras.oxygenExtraction!);
    gains.push(more.extras.oxygenDelivery! - less.extras.oxygenDelivery!);
  }
  expect(gains).toEqual([...gains].sort((a, b) => b - a));
  const [thin, , usual, , thick] = answers.map(({ extras }) => extras.cardiacIndex!);
  within(thin! / usual!, 1.2, 1.5, "index at 7 over 14 g/dL");
  within(thick! / usual!, 0.65, 0.85, "index at 20 over 14 g/dL");
});

test("haemoglobin beyond these bounds is refused", () => {
  const checked = checkRequest({ ...request("extracardiac"), body: { ...CHILD, haemoglobin: 6 } });
  expect("faults" in checked && checked.faults[0]!.path).toBe("body.haemoglobin");
});

test("a blood volume that no body of this size has is refused in words", () => {
  for (const bloodVolume of [300, 9000]) {
    const { run } = answer("extracardiac", CHILD, { bloodVolume }, "fixed-volume");
    expect(run.converged).toBe(false);
    expect(run.reason).toMatch(/blood volume/);
  }
});

test("an output out of reach is refused in words", () => {
  const { run } = answer("extracardiac", CHILD, { contractility: 0.3, heldOutputIndex: 5 }, "hold-output");
  expect(run.converged).toBe(false);
  expect(run.reason).toMatch(/volume/);
});

test("veins that empty limit flow and never hold a negative volume", () => {
  const dry = answer("extracardiac", CHILD, { bloodVolume: 900, breathing: "deep" }, "fixed-volume");
  for (const [name, samples] of Object.entries(dry.traces.volumes))
    expect(Math.min(...samples), name).toBeGreaterThan(0);
  expect(dry.flows.systemic).toBeLessThan(0.6 * answer("extracardiac").flows.systemic);
});

test("a leaking atrioventricular valve lowers forward flow and raises the atrium at fixed volume", () => {
  const tight = answer("extracardiac", CHILD, {}, "fixed-volume");
  const leaking = answer("extracardiac", CHILD, { atrioventricularValveLeak: 30 }, "fixed-volume");
  within(leaking.flows.systemic / tight.flows.systemic, 0.6, 0.8, "forward flow");
  within(leaking.pressures.atrium - tight.pressures.atrium, 0.8, 2.5, "atrium, mmHg");
  expect(Math.min(...leaking.traces.flows.atrioventricularValve!)).toBeLessThan(-1);
  expect(Math.min(...tight.traces.flows.atrioventricularValve!)).toBe(0);
});

test("without atrial contraction output falls; against a closed valve the atrium's pressure peaks higher", () => {
  const fixed = (rhythm: string) => answer("extracardiac", CHILD, { rhythm }, "fixed-volume");
  const sinus = fixed("sinus");
  const peak = ({ traces }: typeof sinus) => Math.max(...traces.pressures.atrium!);
  within(fixed("no-atrial-contraction").flows.systemic / sinus.flows.systemic, 0.85, 0.97, "no kick");
  const junctional = fixed("junctional");
  within(junctional.flows.systemic / sinus.flows.systemic, 0.85, 0.97, "junctional");
  within(peak(junctional) - peak(sinus), 0.7, 3, "cannon wave, mmHg");
});

test("leg valves that leak undo most of what the calves pump", () => {
  const amplitude = (legValveLeak: number) => {
    const { traces } = answer("extracardiac", ADULT, { calfPumpPressure: 80, legValveLeak });
    return Math.min(...traces.flows.legs!);
  };
  expect(amplitude(0)).toBeCloseTo(0, 9);
  expect(amplitude(100)).toBeLessThan(-0.1);
});

test("the reflex defends arterial pressure, and can be switched off", () => {
  const low = (reflex: string) =>
    answer("extracardiac", CHILD, { reflex, systemicResistanceIndex: 12 }, "fixed-volume");
  const [kept, without, before] = [
    low("on"),
    low("off"),
    answer("extracardiac", CHILD, {}, "fixed-volume"),
  ].map(({ pressures }) => pressures.aortaMean);
  within((kept! - without!) / (before! - without!), 0.35, 0.7, "part of the fall that it takes back");
  expect(low("off").extras.reflexHeartRate).toBe(1);
});

test("inspired oxygen raises and height lowers saturation; lungs short of oxygen narrow, and the pathway's pressure rises", () => {
  const alveolar = answer("extracardiac");
  const oxygen = answer("extracardiac", CHILD, { inspiredOxygen: 40 });
  const high = answer("extracardiac", CHILD, { altitude: 2400 });
  within(oxygen.saturations.arterial - alveolar.saturations.arterial, 2.5, 5, "40 % oxygen, %");
  expect(high.saturations.arterial).toBeLessThan(alveolar.saturations.arterial - 3);
  expect(high.pressures.pathway).toBeGreaterThan(alveolar.pressures.pathway + 0.1);
  within(alveolar.pressures.pathway - oxygen.pressures.pathway, 0.03, 0.3, "pathway, mmHg");
});

test("acid and carbon dioxide narrow the lungs' vessels, a drug widens them", () => {
  const pathway = (set: Record<string, number>) => answer("extracardiac", CHILD, set).pressures.pathway;
  const usual = pathway({});
  expect(pathway({ carbonDioxide: 60 })).toBeGreaterThan(usual + 0.5);
  expect(pathway({ baseDeficit: 10 })).toBeGreaterThan(usual + 0.3);
  expect(pathway({ lungVasodilation: 30 })).toBeLessThan(usual - 0.5);
});

test("standing pools blood in the legs: output falls, the more the more their valves leak in exertion", () => {
  for (const stage of ["two-ventricle", "extracardiac"] as const) {
    const index = (set: Record<string, number | string>) => answer(stage, ADULT, set).extras.cardiacIndex!;
    const lying = index({});
    const upright = index({ posture: "upright" });
    expect(upright / lying).toBeLessThan(0.93);
    expect(upright / lying).toBeGreaterThan(0.65);
    const walking = { posture: "upright", metabolicEquivalents: 4 };
    within(
      index({ ...walking, legValveLeak: 100 }) / index(walking),
      0.96,
      0.996,
      "walking with leaking valves",
    );
  }
});

test("a pacemaker holds the rate; from the ventricle it costs output", () => {
  const paced = (rhythm: string) =>
    answer("extracardiac", ADULT, { rhythm, heartRate: 90 }, "fixed-volume").extras;
  const atrial = paced("aai");
  const ventricular = paced("vvi");
  expect([atrial.heartRate, ventricular.heartRate]).toEqual([90, 90]);
  expect(ventricular.cardiacIndex!).toBeLessThan(0.97 * atrial.cardiacIndex!);
});

test.each([
  ["extracardiac", { bloodVolume: 3000, reflex: "off" }, /below 30 mmHg/],
  ["extracardiac", { bloodVolume: 6500, stiffness: 2 }, /lungs would fill/],
  ["glenn", { altitude: 5000, inspiredOxygen: 15, lungShunt: 40 }, /oxygen/],
] as const)("a state that no one survives is no answer: %s, %o", (stage, set, reason) => {
  const { run } = answer(stage, ADULT, set, "fixed-volume");
  expect(run.converged).toBe(false);
  expect(run.reason).toMatch(reason);
});

test("a Valsalva manoeuvre whose flows outrun the steps is run with finer ones", () => {
  const set = {
    pulmonaryDistensibility: 4,
    lungVasodilation: 53,
    metabolicEquivalents: 9,
    bloodVolume: 7901,
  };
  const strain = { ...set, breathing: "valsalva", valsalvaPressure: 3 };
  const asked = request("glenn", { ageYears: 25, bsa: 1.9, haemoglobin: 19 }, strain, "fixed-volume");
  const strained = solve(asked);
  expect(lawsBroken(strained)).toEqual([]);
  expect(strained.run.reason).toMatch(/lungs would fill/);
});

test("neither effort nor reflex passes 220 - age beats a minute, a rate that is set may", () => {
  const rate = (heartRate: number) =>
    answer(
      "two-ventricle",
      { ...ADULT, ageYears: 60 },
      { heartRate, metabolicEquivalents: 8, systemicResistanceIndex: 10 },
    ).extras.heartRate!;
  within(rate(150), 155, 160 + 1e-6, "at 60 years");
  within(rate(180), 175, 180 + 1e-6, "set above it");
});

test("a test occlusion keeps the blood volume of the open state", () => {
  const { open, closed } = occludeFenestration(request("extracardiac", CHILD, { fenestrationDiameter: 5 }));
  expect(closed.extras.bloodVolume! / open.extras.bloodVolume!).toBeCloseTo(1, 9);
  expect(closed.flows.fenestration).toBe(0);
});

test("a Valsalva manoeuvre is reported as what is reached after ten seconds of it", () => {
  const { run, traces, pressures } = answer("extracardiac", ADULT, { breathing: "valsalva" });
  expect(run.converged).toBe(true);
  const { pleural, alveolar } = traces.pressures;
  expect(pleural![0]).toBeCloseTo(30, 6);
  // What holds the lungs open: as in a breath held at the same filling, in the range of quiet breathing (West).
  const held = answer("extracardiac", ADULT, { breathing: "held" }).traces.pressures;
  expect(alveolar![0]! - pleural![0]!).toBeCloseTo(held.alveolar![0]! - held.pleural![0]!, 6);
  expect(alveolar![0]! - pleural![0]!).toBeGreaterThan(3.7);
  expect(alveolar![0]! - pleural![0]!).toBeLessThan(5.9);
  expect(pressures.pathway).toBeGreaterThan(30);
});
