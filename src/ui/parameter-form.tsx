/** All what-if controls as form elements, for pointer, keys, touch and screen readers alike. */

import { t } from "../i18n/index.ts";
import { type Body, bodyAt, CASES, STAGES, VOLUME_RULES } from "../sim/parameters/request.ts";
import { setBody, setStage, setView, setVolumeRule } from "../state/edit.ts";
import { PLAY_SPEEDS, START } from "../state/scene-state.ts";
import { Choice } from "./choice.tsx";
import type { Editing } from "./editing.ts";
import { ParameterControl } from "./parameter-control.tsx";
import { FURTHER_GROUPS, firstParameters, groupParameters } from "./parameter-groups.ts";
import { ruleName } from "./rule-name.ts";
import { Slider } from "./slider.tsx";

const CASE_NAMES = Object.keys(CASES) as (keyof typeof CASES)[];
export type BodyName = keyof typeof CASES | "between";
const BODY_NAMES: readonly BodyName[] = [...CASE_NAMES, "between"];
/** years: the body that "between" begins with, and the ages it may have */
const MIDDLE = 12;
const AGES = { min: CASES.caseA.ageYears, max: CASES.caseB.ageYears, step: 1, unit: "years" } as const;

/** The invented case whose body this is. */
export const bodyName = ({ bsa }: Body): BodyName =>
  CASE_NAMES.find((name) => CASES[name].bsa === bsa) ?? "between";

export const bodyNamed = (name: BodyName): Body => (name === "between" ? bodyAt(MIDDLE) : CASES[name]);

export function ParameterForm({ editing }: { readonly editing: Editing }) {
  const { request, view } = editing.scene.value;
  const choose = (subject: string, change: Parameters<Editing["edit"]>[1]) => {
    editing.edit(subject, change);
    editing.settle();
  };
  const control = (parameter: Parameters<typeof ParameterControl>[0]["parameter"]) => (
    <ParameterControl key={parameter.name} parameter={parameter} editing={editing} />
  );
  return (
    <form class="parameter-form" onSubmit={(event) => event.preventDefault()}>
      <Choice
        label={t("control.stage")}
        value={request.stage}
        words={STAGES}
        nameOf={(stage) => t(`stage.${stage}`)}
        onChoose={(stage) => choose("stage", setStage(stage))}
      />
      {firstParameters(request.stage).map(control)}
      <Choice
        label={t("control.volumeRule")}
        value={request.volumeRule}
        words={VOLUME_RULES}
        nameOf={(rule) => ruleName(request.stage, rule)}
        onChoose={(rule) => choose("volumeRule", setVolumeRule(rule))}
      />
      <Choice
        label={t("control.case")}
        value={bodyName(request.body)}
        words={BODY_NAMES}
        nameOf={(name) => t(`case.${name}`)}
        onChoose={(name) => choose("body", setBody(bodyNamed(name)))}
      />
      <Slider
        label={t("control.age")}
        value={request.body.ageYears}
        usual={START.request.body.ageYears}
        {...AGES}
        changed={request.body.ageYears !== START.request.body.ageYears}
        onChange={(age) => editing.edit("body", setBody(bodyAt(age)))}
        onSettle={() => editing.settle()}
        onReset={() => choose("body", setBody(START.request.body))}
      />
      <Slider
        label={t("control.playSpeed")}
        value={view.playSpeed}
        usual={START.view.playSpeed}
        {...PLAY_SPEEDS}
        unit="x"
        changed={view.playSpeed !== START.view.playSpeed}
        onChange={(playSpeed) => editing.edit("playSpeed", setView({ playSpeed }))}
        onSettle={() => editing.settle()}
        onReset={() => choose("playSpeed", setView({ playSpeed: START.view.playSpeed }))}
      />
      {FURTHER_GROUPS.map((group) => {
        const parameters = groupParameters(group, request.stage);
        return (
          parameters.length > 0 && (
            <details key={group}>
              <summary>{t(`group.${group}`)}</summary>
              {parameters.map(control)}
            </details>
          )
        );
      })}
    </form>
  );
}
