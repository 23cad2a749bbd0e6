/** Quantities under stress: waves, rhythm, height. Same rules as in rows.ts. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { brainFactor } from "../../sim/circulation/regulation/brain-flow.ts";
import { ask, BEFORE, healthy, index, percent, single } from "./asked.ts";
import { bloodRows } from "./blood-rows.ts";
import { effortRows } from "./effort-rows.ts";
import { outsideRows } from "./outside-rows.ts";
import { presetRows } from "./preset-rows.ts";
import { rhythmRows } from "./rhythm-rows.ts";
import { extra, type Row, row, type Section } from "./validation-row.ts";

export const stressSections = (): readonly Section[] => [
  { title: "Stress: effort", rows: effortRows() },
  { title: "Stress: a well, a typical and a failing adult", rows: presetRows() },
  { title: "Stress: blood, volume and posture", rows: bloodRows() },
  { title: "Stress: pressure from outside", rows: outsideRows() },
  { title: "Stress: waves, breath and rhythm", rows: [...waves(), ...rhythmRows()] },
  { title: "Stress: height and lungs", rows: [...lungs(), ...carbonDioxideRows()] },
];

const HOSKOTE = "Hoskote, J Am Coll Cardiol 2004 (35, 45 and 55 mmHg)";

function waves(): Row[] {
  const rest = single();
  const systolic = ({ traces }: Circulation, name: string): number => {
    const flow = [...(traces.flows[name] ?? [])].slice(0, -1);
    // A beat's first sample may stand a rounding before the beat.
    const inSystole = (i: number) => ((traces.time[i] ?? 0) / traces.heartPeriod + 1e-9) % 1 < 0.4;
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
