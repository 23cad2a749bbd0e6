/** Quantities, published ranges (mean +- SD, quartiles or textbook ranges as the source gives them; none is tuned to), sources. Long because it is one table. */

import { present } from "../../sim/checked/present.ts";
import { adult, healthy } from "./adult-rows.ts";
import type { Persons } from "./persons.ts";
import { INDEX, type Row, rows, type Section } from "./validation-row.ts";

export const sections = (persons: Persons): readonly Section[] => [
  { title: "Child, 5 years, at the Glenn stage (haemoglobin 16.5 g/dL)", rows: before(persons) },
  { title: "Child, 5 years, after completion (extracardiac unless named)", rows: child(persons) },
  { title: "Child, fenestration of 4 mm", rows: fenestration(persons) },
  { title: "Child of 12 years, rest and leg exercise", rows: twelve(persons) },
  { title: "Adult, 19 years, after completion (extracardiac)", rows: adult(persons) },
  { title: "Two ventricles", rows: healthy(persons) },
];

function before({ before: { pressures, saturations, extras, flows } }: Persons): Row[] {
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

const child = (persons: Persons): Row[] => [
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

function childVolumes({ before: earlier, child: now, childVentilator, healthyChild }: Persons): Row[] {
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

function fenestration({ childOpen: open, childShut: shut, childEarly, childEarlyOpen }: Persons): Row[] {
  const fall = 100 * (1 - present(shut.extras.cardiacIndex) / present(open.extras.cardiacIndex));
  return rows([
    ["flow through the hole", "L/min", open.flows.fenestration, [0.4, 0.75], "orifice law at 3-8 mmHg"],
    [
      "arterial saturation, open",
      "%",
      open.saturations.arterial,
      [83, 91],
      "89, Atz 2011; 87 (83-89), closure series",
    ],
    [
      "pulmonary artery over body flow, open",
      "1",
      open.flows.pulmonary / open.flows.systemic,
      [0.6, 0.85],
      "0.65-0.85 without collaterals, arithmetic",
    ],
    [
      "rise of saturation on closure",
      "%",
      shut.saturations.arterial - open.saturations.arterial,
      [4, 13],
      "85.2 to 94.6, Thatte 2020",
    ],
    [
      "rise of the pathway's pressure on closure",
      "mmHg",
      shut.pressures.pathway - open.pressures.pathway,
      [0.2, 3],
      "1.4 and 1.1, Thatte 2020; none in one series",
    ],
    [
      "fall of index on closure",
      "%",
      fall,
      [2, 34],
      "18 +- 16, Thatte 2020",
      "closed at unchanged volume and no other drugs; the series' patients also lay anaesthetized",
    ],
    [
      "relief early (index 3), output held",
      "mmHg",
      childEarly.pressures.pathway - childEarlyOpen.pressures.pathway,
      [2, 4],
      "2-4 at operation, common practice",
    ],
    [
      "arterial saturation early, open",
      "%",
      childEarlyOpen.saturations.arterial,
      [78.9, 91.5],
      "78.9-91.5 before closure, Thatte 2020",
    ],
  ]);
}

function twelve({ twelve: rest, twelveHalf, twelveWork }: Persons): Row[] {
  const aorta = (work: typeof rest) =>
    present(work.extras.cardiacOutput) / present(rest.extras.cardiacOutput);
  const source = "Hjortdal 2003";
  return rows([
    [
      "aortic flow at rest",
      INDEX,
      present(rest.extras.cardiacOutput) / 1.3,
      [2.16, 3.82],
      `2.99 +- 0.83, ${source}`,
    ],
    ["lower vena cava's flow at rest", INDEX, rest.flows.ivc / 1.3, [1.08, 2.12], `1.60 +- 0.52, ${source}`],
    ["aortic flow, 0.5 W/kg over rest", "1", aorta(twelveHalf), [1.13, 1.53], `1.33, ${source} (+-15 %)`],
    ["aortic flow, 1 W/kg over rest", "1", aorta(twelveWork), [1.31, 1.78], `1.55, ${source} (+-15 %)`],
    [
      "lower vena cava, 1 W/kg over rest",
      "1",
      twelveWork.flows.ivc / rest.flows.ivc,
      [1.73, 2.34],
      `2.03, ${source} (+-15 %)`,
    ],
    [
      "upper vena cava, 1 W/kg over rest",
      "1",
      twelveWork.flows.svc / rest.flows.svc,
      [0.85, 1.15],
      `unchanged, ${source}`,
    ],
    [
      "lower vena cava while breathing in over mean, rest",
      "1",
      present(rest.extras.ivcInspiratoryRatio),
      [1.4, 2.4],
      `1.9 +- 0.5, ${source}`,
      "just below the range since the pathway's loss follows the 3D set; the cause was not examined",
    ],
    [
      "same, 1 W/kg",
      "1",
      present(twelveWork.extras.ivcInspiratoryRatio),
      [1.1, 1.7],
      `1.4 +- 0.3, ${source}`,
    ],
    [
      "lower vena cava, backward over mean",
      "%",
      present(rest.extras.ivcBackward),
      [0, 23],
      `11 +- 12, ${source}`,
    ],
  ]);
}
