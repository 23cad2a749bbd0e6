/** Pressure from outside: straining, abdomen, ventilator. Same rules as in rows.ts. */
import { present } from "../../sim/checked/present.ts";
import { valsalvaPhases } from "../../sim/circulation/experiments/valsalva-phases.ts";
import type { CirculationRequest, Stage } from "../../sim/parameters/request.ts";
import { PRESETS } from "../../sim/presets.ts";
import { ask, CHILD, healthy, index, percent, person, single } from "./asked.ts";
import { extra, type Row, row } from "./validation-row.ts";

export const outsideRows = (): Row[] => [...straining(), ...overshoots(), ...pressed(), ...ventilated()];

function straining(): Row[] {
  const rest = healthy();
  const strain = healthy({ breathing: "valsalva" });
  const singleRest = single();
  const singleStrain = single({ breathing: "valsalva" });
  return [
    row(
      "strain of 30 mmHg, two ventricles, arterial mean over rest",
      "1",
      strain.pressures.aortaMean / rest.pressures.aortaMean,
      [0.75, 1.1],
      "kept, textbook",
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
  ];
}

/** What Rocchini judged: a normal answer has four phases, the last an overshoot once the strain is let go. */
function overshoots(): Row[] {
  const overshoot = (request: CirculationRequest) => present(valsalvaPhases(request)).overshoot;
  return [
    row(
      "arterial mean overshoots after the strain, two ventricles, over rest",
      "1",
      overshoot(person("two-ventricle")),
      [1.05, 1.4],
      "a normal answer has four phases, textbook; ten controls, Rocchini 1985",
    ),
    row(
      "the same, well adult after completion",
      "1",
      overshoot(PRESETS["well-adult"]),
      [1.03, 1.2],
      "normal in 4 of 9, those with an index over 2.4, Rocchini 1985",
    ),
    row(
      "the same, failing adult",
      "1",
      overshoot(PRESETS["failing-adult"]),
      [0.95, 1.03],
      "no four phases in 5 of 9, index 2.2, Rocchini 1985",
    ),
  ];
}

function pressed(): Row[] {
  const rest = healthy();
  const twenty = healthy({ abdominalPressure: 20 });
  return [
    row(
      "20 mmHg in the abdomen, two ventricles, index over rest",
      "1",
      index(twenty) / index(rest),
      [0.6, 0.95],
      "falls, Anesthesiology 2000;92:1568",
    ),
    row(
      "the same, inferior vena cava above right atrium",
      "mmHg",
      twenty.pressures.ivc - extra(twenty, "rightAtrium"),
      [5, 22],
      "a waterfall at the diaphragm, Takata 1990; the same",
    ),
    row(
      "12 mmHg in the abdomen after completion, index over rest",
      "1",
      index(single({ abdominalPressure: 12 })) / index(single()),
      [0.85, 1.1],
      "no significant change, JA Clin Rep 2021, s40981-021-00456-6 (one patient)",
    ),
  ];
}

function ventilated(): Row[] {
  const indexAt = (stage: Stage, endExpiratoryPressure: number) =>
    index(
      ask(stage, CHILD, {
        breathing: "ventilator",
        endExpiratoryPressure,
        ventilatorPressure: endExpiratoryPressure + 15,
      }),
    );
  return [
    row(
      "end-expiratory pressure 5 to 13 cmH2O, child with two ventricles, index",
      "%",
      percent(indexAt("two-ventricle", 13), indexAt("two-ventricle", 5)),
      [-32, -12],
      "-23, 2.6 to 2.0 at 10 and 15 mbar: 30 infants with various hearts, Hemodynamic Changes during Mechanical Ventilation in Infants and Small Children after Open Heart Surgery (abstract); under 10 % from 0 to 12 in intensive care, Ingaramo 2014",
    ),
    row(
      "the same after completion",
      "%",
      percent(indexAt("extracardiac", 13), indexAt("extracardiac", 5)),
      [-32, -12],
      "falls, practice; no figures found",
    ),
  ];
}
