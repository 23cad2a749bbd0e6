/** Junctional rhythm and pacing. Same rules as in rows.ts. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Body } from "../../sim/parameters/request.ts";
import { ask, index, percent } from "./asked.ts";
import { type Row, row } from "./validation-row.ts";

/** Mean age of those paced (PubMed 34661729), at a junctional rate usual for it (common practice, no source). */
const TEN: Body = { ageYears: 10, bsa: 1.1, haemoglobin: 14 };

const YANG = "Yang, Pediatr Cardiol 2023";

/** % of what flows on to the atrium */
function backward({ traces }: Circulation): number {
  const flow = [...(traces.flows.pulmonaryVein ?? [])].slice(0, -1);
  const sum = (sign: number) => flow.reduce((total, value) => total + Math.max(0, sign * value), 0);
  return (100 * sum(-1)) / sum(1);
}

export function rhythmRows(): Row[] {
  const rhythm = (name: string, heartRate: number) =>
    ask("extracardiac", TEN, { rhythm: name, heartRate, reflex: "off" }, "fixed-volume");
  const [junctional, paced] = [rhythm("junctional", 70), rhythm("aai", 80)];
  const pacing = "PubMed 34661729";
  return [
    row(
      "junctional to atrial pacing 10 a minute faster, index",
      "%",
      percent(index(paced), index(junctional)),
      [15, 45],
      `+30, ${pacing}`,
    ),
    row(
      "the same, atrial pressure",
      "mmHg",
      paced.pressures.atrium - junctional.pressures.atrium,
      [-5.5, -1],
      `-3.3, ${pacing}`,
    ),
    row(
      "the same, what flows back into the lungs' veins, junctional less paced, of what flows on",
      "%",
      backward(junctional) - backward(paced),
      [1, 30],
      `in 7 of 9 in junctional rhythm, ${YANG}`,
    ),
    row(
      "what flows back there when paced",
      "%",
      backward(paced),
      [0, 5],
      `in none of 9, ${YANG}`,
      "the lungs' veins have no inertia here, and their mouths narrow by no more than the measured 27 % of area; a stronger atrium, which would bring the rows on pacing to their middle, would drive more back",
    ),
  ];
}
