/** What sets states of one stage apart, in words: two of the same name are never left without. */
import { digitsOfStep, formatQuantity } from "../../i18n/index.ts";
import { actsIn, PARAMETERS, settingOf } from "../../sim/parameters/parameters.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import type { Theme } from "../theme/theme.ts";

type Requests = readonly (CirculationRequest | null | undefined)[];
type Say = Theme["say"];
type Setting = readonly [name: string, value: string];

/** For each state the settings in which another of its stage differs; none where no other has its stage. Null: not solved yet. */
const settingsIn = (requests: Requests, say: Say): readonly (readonly Setting[])[] =>
  requests.map((own) => {
    const alike = own ? requests.flatMap((each) => (each?.stage === own.stage ? [each] : [])) : [];
    if (!own || alike.length < 2) return [];
    return PARAMETERS.flatMap((parameter): readonly Setting[] => {
      const value = settingOf(own, parameter);
      if (!actsIn(parameter, own.stage) || alike.every((each) => settingOf(each, parameter) === value))
        return [];
      const said =
        parameter.kind === "number"
          ? formatQuantity(Number(value), parameter.unit, digitsOfStep(parameter.step))
          : say(`parameter.${parameter.name}.${value}`);
      return [[say(`parameter.${parameter.name}`), said]];
    });
  });

/** "Fenestration diameter: 4.0 mm", several settings after commas; empty where nothing has to be told apart. */
export const apartIn = (requests: Requests, say: Say): readonly string[] =>
  settingsIn(requests, say).map((settings) =>
    settings.map(([name, value]) => say("sheet.figure", { name, value })).join(", "),
  );

/** "4.0 mm", several after commas: beside words that say what that is, or where those have no room. */
export const valuesIn = (requests: Requests, say: Say): readonly string[] =>
  settingsIn(requests, say).map((settings) => settings.map(([, value]) => value).join(", "));

/** "Extracardiac, 4.0 mm", or as `briefly` where all are of one stage "4.0 mm": beside pictures that say what that is. */
export function brieflyApart(
  requests: readonly CirculationRequest[],
  say: Say,
  briefly = false,
): readonly string[] {
  const apart = valuesIn(requests, say);
  const one = briefly && new Set(requests.map(({ stage }) => stage)).size === 1;
  return requests.map(({ stage }, i) =>
    [one && apart[i] ? "" : say(`stage.${stage}`), apart[i]].filter(Boolean).join(", "),
  );
}

/** By what each is called where several stand side by side: the stage, or where all have the same what sets them apart. */
export function namesIn(requests: Requests, say: Say): readonly string[] {
  const apart = apartIn(requests, say);
  const one = new Set(requests.map((each) => each?.stage)).size === 1;
  return requests.map((own, i) =>
    [one && apart[i] ? "" : own ? say(`stage.${own.stage}`) : "", apart[i]].filter(Boolean).join(", "),
  );
}
