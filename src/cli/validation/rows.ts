/** Quantities, published ranges (mean +- SD, quartiles or textbook ranges as the source gives them; none is tuned to), sources. */

import { present } from "../../sim/checked/present.ts";
import { adult, healthy } from "./adult-rows.ts";
import { before, child } from "./child-rows.ts";
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

function fenestration({
  childOpen: open,
  childShut: shut,
  childEarly,
  childEarlyOpen,
  daysOpen,
  daysShut,
}: Persons): Row[] {
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
    [
      "drained less in the three weeks after completion",
      "%",
      100 * (1 - daysOpen.drainedTotal / daysShut.drainedTotal),
      [31, 55],
      "55, Lemler 2002 (means of 25 and 24 children); 31, Talwar 2020 (of 20 and 20)",
      "one child and one hole; the trial's children differ, and a hole may shrink",
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
