/** Quantities in effort. Same rules as in rows.ts. */
import { present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { traceMean } from "../../sim/circulation/answer/trace-mean.ts";
import { exertionTest } from "../../sim/circulation/experiments/exertion-test.ts";
import { solve } from "../../sim/circulation/solve.ts";
import { PRESETS, type PresetName } from "../../sim/presets.ts";
import { healthy, index, met, percent, single } from "./asked.ts";
import { glennEffortRows } from "./glenn-effort-rows.ts";
import { extra, INDEX, type Row, row } from "./validation-row.ts";

const CLAESSEN = "Claessen 2019, PMC6512107";
const MIRANDA = "Miranda, Eur J Heart Fail 2024 (the 13 of 72)";
const FLAMM = "Flamm, Circulation 1990;81:1550 (14 sitting; one standard deviation)";
const COLMAN = "Colman, Heart 2021;107:983 (an arm's vein, 46 adults)";

export const effortRows = (): Row[] => [
  ...healthyEffort(),
  ...bloodMoved(),
  ...pressuresInEffort(),
  ...armVein(),
  ...outputInEffort(),
  ...glennEffortRows(),
];

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
  ];
}

/** Where blood goes with two ventricles. */
function bloodMoved(): Row[] {
  const held = ({ traces }: Circulation, names: readonly string[]) =>
    names.reduce((sum, name) => sum + traceMean(present(traces.volumes[name])), 0);
  const [rest, easy, hardest] = [1, 3, 10].map((each) => healthy(met(each))) as [
    Circulation,
    Circulation,
    Circulation,
  ];
  const change = (now: Circulation, ...names: readonly string[]) =>
    percent(held(now, names), held(rest, names));
  return [
    row(
      "two ventricles, blood in the legs' veins, 3 MET over rest",
      "%",
      change(easy, "legVeins"),
      [-39.5, -24.5],
      `-32 in unloaded cycling, ${FLAMM}`,
    ),
    row("the same at 10 MET", "%", change(hardest, "legVeins"), [-30.5, -15.5], `-23 at the peak, ${FLAMM}`),
    row(
      "blood in gut, liver and kidneys at 10 MET",
      "%",
      change(hardest, "splanchnicVeins"),
      [-26.5, -11.5],
      `-19 at the peak, ${FLAMM}`,
    ),
  ];
}

/** Pressure in the upper vein from rest to the greatest effort that is met. */
function armVein(): Row[] {
  const at = (name: PresetName, metabolicEquivalents: number) => {
    const person = PRESETS[name];
    return solve({ ...person, set: { ...person.set, metabolicEquivalents } }).pressures.svc;
  };
  const peak = (name: PresetName) => at(name, present(exertionTest(PRESETS[name])).peak.metabolicEquivalents);
  return [
    row(
      "well, upper vena cava at 2.3 MET",
      "mmHg",
      at("well-adult", 2.3),
      [12.6, 20.4],
      `16.5 +- 3.9 in unloaded cycling, ${COLMAN}`,
    ),
    row(
      "well, upper vena cava at its peak",
      "mmHg",
      peak("well-adult"),
      [17.5, 28.5],
      `23.0 +- 5.5 at the peak, ${COLMAN}`,
    ),
    row(
      "typical, upper vena cava at its peak",
      "mmHg",
      peak("typical-adult"),
      [17.5, 28.5],
      `23.0 +- 5.5 at the peak, ${COLMAN}`,
    ),
  ];
}
