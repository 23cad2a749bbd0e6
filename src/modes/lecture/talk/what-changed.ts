/** What a what-if changes of the script's scene, in words: "Conduit diameter: 18.0 → 10.0 mm". */
import { digitsOfStep, formatNumber, formatQuantity, t } from "../../../i18n/index.ts";
import type { Parameter } from "../../../sim/parameters/parameter.ts";
import { actsIn, PARAMETERS, settingOf } from "../../../sim/parameters/parameters.ts";
import type { Body, CirculationRequest, ParameterValue } from "../../../sim/parameters/request.ts";
import { settingInWords } from "../../../ui/take-away/handout.tsx";

const line = (name: string, from: string, to: string): string =>
  t("sheet.figure", { name, value: `${from} → ${to}` });

/** One for each setting that differs; none where nothing does. */
export function whatChanged(from: CirculationRequest, to: CirculationRequest): readonly string[] {
  const words = (name: string, group: string, before: string, after: string) =>
    before === after ? [] : [line(t(name), t(`${group}.${before}`), t(`${group}.${after}`))];
  return [
    ...words("control.stage", "stage", from.stage, to.stage),
    ...bodyChanged(from.body, to.body),
    ...settingsChanged(from, to),
    ...words("control.volumeRule", "volumeRule", from.volumeRule, to.volumeRule),
  ];
}

/** The age tells the rest, as far as it differs. */
function bodyChanged(from: Body, to: Body): readonly string[] {
  if (from.ageYears !== to.ageYears)
    return [line(t("control.age"), formatNumber(from.ageYears), formatQuantity(to.ageYears, "years", 0))];
  const rows = [
    { name: "lecture.body.bsa", unit: "m2", digits: 2, before: from.bsa, after: to.bsa },
    {
      name: "lecture.body.haemoglobin",
      unit: "g/dL",
      digits: 1,
      before: from.haemoglobin,
      after: to.haemoglobin,
    },
  ];
  return rows
    .filter(({ before, after }) => before !== after)
    .map(({ name, unit, digits, before, after }) =>
      line(t(name), formatNumber(before, digits), formatQuantity(after, unit, digits)),
    );
}

/** "Conduit diameter: 18.0 mm" */
export const settingSentence = (request: CirculationRequest, parameter: Parameter): string =>
  t("sheet.figure", {
    name: t(`parameter.${parameter.name}`),
    value: inWords(parameter, settingOf(request, parameter)),
  });

const inWords = (parameter: Parameter, value: ParameterValue): string => {
  const [unit, digits] =
    parameter.kind === "number" ? [parameter.unit, digitsOfStep(parameter.step)] : ["", 0];
  return settingInWords(parameter.name, value, unit, digits);
};

/** Those that someone has set: what follows from body or pathway needs no words of its own. */
function settingsChanged(from: CirculationRequest, to: CirculationRequest): readonly string[] {
  const set = new Set([...Object.keys(from.set), ...Object.keys(to.set)]);
  return PARAMETERS.filter((parameter) => set.has(parameter.name) && actsIn(parameter, to.stage)).flatMap(
    (parameter) => {
      const [before, after] = [settingOf(from, parameter), settingOf(to, parameter)];
      if (before === after) return [];
      const was =
        parameter.kind === "number"
          ? formatNumber(Number(before), digitsOfStep(parameter.step))
          : inWords(parameter, before);
      return [line(t(`parameter.${parameter.name}`), was, inWords(parameter, after))];
    },
  );
}
