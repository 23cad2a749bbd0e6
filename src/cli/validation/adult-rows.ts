/** The adult after completion, and two ventricles. Same rules as in rows.ts. */
import { present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { traceMean } from "../../sim/circulation/answer/trace-mean.ts";
import type { Persons } from "./persons.ts";
import { INDEX, type Row, rows } from "./validation-row.ts";

const intoMuscle = ({ traces }: Circulation) => present(traces.flows.workingMuscle);

/** What flows into muscle while it presses its hardest, over the mean. */
function atHardest(circulation: Circulation): number {
  const flow = intoMuscle(circulation);
  const pressure = present(circulation.traces.pressures.calf);
  const least = 0.95 * Math.max(...pressure);
  const pressed = flow.filter((_, i) => (pressure[i] ?? 0) > least);
  return traceMean(pressed) / traceMean(flow);
}

export function adult({ adult: rest, adultWork, adultValsalva, adultCalves }: Persons): Row[] {
  const { pressures, saturations, extras, pathway, flows } = rest;
  return rows([
    ["pathway", "mmHg", pressures.pathway, [12, 14.5], "13 (12-14.5), Miranda 2022"],
    ["pulmonary vein (wedge)", "mmHg", pressures.pulmonaryVein, [6, 11.8], "8 (6-11.8), Miranda 2022"],
    ["cardiac index", INDEX, present(extras.cardiacIndex), [2.4, 3.6], "fact 1; Caro-Dominguez 2019"],
    ["aortic systolic", "mmHg", pressures.aortaSystolic, [95, 125], "110, usual"],
    ["aortic diastolic", "mmHg", pressures.aortaDiastolic, [55, 80], "68, usual"],
    ["aortic mean", "mmHg", pressures.aortaMean, [74, 94], "84, usual"],
    ["arterial saturation", "%", saturations.arterial, [93, 97], "95, FORCE 2025"],
    [
      "conduit flow",
      "L/min",
      flows.ivc,
      [2.5, 4],
      "3.3 (2.5-4.0) at 16.9 years, Rijnberg 2022",
      "hearts of the set have an index at the lower end of the band",
    ],
    ["ejection fraction", "%", present(extras.ejectionFraction), [40, 60], "single ventricles, from memory"],
    [
      "conduit's resistance",
      "WU",
      pathway.resistance,
      [0.1, 0.7],
      "0.4 +- 0.3, Sundareswaran 2008",
      "18 mm conduit with flared joints; handbook losses carry +-50 %",
    ],
    ["pathway's power loss", "mW", pathway.powerLoss, [1, 20], "1-20, bench and computed studies"],
    [
      "wedged minus free hepatic-vein pressure",
      "mmHg",
      present(extras.hepaticWedgeGradient),
      [1.1, 1.7],
      "1.4 +- 0.3 in 56 adults of 28 years, CJC Open 2020",
    ],
    [
      "pathway in effort of 4 MET",
      "mmHg",
      adultWork.pressures.pathway,
      [14, 22.5],
      "16 (14-22.5), Miranda (exercise catheterization)",
    ],
    ["wedge in effort of 4 MET", "mmHg", adultWork.pressures.pulmonaryVein, [8, 14], "12 (8-14), same"],
    [
      "stroke volume in a Valsalva manoeuvre over rest",
      "1",
      present(adultValsalva.extras.strokeVolume) / present(extras.strokeVolume),
      [0, 1],
      "falls, Shafer 2012; Van De Bruaene 2015",
    ],
    [
      "stroke volume, calves at work over rest",
      "1",
      present(adultCalves.extras.strokeVolume) / present(extras.strokeVolume),
      [1, 2],
      "rises, Shafer 2012",
    ],
    [
      "flow into working muscle at 4 MET, at its hardest squeeze over its mean",
      "1",
      atHardest(adultWork),
      [0, 0.2],
      "inflow only between contractions, Folkow 1970 (abstract)",
    ],
    [
      "flow into the calves, at work over rest",
      "1",
      traceMean(intoMuscle(adultCalves)) / traceMean(intoMuscle(rest)),
      [0.8, 1.3],
      "as great as free flow, Folkow 1970; neutral in moderate work, Lutjemeier 2005 (abstracts)",
    ],
    [
      "greatest flow into the calves between squeezes over greatest at rest",
      "1",
      Math.max(...intoMuscle(adultCalves)) / Math.max(...intoMuscle(rest)),
      [1, 13],
      "above rest, Anrep 1935; after work 50 in place of 3.9 mL/min for 100 mL, Richardson (abstracts)",
    ],
    ["blood volume", "mL/kg", present(extras.bloodVolumePerKilogram), [65, 75], "65-75, textbook"],
  ]);
}

export function healthy({ healthy: grown, healthyChild }: Persons): Row[] {
  const { pressures, saturations, extras, exchange } = grown;
  return rows([
    ["right atrium", "mmHg", present(extras.rightAtrium), [2, 6], "4 (2-6), textbooks"],
    [
      "right ventricle, systolic",
      "mmHg",
      present(extras.rightVentricleSystolic),
      [15, 30],
      "25 (15-30), textbooks",
    ],
    ["main pulmonary artery, mean", "mmHg", pressures.pathway, [10.7, 17.3], "14 +- 3.3, Kovacs 2009"],
    [
      "main pulmonary artery, systolic",
      "mmHg",
      present(extras.pulmonaryArterySystolic),
      [15, 30],
      "25, textbooks",
    ],
    ["wedge", "mmHg", pressures.pulmonaryVein, [6, 12], "8 (6-12), textbooks"],
    [
      "left ventricle, end-diastolic",
      "mmHg",
      pressures.ventricleEndDiastolic,
      [4, 12],
      "8 (4-12), textbooks",
    ],
    ["aortic mean", "mmHg", pressures.aortaMean, [83, 103], "93, textbooks"],
    ["cardiac index", INDEX, present(extras.cardiacIndex), [2.5, 4], "textbooks"],
    ["ejection fraction", "%", present(extras.ejectionFraction), [55, 70], "textbooks"],
    [
      "lung resistance",
      "WU",
      present(extras.lungResistanceIndex) / 1.7,
      [0.5, 1.3],
      "0.9 +- 0.4, Kovacs 2012",
    ],
    ["arterial saturation", "%", saturations.arterial, [95, 100], "textbooks"],
    [
      "mixed venous saturation",
      "%",
      present(extras.mixedVenousSaturation),
      [65, 75],
      "65-75, textbooks",
      "same oxygen use as above, with a resting index of 3.2",
    ],
    ["upper body's share of flow", "%", present(extras.svcShare), [30, 40], "35 from 6.6 years, Salim 1995"],
    ["filtration", "mL/h", exchange.filtration, [96, 144], "120 (+-20 %) in 70 kg, Guyton"],
    [
      "index of a healthy child, 5 years",
      INDEX,
      present(healthyChild.extras.cardiacIndex),
      [3.32, 4.6],
      "3.96 +- 0.64, controls of Caro-Dominguez 2019",
    ],
  ]);
}
