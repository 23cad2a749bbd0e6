/** Effort at the Glenn stage. Same rules as in rows.ts. */
import { present } from "../../sim/checked/present.ts";
import { exertionTest } from "../../sim/circulation/experiments/exertion-test.ts";
import type { Body, Stage } from "../../sim/parameters/request.ts";
import { ask, BEFORE, CHILD, met, person } from "./asked.ts";
import { type Row, row } from "./validation-row.ts";

const PLAIN = "about 60-70, plain sense";

const saturation = (stage: Stage, body: Body, effort: number): number =>
  ask(stage, body, met(effort)).saturations.arterial;

/** % from rest to 2 MET */
const fall = (stage: Stage, body: Body): number => saturation(stage, body, 1) - saturation(stage, body, 2);

export const glennEffortRows = (): Row[] => [
  row(
    "at the Glenn stage, arterial saturation at 3 MET",
    "%",
    saturation("glenn", BEFORE, 3),
    [58, 72],
    PLAIN,
    "by Fick's principle 3 MET at 65 % take 4.7 L/min/m2 of lung flow, of which 1.5-2.1 are measured at rest: the answer says that a quarter of the oxygen is missing",
  ),
  row(
    "the same at the greatest effort that is met",
    "%",
    present(exertionTest(person("glenn", BEFORE))).peak.arterialSaturation,
    [58, 72],
    PLAIN,
  ),
  row(
    "fall of saturation from rest to 2 MET, beyond that after completion",
    "%",
    fall("glenn", BEFORE) - fall("extracardiac", CHILD),
    [3, 30],
    "falls further in a six-minute walk, 44 children and 13, Congenit Heart Dis 2012;7:423 (no figures in the abstract)",
  ),
];
