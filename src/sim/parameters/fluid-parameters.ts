/** The settable rows of blood volume, filtration and lymph. */
import { referenceSet } from "../body/growth.ts";
import type { Parameter } from "./parameter.ts";
import { numbers, round, SETS, word } from "./parameter-rows.ts";
import type { Body, Stage } from "./request.ts";

/** mL: what leaves each stage at its usual atrial pressure; at the Glenn stage less, since the abdominal veins hold less. */
function bloodVolume(stage: Stage, body: Body): number {
  const share = stage === "glenn" ? 0.9 : 1;
  return round(referenceSet(stage, body.bsa).bloodVolume * share, 1);
}

export const FLUID_PARAMETERS: readonly Parameter[] = [
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
      "strength of the lymph vessels: times its rest that lymph flow levels off at as tissue fills, with nothing to empty against; the duct's pressure keeps it lower",
      "Guyton (physiology values, section 8)",
    ],
  ]),
  word(
    "fluid",
    "thoracicDuct",
    ["vein", "atrium"],
    "where lymph returns to the blood; joined to the atrium it empties against less pressure",
    "decompression of the duct, practice",
  ),
];
