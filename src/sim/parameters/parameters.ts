/**
 * Every settable parameter once: name, unit, range, default, meaning, source.
 * Sliders, the request schema, the docs and the lesson checker all read this table.
 */
import { BODY_PARAMETERS } from "./body-parameters.ts";
import { FLUID_PARAMETERS } from "./fluid-parameters.ts";
import type { Parameter } from "./parameter.ts";
import { PATHWAY_PARAMETERS } from "./pathway-parameters.ts";
import type { Body, ParameterValue, Stage } from "./request.ts";

export const PARAMETERS: readonly Parameter[] = [
  ...BODY_PARAMETERS,
  ...FLUID_PARAMETERS,
  ...PATHWAY_PARAMETERS,
];

const byName = new Map(PARAMETERS.map((parameter) => [parameter.name, parameter]));

/** The table's row, or undefined for an unknown name. */
export const findParameter = (name: string): Parameter | undefined => byName.get(name);

/** The default for this stage and body, in the parameter's own unit. */
export function defaultSetting(parameter: Parameter, stage: Stage, body: Body): ParameterValue {
  if (parameter.kind === "word") return parameter.default;
  return typeof parameter.default === "number" ? parameter.default : parameter.default(stage, body);
}

/** Does the parameter act in this stage? */
export const actsIn = (parameter: Parameter, stage: Stage): boolean =>
  parameter.stages?.includes(stage) ?? true;

interface Settings {
  readonly stage: Stage;
  readonly body: Body;
  readonly set: Readonly<Record<string, ParameterValue>>;
}

/** The value in force in this request, in the parameter's own unit. */
export const settingOf = ({ set, stage, body }: Settings, parameter: Parameter): ParameterValue =>
  set[parameter.name] ?? defaultSetting(parameter, stage, body);

/**
 * The value in force, in the parameter's own unit: what the request sets, else the default. It is not checked against the range again.
 * @throws when `name` is not a number parameter's
 */
export function numberSetting(request: Settings, name: string): number {
  const parameter = byName.get(name);
  if (parameter?.kind !== "number") throw new Error(`unknown number parameter: ${name}`);
  return settingOf(request, parameter) as number;
}

/**
 * As {@link numberSetting}, for a word parameter.
 * @throws when `name` is not a word parameter's
 */
export function wordSetting(request: Settings, name: string): string {
  const parameter = byName.get(name);
  if (parameter?.kind !== "word") throw new Error(`unknown word parameter: ${name}`);
  return (request.set[name] ?? parameter.default) as string;
}
