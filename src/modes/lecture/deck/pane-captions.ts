/** What sets pictures side by side apart, each in a few words. */
import { digitsOfStep, t } from "../../../i18n/index.ts";
import { actsIn, PARAMETERS, settingOf } from "../../../sim/parameters/parameters.ts";
import { paneRequests, type SceneState } from "../../../state/scene-state.ts";
import { settingInWords } from "../../../ui/take-away/handout.tsx";

/** One for each pane, from left to right; one empty caption where a picture stands alone. */
export function paneCaptions(state: SceneState): readonly string[] {
  if (state.beside.length === 0) return [""];
  const requests = paneRequests(state);
  const differ = (values: readonly unknown[]) => new Set(values).size > 1;
  const stagesDiffer = differ(requests.map(({ stage }) => stage));
  const settings = PARAMETERS.filter(
    (parameter) =>
      requests.every(({ stage }) => actsIn(parameter, stage)) &&
      differ(requests.map((request) => settingOf(request, parameter))),
  );
  return requests.map((request) =>
    [
      ...(stagesDiffer || settings.length === 0 ? [t(`stage.${request.stage}`)] : []),
      ...settings.map((parameter) => {
        const [unit, digits] =
          parameter.kind === "number" ? [parameter.unit, digitsOfStep(parameter.step)] : ["", 0];
        const value = settingInWords(parameter.name, settingOf(request, parameter), unit, digits);
        return t("sheet.figure", { name: t(`parameter.${parameter.name}`), value });
      }),
    ].join(", "),
  );
}
