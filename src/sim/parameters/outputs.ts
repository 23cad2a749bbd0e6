/** Every number of a circulation's answer, once: path, unit, meaning. Sweeps and lessons choose their outputs from this table. */
import type { Circulation } from "../circulation/answer/answer.ts";
import { PATHWAY_STAGES, type Stage } from "./request.ts";

/** A row of the table of outputs. */
export interface Output {
  /** key path into {@link Circulation} */
  readonly path: string;
  readonly unit: string;
  readonly meaning: string;
  /** Stages in which it exists; all of them when left out. */
  readonly stages?: readonly Stage[];
}

type Row = readonly [name: string, unit: string, meaning: string];

const group = (prefix: string, rows: readonly Row[], stages?: readonly Stage[]): Output[] =>
  rows.map(([name, unit, meaning]) => ({
    path: `${prefix}.${name}`,
    unit,
    meaning,
    ...(stages ? { stages } : {}),
  }));

const PRESSURES = group("pressures", [
  ["svc", "mmHg", "upper body's veins and superior vena cava"],
  ["ivc", "mmHg", "inferior vena cava"],
  ["hepaticVein", "mmHg", "hepatic veins, free"],
  [
    "pathway",
    "mmHg",
    "where pathway and pulmonary arteries meet; with two ventricles the main pulmonary artery",
  ],
  ["pulmonaryArteryLeft", "mmHg", "left pulmonary artery"],
  ["pulmonaryArteryRight", "mmHg", "right pulmonary artery"],
  ["pulmonaryVein", "mmHg", "pulmonary veins"],
  ["atrium", "mmHg", "the atrium that fills the systemic ventricle"],
  ["ventricleEndDiastolic", "mmHg", "systemic ventricle at the onset of contraction"],
  ["aortaMean", "mmHg", "aorta, mean"],
  ["aortaSystolic", "mmHg", "aorta, highest of a beat"],
  ["aortaDiastolic", "mmHg", "aorta, lowest of a beat"],
]);

const FLOWS = group("flows", [
  ["systemic", "L/min", "through the body, coronary veins included, collaterals not"],
  ["pulmonary", "L/min", "through both pulmonary arteries, collaterals not included"],
  ["svc", "L/min", "superior vena cava"],
  ["ivc", "L/min", "inferior vena cava"],
  ["left", "L/min", "left pulmonary artery"],
  ["right", "L/min", "right pulmonary artery"],
  ["fenestration", "L/min", "through the fenestration, pathway to atrium positive"],
]);

const SATURATIONS = group("saturations", [
  ["arterial", "%", "arteries"],
  ["svc", "%", "superior vena cava"],
  ["ivc", "%", "inferior vena cava"],
  ["pulmonaryVein", "%", "pulmonary veins"],
]);

const PATHWAY = group("pathway", [
  ["pressureDrop", "mmHg", "total pressure from the IVC's entry to the pulmonary arteries"],
  ["powerLoss", "mW", "lost in the pathway's four branches"],
  ["resistance", "WU", "power loss over the square of flow"],
]);

const ENERGY = group("energy", [
  ["in", "mW", "put in by heart, breathing and muscle"],
  ["lost", "mW", "lost in all elements"],
  ["residualPercent", "%", "what the energy budget fails to close by"],
]);

const EXCHANGE = group("exchange", [
  ["filtration", "mL/h", "filtered from the capillaries once the tissues have settled"],
  ["lymph", "mL/h", "carried back by lymph"],
  ["overflow", "mL/h", "what lymph cannot carry: into chest and abdomen"],
]);

const EXTRAS = group("extras", [
  ["heartRate", "1/min", "heart rate"],
  ["breathingRate", "1/min", "breaths a minute, locked to whole beats"],
  ["beatsPerBreath", "1", "beats in one cycle of beat and breath"],
  ["cardiacIndex", "L/min/m2", "systemic flow over body surface area"],
  ["cardiacOutput", "L/min", "out of the systemic ventricle, collaterals included"],
  ["strokeVolume", "mL", "forward, a beat"],
  ["strokeIndex", "mL/m2", "stroke volume over body surface area"],
  ["endDiastolicVolume", "mL", "systemic ventricle at the onset of contraction"],
  ["endSystolicVolume", "mL", "systemic ventricle at its smallest"],
  ["ejectionFraction", "%", "ejected part of the end-diastolic volume"],
  ["bloodVolume", "mL", "all blood of the loop"],
  ["bloodVolumePerKilogram", "mL/kg", "for the usual weight at this body surface area"],
  ["lungFlow", "L/min", "through both lungs, collaterals included"],
  ["collateralFlow", "L/min", "arteries to pulmonary arteries"],
  ["collateralIndex", "L/min/m2", "the same over body surface area"],
  ["qpQs", "1", "lung flow (collaterals included) over systemic flow"],
  ["svcShare", "%", "superior vena cava's part of both great veins' flow"],
  ["leftShare", "%", "left pulmonary artery's part of both"],
  ["pulmonaryArteryPressure", "mmHg", "pulmonary arteries, weighted by flow"],
  ["transpulmonaryGradient", "mmHg", "pulmonary arteries to atrium"],
  ["lungResistanceIndex", "WU.m2", "that gradient over lung flow, times body surface area"],
  ["bodyResistanceIndex", "WU.m2", "aorta to upper veins over systemic flow, times body surface area"],
  ["drivingHead", "mmHg", "inferior vena cava to atrium"],
  ["headShare", "%", "pathway's pressure drop over the driving head"],
  ["ventricularPower", "mW", "work rate of the systemic ventricle"],
  ["powerShare", "%", "pathway's power loss over the ventricle's power"],
  ["splanchnicPressure", "mmHg", "veins of gut and liver before the liver's resistance"],
  ["legVeinPressure", "mmHg", "leg veins"],
  ["capillaryPressureBelly", "mmHg", "mean capillary pressure in gut and liver"],
  ["capillaryPressureLegs", "mmHg", "mean capillary pressure in the legs"],
  ["hepaticWedgeGradient", "mmHg", "wedged minus free hepatic-vein pressure"],
  ["ivcInspiratoryRatio", "1", "IVC flow while breathing in over its mean"],
  ["ivcBackward", "%", "backward part of IVC flow over its mean"],
  ["hepaticInspiratoryRatio", "1", "hepatic-vein flow while breathing in over its mean"],
  ["mixedVenousSaturation", "%", "all the body's veins together"],
  ["pulmonaryArterySaturation", "%", "what enters the lungs, collaterals included"],
  ["coronarySinusSaturation", "%", "the heart's own veins"],
  ["oxygenDelivery", "mL/min", "oxygen carried to the body"],
  ["oxygenDeliveryIndex", "mL/min/m2", "the same over body surface area"],
  ["oxygenUse", "mL/min", "oxygen used"],
  ["oxygenMissing", "mL/min", "asked for and not there"],
  ["oxygenExtraction", "%", "used over delivered"],
  ["hepaticVeinSaturation", "%", "veins of liver and gut"],
  ["renalVeinSaturation", "%", "veins of the kidneys"],
  ["legVeinSaturation", "%", "veins of the legs and the rest of the lower body"],
  ["venoVenousFlow", "L/min", "from the upper body's veins past the lungs to the atrium"],
  [
    "inletRegurgitation",
    "%",
    "part of what enters the ventricle that leaks back by its atrioventricular valve",
  ],
  ["outletRegurgitation", "%", "part of what the ventricle ejects that leaks back by its semilunar valve"],
  ["endSystolicElastance", "mmHg/mL", "systemic ventricle, fully contracted"],
  ["strokeWork", "mJ", "area of the systemic ventricle's pressure-volume loop"],
  ["albumin", "g/dL", "albumin that usually goes with this pull of plasma protein"],
  ["carbonDioxide", "mmHg", "carbon dioxide that breathing leaves in the alveoli"],
  ["oxygenUsePerKilogram", "mL/min/kg", "oxygen used, for the usual weight at this body surface area"],
  ["reflexHeartRate", "1", "factor of the reflex on heart rate"],
  ["reflexResistance", "1", "factor of the reflex on the body's resistance"],
  ["reflexContractility", "1", "factor of the reflex on the ventricles' elastance"],
  ["reflexVenousTone", "%", "unstressed volume of the veins that the reflex has taken up"],
]);

const RIGHT_HEART = group(
  "extras",
  [
    ["rightAtrium", "mmHg", "right atrium"],
    ["rightVentricleSystolic", "mmHg", "right ventricle, highest of a beat"],
    ["pulmonaryArterySystolic", "mmHg", "main pulmonary artery, highest of a beat"],
    ["pulmonaryArteryDiastolic", "mmHg", "main pulmonary artery, lowest of a beat"],
    ["rightVentricularPower", "mW", "work rate of the right ventricle"],
  ],
  ["two-ventricle"],
);

const EACH_LUNG = group(
  "extras",
  [
    ["pulmonaryArterySaturationLeft", "%", "what the pathway brings to the left lung"],
    ["pulmonaryArterySaturationRight", "%", "what the pathway brings to the right lung"],
    [
      "hepaticShareLeft",
      "%",
      "of the lower vein's, and so the liver's, blood to both lungs: the left lung's part",
    ],
  ],
  PATHWAY_STAGES,
);

export const OUTPUTS: readonly Output[] = [
  ...PRESSURES,
  ...FLOWS,
  ...SATURATIONS,
  ...PATHWAY,
  ...ENERGY,
  ...EXCHANGE,
  ...EXTRAS,
  ...RIGHT_HEART,
  ...EACH_LUNG,
];

const byPath = new Map(OUTPUTS.map((output) => [output.path, output]));

/** The table's row, or undefined for an unknown path. */
export const findOutput = (path: string): Output | undefined => byPath.get(path);

/** The number at a listed path, in the unit of its row; undefined where the stage has none. */
export function readOutput(circulation: Circulation, path: string): number | undefined {
  const [head, tail] = path.split(".") as [string, string];
  const found = (circulation as unknown as Record<string, Record<string, unknown>>)[head]?.[tail];
  return typeof found === "number" ? found : undefined;
}
