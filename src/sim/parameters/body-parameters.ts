/** The settable rows of vessels, heart, breathing, activity, oxygen and fluid. Long because it is one table. */
import { referenceSet } from "../body/growth.ts";
import type { NumberParameter, Parameter, ParameterGroup, WordParameter } from "./parameters.ts";
import type { Body, Stage } from "./request.ts";

const SETS = "physiology values, section 4 (the body's parameter set)";
const PRACTICE = "common practice, no source";
const TEACHING = "teaching value, no source";

type Row = readonly [
  name: string,
  unit: string,
  range: readonly [min: number, max: number, step: number],
  value: NumberParameter["default"],
  meaning: string,
  source: string,
];

const numbers = (group: ParameterGroup, rows: readonly Row[]): NumberParameter[] =>
  rows.map(([name, unit, [min, max, step], value, meaning, source]) => ({
    kind: "number",
    name,
    group,
    unit,
    min,
    max,
    step,
    default: value,
    meaning,
    source,
  }));

const word = (
  group: ParameterGroup,
  name: string,
  words: readonly string[],
  meaning: string,
  source: string,
): WordParameter => ({ kind: "word", group, name, words, default: words[0]!, meaning, source });

const round = (value: number, step: number): number => Math.round(value / step) * step;

/** Straight between a value at 5 and one at 20 years, level outside. */
const byAge = (child: number, adult: number) => (_stage: Stage, body: Body) =>
  child + (adult - child) * Math.min(1, Math.max(0, (body.ageYears - 5) / 15));

/** WU.m2: all systemic beds together, from the set's three resistances. */
function systemicResistanceIndex(stage: Stage, body: Body): number {
  const set = referenceSet(stage, body.bsa);
  const conductance = 1 / set.upperResistance + 1 / set.splanchnicResistance + 1 / set.legResistance;
  return round((set.bsa / conductance) * (1000 / 60), 0.1);
}

/** L/min/m2: MRI finds 1.2-1.6 at the Glenn stage, 0.5-1.0 after, none with two ventricles. */
function collateralFlowIndex(stage: Stage): number {
  if (stage === "two-ventricle") return 0;
  return stage === "glenn" ? 1.2 : 0.5;
}

/** mL: what leaves each stage at its usual atrial pressure; at the Glenn stage less, since the abdominal veins hold less. */
function bloodVolume(stage: Stage, body: Body): number {
  const share = stage === "glenn" ? 0.9 : 1;
  return round(referenceSet(stage, body.bsa).bloodVolume * share, 1);
}

export const BODY_PARAMETERS: readonly Parameter[] = [
  ...numbers("vessels", [
    [
      "pulmonaryResistanceIndex",
      "WU.m2",
      [0.5, 10, 0.1],
      1.6,
      "resistance of both lungs together, times body surface area, at the lungs' usual pressures",
      "physiology values, section 3 (child and adult sets)",
    ],
    [
      "pulmonaryDistensibility",
      "%/mmHg",
      [0, 4, 0.1],
      2,
      "widening of lung vessels for each mmHg inside them",
      "2 %/mmHg, less with age (Linehan 1992; Reeves, Linehan & Stenmark 2005)",
    ],
    [
      "leftLungShare",
      "%",
      [20, 80, 1],
      45,
      "share of lung flow that the left lung takes when nothing narrows its artery",
      "physiology values, section 2 (45:55)",
    ],
    [
      "systemicResistanceIndex",
      "WU.m2",
      [8, 45, 0.1],
      systemicResistanceIndex,
      "resistance of all the body's beds together, times body surface area",
      SETS,
    ],
    [
      "collateralFlowIndex",
      "L/min/m2",
      [0, 3, 0.1],
      collateralFlowIndex,
      "flow from arteries straight to the pulmonary arteries at the usual arterial pressure",
      "Whitehead 2015, Grosse-Wortmann 2009 (physiology values, section 2)",
    ],
    ["venousTone", "%", [0, 25, 1], 0, "fall of the veins' unstressed volume", PRACTICE],
  ]),
  ...numbers("heart", [
    [
      "heartRate",
      "1/min",
      [40, 180, 1],
      (stage, body) => round(referenceSet(stage, body.bsa).heartRate, 1),
      "heart rate at rest",
      SETS,
    ],
    ["contractility", "1", [0.3, 2, 0.05], 1, "end-systolic elastance over the body's own", SETS],
    ["stiffness", "1", [0.5, 3, 0.05], 1, "relaxed ventricle's stiffness over the body's own", SETS],
    [
      "atrioventricularValveLeak",
      "mm2",
      [0, 60, 1],
      0,
      "leaking area of the ventricle's atrioventricular valve",
      TEACHING,
    ],
    ["semilunarValveLeak", "mm2", [0, 40, 1], 0, "leaking area of the ventricle's semilunar valve", TEACHING],
  ]),
  word(
    "heart",
    "rhythm",
    ["sinus", "no-atrial-contraction", "junctional"],
    "junctional: the atrium contracts against a closed valve",
    PRACTICE,
  ),
  word(
    "breathing",
    "breathing",
    ["spontaneous", "deep", "held", "valsalva", "ventilator"],
    "pattern of breathing",
    PRACTICE,
  ),
  ...numbers("breathing", [
    ["breathingRate", "1/min", [6, 50, 1], byAge(22, 14), "breaths a minute at rest", PRACTICE],
    [
      "breathingDepth",
      "mmHg",
      [0, 15, 0.1],
      2.2,
      "swing of pleural pressure in quiet breathing",
      "West, Guyton (physiology values, section 7)",
    ],
    [
      "deepBreathingDepth",
      "mmHg",
      [4, 20, 0.5],
      10,
      "swing of pleural pressure in deep breathing",
      "8-15 (physiology values, section 7)",
    ],
    [
      "valsalvaPressure",
      "mmHg",
      [0, 60, 1],
      30,
      "pressure in the chest during a Valsalva manoeuvre",
      "30-40 (physiology values, section 7)",
    ],
    ["ventilatorPressure", "mmHg", [4, 30, 0.5], 15, "ventilator's pressure at end of inspiration", PRACTICE],
    [
      "endExpiratoryPressure",
      "mmHg",
      [0, 15, 0.5],
      4,
      "ventilator's pressure at end of expiration",
      PRACTICE,
    ],
    [
      "abdominalPressure",
      "mmHg",
      [-2, 20, 0.5],
      0,
      "pressure in the abdomen above its resting value",
      PRACTICE,
    ],
  ]),
  ...numbers("activity", [
    ["metabolicEquivalents", "MET", [1, 10, 0.1], 1, "exertion; 1 = at rest", "definition"],
    [
      "calfPumpPressure",
      "mmHg",
      [0, 120, 5],
      0,
      "muscle pressure of rhythmic calf work without other exertion",
      "Guyton, Browse (physiology values, section 7)",
    ],
    [
      "legValveLeak",
      "%",
      [0, 100, 5],
      0,
      "backward over forward conductance of the leg veins' valves",
      TEACHING,
    ],
  ]),
  word(
    "activity",
    "reflex",
    ["on", "off"],
    "heart rate and body resistance answer to arterial pressure",
    "simple linear baroreflex; teaching gains",
  ),
  ...numbers("oxygen", [
    [
      "oxygenUseIndex",
      "mL/min/m2",
      [60, 250, 1],
      byAge(130, 125),
      "oxygen used at rest",
      "about 130 (model) and 125 often assumed in adults (physiology values, section 5)",
    ],
    ["inspiredOxygen", "%", [15, 100, 1], 21, "oxygen in the breathed gas", "definition"],
    ["altitude", "m", [0, 5000, 50], 0, "height above the sea", "ISO 2533 standard atmosphere"],
  ]),
  ...numbers("fluid", [
    [
      "bloodVolume",
      "mL",
      [300, 9000, 10],
      bloodVolume,
      "blood volume under the rule fixed-volume; the default is that of someone used to the stage",
      SETS,
    ],
    [
      "heldAtrialPressure",
      "mmHg",
      [2, 20, 0.1],
      (stage, body) => (stage === "glenn" ? 6.5 : round(referenceSet(stage, body.bsa).atrialPressure, 0.1)),
      "atrial pressure that volume is given for under hold-atrial-pressure",
      "physiology values, sections 1 and 4",
    ],
    [
      "heldOutputIndex",
      "L/min/m2",
      [1.2, 5, 0.05],
      (stage, body) => round(referenceSet(stage, body.bsa).outputIndex, 0.05),
      "systemic flow that volume is given for under hold-output",
      SETS,
    ],
    [
      "plasmaOncoticPressure",
      "mmHg",
      [10, 35, 0.5],
      28,
      "pull of plasma proteins on water",
      "Guyton (physiology values, section 8)",
    ],
    [
      "capillaryLeakage",
      "1",
      [0.5, 5, 0.1],
      1,
      "filtration coefficient over the healthy one; bypass raises it",
      "Guyton (physiology values, section 8); rise: teaching value",
    ],
    [
      "proteinReflection",
      "1",
      [0.2, 1, 0.05],
      1,
      "part of the healthy protein pull that the capillary wall still keeps; bypass lowers it",
      "definition; Guyton's set counts the healthy wall as 1 (physiology values, section 8)",
    ],
    [
      "lymphMaximum",
      "1",
      [1, 30, 1],
      20,
      "greatest lymph flow over that at rest, before it adapts",
      "Guyton (physiology values, section 8)",
    ],
  ]),
];
