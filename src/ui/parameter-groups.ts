/** Which parameters stand together in a panel: the few that teach most first, the rest by group. */
import type { Parameter, ParameterGroup } from "../sim/parameters/parameter.ts";
import { actsIn, findParameter, PARAMETERS } from "../sim/parameters/parameters.ts";
import type { Stage } from "../sim/parameters/request.ts";

/** In the order of asking: size of the pathway, the hole, the lungs, breath, effort. */
const FIRST = [
  "conduitDiameter",
  "tunnelDiameter",
  "chamberDiameter",
  "fenestrationDiameter",
  "pulmonaryResistanceIndex",
  "breathing",
  "metabolicEquivalents",
];

export const FURTHER_GROUPS: readonly ParameterGroup[] = [
  "pathway",
  "fenestration",
  "vessels",
  "breathing",
  "activity",
  "heart",
  "oxygen",
  "fluid",
];

export const firstParameters = (stage: Stage): readonly Parameter[] =>
  FIRST.flatMap((name) => findParameter(name) ?? []).filter((parameter) => actsIn(parameter, stage));

export const groupParameters = (group: ParameterGroup, stage: Stage): readonly Parameter[] =>
  PARAMETERS.filter(
    (parameter) => parameter.group === group && actsIn(parameter, stage) && !FIRST.includes(parameter.name),
  );
