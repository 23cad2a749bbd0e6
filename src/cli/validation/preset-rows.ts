/** The persons of presets.ts beside those that were measured. Same rules as in rows.ts. */
import { present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { exertionTest } from "../../sim/circulation/experiments/exertion-test.ts";
import { solve } from "../../sim/circulation/solve.ts";
import type { ParameterValue } from "../../sim/parameters/request.ts";
import { PRESETS, type PresetName } from "../../sim/presets.ts";
import { extra, INDEX, type Row, row } from "./validation-row.ts";

const ask = (name: PresetName, set: Readonly<Record<string, ParameterValue>> = {}): Circulation =>
  solve({ ...PRESETS[name], set: { ...PRESETS[name].set, ...set } });

export const presetRows = (): Row[] => [...typicalInEffort(), ...failing(), ...peaks(), ...straining()];

function typicalInEffort(): Row[] {
  const source = "Miranda, Eur J Heart Fail 2024 (the 59 of 72)";
  const effort = ask("typical-adult", { metabolicEquivalents: 5 });
  const { pressures, saturations } = effort;
  return [
    row(
      "typical, pathway at rest",
      "mmHg",
      ask("typical-adult").pressures.pathway,
      [14, 20],
      `14 and over, ${source}`,
    ),
    row("typical, pathway at 5 MET", "mmHg", pressures.pathway, [23, 31], `27 (23-31), ${source}`),
    row("typical, wedge at 5 MET", "mmHg", pressures.pulmonaryVein, [18, 28], `21 (18-28), ${source}`),
    row(
      "typical, heart rate at 5 MET",
      "1/min",
      extra(effort, "heartRate"),
      [81, 120],
      `97 (81-120), ${source}`,
    ),
    row(
      "typical, arterial saturation at 5 MET",
      "%",
      saturations.arterial,
      [81, 92],
      `87 (81-92), ${source}`,
    ),
  ];
}

function failing(): Row[] {
  const rest = ask("failing-adult");
  return [
    row(
      "failing, pathway at rest",
      "mmHg",
      rest.pressures.pathway,
      [14, 21.8],
      "17 (14-21.8), Miranda 2022, fluid overload",
    ),
    row("failing, index at rest", INDEX, extra(rest, "cardiacIndex"), [1.2, 2.4], "low, from memory"),
  ];
}

function peaks(): Row[] {
  const tested = (name: PresetName) => present(exertionTest(PRESETS[name]));
  const [well, typical, failing] = [tested("well-adult"), tested("typical-adult"), tested("failing-adult")];
  const unit = "mL/min/kg";
  const source = "19.1 (15.2-23.9), Mayo CPET cohort, 323 adults";
  return [
    row("well, peak oxygen use", unit, well.peak.oxygenUse, [15.2, 23.9], source),
    row("typical, peak oxygen use", unit, typical.peak.oxygenUse, [15.2, 23.9], source),
    row(
      "typical, heart rate at its peak",
      "1/min",
      typical.peak.heartRate,
      [112, 168],
      "140 +- 28, Jain, Am J Cardiol 2024 (treadmill)",
    ),
    row(
      "failing, rise of wedge pressure for each L/min of lung flow",
      "mmHg.min/L",
      failing.wedgeSlope,
      [2.1, 7.3],
      "4.0 (2.1-7.3) in 24 adults, Miranda 2023 (abstract; year from memory); over 2 counts as abnormal, Miranda 2024",
    ),
  ];
}

function straining(): Row[] {
  const kept = (name: PresetName) =>
    extra(ask(name, { breathing: "valsalva" }), "strokeVolume") / extra(ask(name), "strokeVolume");
  return [
    row(
      "strain of 30 mmHg, stroke volume kept, failing over well",
      "1",
      kept("failing-adult") / kept("well-adult"),
      [1.05, 2],
      "no four-phase answer at an index of 2.2, one at 2.9, Rocchini 1985; the square wave of a full heart, textbook",
    ),
  ];
}
