/** Quantities under stress: effort, blood loss, pressure from outside, height, rhythm. Same rules as in rows.ts. Long because it is one table. */
import type { Circulation } from "../../sim/circulation/answer.ts";
import { brainFactor } from "../../sim/circulation/brain-flow.ts";
import { solve } from "../../sim/circulation/solve.ts";
import {
  type Body,
  CASES,
  type ParameterValue,
  type Stage,
  type VolumeRule,
} from "../../sim/parameters/request.ts";
import { bloodRows } from "./blood-rows.ts";
import { presetRows } from "./preset-rows.ts";
import { extra, INDEX, type Row, row, type Section } from "./validation-row.ts";

const ADULT = CASES.caseB;
const CHILD = CASES.caseA;
const BEFORE = { ...CHILD, haemoglobin: 16.5 };
/** Mean age of those paced (PubMed 34661729), at a junctional rate usual for it (common practice, no source). */
const TEN: Body = { ageYears: 10, bsa: 1.1, haemoglobin: 14 };

const ask = (
  stage: Stage,
  body: Body,
  set: Readonly<Record<string, ParameterValue>> = {},
  volumeRule: VolumeRule = "hold-atrial-pressure",
): Circulation => solve({ kind: "circulation", stage, body, volumeRule, set });

const single = (set: Readonly<Record<string, ParameterValue>> = {}, rule?: VolumeRule) =>
  ask("extracardiac", ADULT, set, rule);
const healthy = (set: Readonly<Record<string, ParameterValue>> = {}, rule?: VolumeRule) =>
  ask("two-ventricle", ADULT, set, rule);
const index = (circulation: Circulation): number => extra(circulation, "cardiacIndex");
const percent = (now: number, before: number): number => 100 * (now / before - 1);

export const stressSections = (): readonly Section[] => [
  { title: "Stress: effort", rows: effort() },
  { title: "Stress: a well, a typical and a failing adult", rows: presetRows() },
  { title: "Stress: blood, volume and posture", rows: bloodRows() },
  { title: "Stress: pressure from outside", rows: outside() },
  { title: "Stress: waves, breath and rhythm", rows: waves() },
  { title: "Stress: height and lungs", rows: [...lungs(), ...carbonDioxideRows()] },
];

const met = (metabolicEquivalents: number) => ({ metabolicEquivalents });
const CLAESSEN = "Claessen 2019, PMC6512107";
const HOSKOTE = "Hoskote, J Am Coll Cardiol 2004 (35, 45 and 55 mmHg)";
const MIRANDA = "Miranda, Eur J Heart Fail 2024 (the 13 of 72)";

const effort = (): Row[] => [...healthyEffort(), ...pressuresInEffort(), ...outputInEffort()];

function healthyEffort(): Row[] {
  const well = healthy(met(8));
  return [
    row(
      "two ventricles, index at 8 MET",
      INDEX,
      index(well),
      [8, 10],
      "5-6 L more for each L of oxygen, textbook",
    ),
    row(
      "two ventricles, pulmonary artery at 8 MET",
      "mmHg",
      well.pressures.pathway,
      [20, 31],
      "19.4 +- 4.8 in mild effort to 31, Kovacs 2009",
    ),
    row(
      "two ventricles, mixed venous at 8 MET",
      "%",
      extra(well, "mixedVenousSaturation"),
      [20, 45],
      "20-45, textbook",
    ),
  ];
}

function pressuresInEffort(): Row[] {
  const five = single(met(5));
  return [
    row(
      "after completion, pathway at 5 MET",
      "mmHg",
      five.pressures.pathway,
      [14.5, 19.5],
      `16 (14.5-19.5), ${MIRANDA}`,
    ),
    row(
      "after completion, wedge at 5 MET",
      "mmHg",
      five.pressures.pulmonaryVein,
      [8, 14],
      `12 (8-14), ${MIRANDA}`,
    ),
    row(
      "after completion, arterial saturation at 5 MET",
      "%",
      five.saturations.arterial,
      [85, 93],
      `89 (85-93), ${MIRANDA}`,
    ),
  ];
}

function outputInEffort(): Row[] {
  const [rest, five, six, eight, ten] = [1, 5, 6, 8, 10].map((each) => single(met(each))) as [
    Circulation,
    Circulation,
    Circulation,
    Circulation,
    Circulation,
  ];
  const well = healthy(met(8));
  return [
    row(
      "after completion, stroke volume at 8 over 5 MET",
      "1",
      extra(eight, "strokeVolume") / extra(five, "strokeVolume"),
      [0.6, 0.97],
      `falls early, ${CLAESSEN}`,
    ),
    row(
      "after completion, index at 10 over 8 MET",
      "1",
      index(ten) / index(eight),
      [0.9, 1.08],
      `plateau, ${CLAESSEN}`,
    ),
    row(
      "after completion over two ventricles, index at 8 MET",
      "1",
      index(eight) / index(well),
      [0.44, 0.75],
      "67 % (44-93) of predicted in most, Miranda 2024",
    ),
    row(
      "after completion, rise of heart rate at 10 MET",
      "1/min",
      extra(ten, "heartRate") - extra(rest, "heartRate"),
      [50, 92],
      `71 +- 21, ${CLAESSEN}`,
    ),
    row(
      "after completion, oxygen used at 6 MET",
      "mL/min/kg",
      extra(six, "oxygenUsePerKilogram"),
      [15.2, 23.9],
      "peak 19.1 (15.2-23.9), Mayo CPET cohort",
    ),
    row(
      "after completion, mixed venous at 8 MET",
      "%",
      extra(eight, "mixedVenousSaturation"),
      [20, 35],
      "20-30 at the greatest effort, textbook",
    ),
    row("coronary sinus at 5 MET", "%", extra(five, "coronarySinusSaturation"), [28, 36], "30-35, textbook"),
    row(
      "at the Glenn stage, arterial saturation at 3 MET",
      "%",
      ask("glenn", BEFORE, met(3)).saturations.arterial,
      [58, 72],
      "about 60-70, plain sense",
      "a quarter of the oxygen asked for is missing there: it would take twice the flow through this child's upper vena cava",
    ),
  ];
}

function outside(): Row[] {
  const rest = healthy();
  const strain = healthy({ breathing: "valsalva" });
  const singleRest = single();
  const singleStrain = single({ breathing: "valsalva" });
  const pressed = healthy({ abdominalPressure: 20 });
  const ventilated = (endExpiratoryPressure: number) =>
    ask("extracardiac", CHILD, {
      breathing: "ventilator",
      endExpiratoryPressure,
      ventilatorPressure: endExpiratoryPressure + 15,
    });
  return [
    row(
      "strain of 30 mmHg, two ventricles, arterial mean over rest",
      "1",
      strain.pressures.aortaMean / rest.pressures.aortaMean,
      [0.75, 1.1],
      "kept, textbook; Rocchini 1985",
    ),
    row(
      "the same, stroke volume",
      "1",
      extra(strain, "strokeVolume") / extra(rest, "strokeVolume"),
      [0.3, 0.65],
      "halves, textbook",
    ),
    row(
      "strain after completion, stroke volume over rest",
      "1",
      extra(singleStrain, "strokeVolume") / extra(singleRest, "strokeVolume"),
      [0.4, 0.9],
      "falls, Van De Bruaene 2015",
    ),
    row(
      "20 mmHg in the abdomen, two ventricles, index over rest",
      "1",
      index(pressed) / index(rest),
      [0.6, 0.95],
      "falls, Anesthesiology 2000;92:1568",
    ),
    row(
      "the same, inferior vena cava above right atrium",
      "mmHg",
      pressed.pressures.ivc - extra(pressed, "rightAtrium"),
      [5, 22],
      "a waterfall at the diaphragm, Takata 1990; the same",
    ),
    row(
      "12 mmHg in the abdomen after completion, index over rest",
      "1",
      index(single({ abdominalPressure: 12 })) / index(singleRest),
      [0.85, 1.1],
      "no significant change, JA Clin Rep 2021, s40981-021-00456-6 (one patient)",
    ),
    row(
      "end-expiratory pressure 0 to 13 cmH2O, child, index",
      "%",
      percent(index(ventilated(13)), index(ventilated(0))),
      [-32, -12],
      "-23 at 10-15 mbar in infants, source not found again",
    ),
  ];
}

function waves(): Row[] {
  const rest = single();
  const systolic = ({ traces }: Circulation, name: string): number => {
    const flow = [...(traces.flows[name] ?? [])].slice(0, -1);
    const inSystole = (i: number) => ((traces.time[i] ?? 0) / traces.heartPeriod) % 1 < 0.4;
    const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
    return (100 * sum(flow.filter((_, i) => inSystole(i)))) / sum(flow);
  };
  const phasic = ({ traces }: Circulation, name: string): number => {
    const flow = [...(traces.flows[name] ?? [])].slice(0, -1);
    const inspired = Math.round(0.36 * flow.length);
    const mean = (values: readonly number[]) =>
      values.reduce((total, value) => total + value, 0) / values.length;
    return mean(flow.slice(0, inspired)) / mean(flow.slice(inspired));
  };
  const rhythm = (name: string, heartRate: number) =>
    ask("extracardiac", TEN, { rhythm: name, heartRate, reflex: "off" }, "fixed-volume");
  const [junctional, paced] = [rhythm("junctional", 70), rhythm("aai", 80)];
  const pacing = "PubMed 34661729";
  const faster = (heartRate: number) => index(single({ heartRate, reflex: "off" }, "fixed-volume"));
  return [
    row(
      "pulmonary vein, part of flow in systole",
      "%",
      systolic(rest, "pulmonaryVein"),
      [45, 68],
      "50-60, textbook",
    ),
    row(
      "two ventricles, SVC, part of flow in systole",
      "%",
      systolic(healthy(), "svc"),
      [50, 90],
      "a dominant S wave, textbook",
    ),
    row(
      "SVC flow, in over out of breath, adult",
      "1",
      phasic(rest, "svc"),
      [1.3, 2.5],
      "1.9 +- 0.6, Wei 2016",
    ),
    row(
      "IVC flow, in over out of breath, adult",
      "1",
      phasic(rest, "ivc"),
      [1.1, 2.1],
      "1.6 +- 0.5, Wei 2016",
    ),
    row(
      "two ventricles, pulmonary artery's diastolic above wedge",
      "mmHg",
      extra(healthy(), "pulmonaryArteryDiastolic") - healthy().pressures.pulmonaryVein,
      [0, 4],
      "above, textbook",
    ),
    row(
      "rate 100 to 180 without reflex, index",
      "%",
      percent(faster(180), faster(100)),
      [-10, 6],
      "plateau, Claessen 2019",
    ),
    row(
      "junctional to atrial pacing 10 a minute faster, index",
      "%",
      percent(index(paced), index(junctional)),
      [15, 45],
      `+30, ${pacing}`,
    ),
    row(
      "the same, atrial pressure",
      "mmHg",
      paced.pressures.atrium - junctional.pressures.atrium,
      [-5.5, -1],
      `-3.3, ${pacing}`,
    ),
  ];
}

function lungs(): Row[] {
  const sea = single();
  const arterial = (person: typeof single, altitude: number) => person({ altitude }).saturations.arterial;
  const flow = (altitude: number) => extra(single({ altitude }, "fixed-volume"), "lungFlow");
  const mountain = healthy({ altitude: 4572 });
  const glenn = (pulmonaryResistanceIndex: number) =>
    ask("glenn", BEFORE, { pulmonaryResistanceIndex }).saturations.arterial;
  return [
    row(
      "2,500 m, fall of saturation after completion",
      "%",
      sea.saturations.arterial - arterial(single, 2500),
      [2.7, 8.5],
      "5.6 +- 2.9, Front Pediatr 2022;10:947433",
    ),
    row(
      "3,500 m, arterial saturation, two ventricles",
      "%",
      arterial(healthy, 3500),
      [84, 92],
      "about 88, textbook",
    ),
    row(
      "3,500 m, arterial saturation after completion",
      "%",
      arterial(single, 3500),
      [74, 86],
      "about 78, textbook",
    ),
    row(
      "5,000 m, arterial saturation, two ventricles",
      "%",
      arterial(healthy, 5000),
      [72, 84],
      "75-82, textbook",
    ),
    row(
      "lung flow at 3,454 over 540 m",
      "1",
      flow(3450) / flow(550),
      [0.93, 1.03],
      "no difference, Staempfli 2016",
    ),
    row(
      "at the Glenn stage, fall of saturation as lung resistance goes from 1.6 to 4",
      "%",
      glenn(1.6) - glenn(4),
      [3, 12],
      "clear, by veno-venous channels, practice",
    ),
    row(
      "the brain's flow within hours at 4,572 m",
      "1",
      brainFactor({
        saturation: mountain.saturations.arterial / 100,
        carbonDioxide: extra(mountain, "carbonDioxide"),
      }),
      [0.9, 1.24],
      "+4 % after 6 hours, +24 % after 48, Ondrus 2017",
    ),
  ];
}

function carbonDioxideRows(): Row[] {
  const ventilated = (carbonDioxide: number) =>
    ask("glenn", BEFORE, { breathing: "ventilator", inspiredOxygen: 40, carbonDioxide });
  const [low, high] = [ventilated(35), ventilated(55)] as const;
  return [
    row(
      "at the Glenn stage, ventilated, arterial saturation as carbon dioxide goes from 35 to 55",
      "%",
      high.saturations.arterial - low.saturations.arterial,
      [0.5, 15],
      `rises, ${HOSKOTE}`,
    ),
    row(
      "the same, lung flow",
      "1",
      extra(high, "lungFlow") / extra(low, "lungFlow"),
      [1.03, 2],
      `rises, ${HOSKOTE}`,
    ),
    row(
      "the same, body's resistance",
      "1",
      extra(high, "bodyResistanceIndex") / extra(low, "bodyResistanceIndex"),
      [0.5, 0.97],
      `falls, ${HOSKOTE}`,
    ),
  ];
}
