/** The settable rows of vessels, heart, breathing, activity and oxygen. */
import { byAge, referenceSet } from "../body/growth.ts";
import type { Parameter } from "./parameter.ts";
import { numbers, PRACTICE, round, SETS, TEACHING, word } from "./parameter-rows.ts";
import type { Body, Stage } from "./request.ts";

const ofAge = (child: number, adult: number) => (_stage: Stage, body: Body) =>
  byAge(child, adult, body.ageYears);

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

/** %: none in health; at the Glenn stage what the arteries' saturation leaves over. */
function lungShunt(stage: Stage): number {
  if (stage === "two-ventricle") return 0;
  return stage === "glenn" ? 3 : 6;
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
      (stage) => (stage === "two-ventricle" ? 2 : 1.3),
      "widening of lung vessels for each mmHg inside them",
      "1-2 %/mmHg in health (Linehan 1992, Krenz 2003; from memory); less without a pulse: lung resistance hardly falls in exertion (La Gerche & Gewillig, Int J Pediatr 2010;2010:791291)",
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
    [
      "venoVenousFlowIndex",
      "L/min/m2",
      [0, 1.5, 0.05],
      (stage) => (stage === "glenn" ? 0.15 : 0),
      "flow from the upper body's veins past the lungs to the atrium, at 5 mmHg between them",
      "teaching value: some have them at the Glenn stage, and they grow with the pressure behind them",
    ],
    ["lungVasodilation", "%", [0, 60, 5], 0, "fall of the lungs' resistance by a drug", TEACHING],
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
    [
      "heartRateReserve",
      "%",
      [0, 120, 1],
      (stage) => (stage === "two-ventricle" ? 100 : 77),
      "rise of heart rate that the greatest effort can reach, over that of a healthy heart",
      "71 +- 21 against 92 +- 15 a minute (Claessen, J Am Heart Assoc 2019;8:e011008)",
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
    ["sinus", "no-atrial-contraction", "junctional", "aai", "vvi"],
    "junctional: the atrium contracts against a closed valve; aai and vvi (pacing of atrium and ventricle) hold the rate",
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
    ["breathingRate", "1/min", [6, 50, 1], ofAge(22, 14), "breaths a minute at rest", PRACTICE],
    [
      "breathingDepth",
      "mmHg",
      [0, 15, 0.1],
      4.8,
      "swing of pleural pressure in quiet breathing",
      "6.5 cmH2O, within the 3 (West) to 8 that are stated; chosen on the caval flows of Wei 2016, judged on Hjortdal 2003",
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
    [
      "ventilatorPressure",
      "cmH2O",
      [5, 40, 0.5],
      20,
      "ventilator's pressure at end of inspiration",
      PRACTICE,
    ],
    [
      "endExpiratoryPressure",
      "cmH2O",
      [0, 20, 0.5],
      5,
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
  word("activity", "posture", ["lying", "upright"], "upright: blood sinks into the leg veins", PRACTICE),
  word(
    "activity",
    "reflex",
    ["on", "sedated", "off"],
    "heart rate, resistance, contractility and veins answer to arterial and atrial pressure; a ventilator's sedation blunts them",
    "linear reflexes; teaching gains",
  ),
  ...numbers("oxygen", [
    [
      "oxygenUseIndex",
      "mL/min/m2",
      [60, 250, 1],
      ofAge(130, 125),
      "oxygen used at rest",
      "about 130 (model) and 125 often assumed in adults (physiology values, section 5)",
    ],
    ["inspiredOxygen", "%", [15, 100, 1], 21, "oxygen in the breathed gas", "definition"],
    [
      "lungShunt",
      "%",
      [0, 40, 1],
      lungShunt,
      "part of the lungs' flow that meets no air: fistulas and unventilated parts",
      "Miranda 2024 (89 % in exertion) and Atz 2011 (95 % at rest) together",
    ],
    [
      "carbonDioxide",
      "mmHg",
      [25, 70, 1],
      40,
      "carbon dioxide in the arteries where nothing else drives breathing",
      PRACTICE,
    ],
    ["baseDeficit", "mmol/L", [0, 20, 1], 0, "what the blood lacks of base", PRACTICE],
    ["altitude", "m", [0, 5000, 50], 0, "height above the sea", "ISO 2533 standard atmosphere"],
  ]),
];
