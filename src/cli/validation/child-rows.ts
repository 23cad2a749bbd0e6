/** A child of five years before and after completion. Same rules as in rows.ts. */
import { present } from "../../sim/checked/present.ts";
import type { Persons } from "./persons.ts";
import { INDEX, type Row, rows } from "./validation-row.ts";

export function before({ before: { pressures, saturations, extras, flows } }: Persons): Row[] {
  return rows([
    [
      "upper vena cava and pulmonary artery",
      "mmHg",
      pressures.svc,
      [8.9, 13.9],
      "11.4 +- 2.5, J Card Surg 2024",
    ],
    ["atrium", "mmHg", pressures.atrium, [5, 8], "textbook range"],
    [
      "end-diastolic, ventricle",
      "mmHg",
      pressures.ventricleEndDiastolic,
      [5.8, 12.8],
      "9.3 +- 3.5, Menon 2018",
    ],
    ["arterial saturation", "%", saturations.arterial, [74.2, 85.4], "79.8 +- 5.6, J Card Surg 2024"],
    [
      "collateral flow",
      INDEX,
      present(extras.collateralIndex),
      [0.58, 3.83],
      "1.42 (0.58-3.83), Grosse-Wortmann 2009",
    ],
    [
      "lung over body flow, collaterals counted",
      "1",
      present(extras.qpQs),
      [0.67, 1.19],
      "0.93 +- 0.26, Grosse-Wortmann 2009",
    ],
    [
      "upper body's share of flow",
      "1",
      present(extras.svcShare) / 100,
      [0.38, 0.63],
      "0.46-0.55 +- 0.08, caval-flow study, Cardiol Young 2005",
    ],
    [
      "cardiac index",
      INDEX,
      present(extras.cardiacIndex),
      [2.4, 4],
      "usual range at catheterization, from memory",
    ],
    [
      "aortic mean",
      "mmHg",
      pressures.aortaMean,
      [60, 80],
      "5 years, 95/55, US blood-pressure tables (70 +- 10, from memory)",
    ],
    [
      "hepatic veins above atrium",
      "mmHg",
      pressures.hepaticVein - pressures.atrium,
      [0, 1],
      "common practice, no source",
    ],
    [
      "lung flow by the upper vena cava",
      "L/min",
      flows.pulmonary,
      [0.6, 1.4],
      "share 0.46-0.55 of index 2.4-3.6 at 0.72 m2",
    ],
  ]);
}

export const child = (persons: Persons): Row[] => [
  ...childCirculation(persons),
  ...childPathway(persons),
  ...childVolumes(persons),
];

function childCirculation({ before: earlier, child: now }: Persons): Row[] {
  const { pressures, saturations, extras } = now;
  return rows([
    [
      "pathway",
      "mmHg",
      pressures.pathway,
      [11, 15],
      "12-14.5 and 12.4 +- 2.5, Miranda 2022, conduit study Pediatr Cardiol",
    ],
    ["atrium", "mmHg", pressures.atrium, [5, 9], "textbook range"],
    [
      "end-diastolic, ventricle",
      "mmHg",
      pressures.ventricleEndDiastolic,
      [7.2, 13.4],
      "10.3 +- 3.1, Menon 2018",
    ],
    [
      "rise of the hepatic veins' pressure at completion",
      "mmHg",
      pressures.hepaticVein - earlier.pressures.hepaticVein,
      [4, 10],
      "about 6 to 12, common practice",
    ],
    [
      "gradient across the lungs",
      "mmHg",
      present(extras.transpulmonaryGradient),
      [3, 8],
      "5 (3-8), from Miranda 2022",
    ],
    [
      "lung resistance",
      "WU.m2",
      present(extras.lungResistanceIndex),
      [0.7, 2.1],
      "1.2 +- 0.5; 1.8 (1.5-2.1)",
    ],
    ["cardiac index", INDEX, present(extras.cardiacIndex), [2.53, 3.95], "3.24 +- 0.71, Caro-Dominguez 2019"],
    ["arterial saturation", "%", saturations.arterial, [93, 97], "95, Atz 2011"],
    [
      "mixed venous saturation",
      "%",
      present(extras.mixedVenousSaturation),
      [65, 70],
      "65-70 usual",
      "oxygen use of 130 mL/min/m2 instead of the 150 of LaFarge's formula, which over-reads here",
    ],
    ["collateral flow", INDEX, present(extras.collateralIndex), [0.23, 1.83], "1.03 +- 0.8, Whitehead 2015"],
    [
      "lung over body flow, collaterals counted",
      "1",
      present(extras.qpQs),
      [1.11, 1.43],
      "1.27 +- 0.16, Grosse-Wortmann 2009",
    ],
    [
      "body's resistance",
      "WU.m2",
      present(extras.bodyResistanceIndex),
      [12, 25],
      "split at 20 between two groups, Kawasaki 2023",
    ],
  ]);
}

function childPathway({ child: now, childTunnel, childChamber }: Persons): Row[] {
  const { extras, pathway } = now;
  return rows([
    ["pathway's pressure drop, conduit", "mmHg", pathway.pressureDrop, [0.3, 0.8], "0.3-0.8, teaching band"],
    [
      "pathway's pressure drop, tunnel",
      "mmHg",
      childTunnel.pathway.pressureDrop,
      [0.3, 1],
      "0.3-1.0, teaching band",
    ],
    [
      "pathway's pressure drop, chamber",
      "mmHg",
      childChamber.pathway.pressureDrop,
      [0.8, 2],
      "0.8-2.0, teaching band",
      "3D flows through the same chamber agree with ours: its outlets are as wide as the pulmonary arteries",
    ],
    ["pathway's power loss, conduit", "mW", pathway.powerLoss, [1, 20], "1-20, bench and computed studies"],
    [
      "pathway's loss in the ventricle's power",
      "%",
      present(extras.powerShare),
      [0, 5],
      "under 5, arithmetic",
    ],
    ["pathway's loss in the driving head", "%", present(extras.headShare), [5, 25], "5-25, arithmetic"],
    ["conduit's resistance", "WU", pathway.resistance, [0.1, 0.7], "0.4 +- 0.3, Sundareswaran 2008"],
  ]);
}

function childVolumes({
  before: earlier,
  child: now,
  childVentilator,
  healthyChild,
  daysShut,
}: Persons): Row[] {
  const { extras, exchange } = now;
  return rows([
    ["blood volume", "mL/kg", present(extras.bloodVolumePerKilogram), [75, 80], "75-80, textbook"],
    [
      "volume given at completion",
      "%",
      100 * (present(extras.bloodVolume) / present(earlier.extras.bloodVolume) - 1),
      [7, 20],
      "+17 in sheep, PMC2925053",
    ],
    [
      "lymph over that of a healthy child",
      "1",
      exchange.lymph / healthyChild.exchange.lymph,
      [3, 12],
      "3-12 in raised venous pressure, Dumont; Witte",
    ],
    [
      "the same, its most in the three weeks after completion",
      "1",
      Math.max(...daysShut.lymph) / daysShut.lymphHealthy,
      [3, 12],
      "3-12, Dumont; Witte; 8-11 in pigs at 10 mmHg, Front Physiol 2022",
    ],
    [
      "overflow into chest and abdomen",
      "mL/h",
      exchange.overflow,
      [0, 0],
      "dry at 12-13 mmHg, Guyton's safety factor",
    ],
    [
      "lung flow, own breath over ventilator",
      "1",
      now.flows.pulmonary / childVentilator.flows.pulmonary,
      [1.15, 1.55],
      "1.42, Shekerdemian 1997",
    ],
  ]);
}
