/** The control of one parameter: a slider with its number, or a choice of words, straight from the parameter table. */

import { t } from "../i18n/index.ts";
import type { Parameter } from "../sim/parameters/parameter.ts";
import { defaultSetting, settingOf } from "../sim/parameters/parameters.ts";
import { clearParameter, setParameter } from "../state/edit.ts";
import { Choice } from "./choice.tsx";
import type { Editing } from "./editing.ts";
import { Slider } from "./slider.tsx";

export interface ParameterControlProps {
  readonly parameter: Parameter;
  readonly editing: Editing;
}

export function ParameterControl({ parameter, editing }: ParameterControlProps) {
  const { request } = editing.scene.value;
  const { name } = parameter;
  const value = settingOf(request, parameter);
  const label = t(`parameter.${name}`);
  const change = (to: number | string) => editing.edit(name, setParameter(name, to));
  if (parameter.kind === "word")
    return (
      <Choice
        label={label}
        value={String(value)}
        words={parameter.words}
        nameOf={(word) => t(`parameter.${name}.${word}`)}
        onChoose={(word) => {
          change(word);
          editing.settle();
        }}
      />
    );
  const { min, max, step, unit } = parameter;
  return (
    <Slider
      {...{ label, min, max, step, unit }}
      value={Number(value)}
      usual={Number(defaultSetting(parameter, request.stage, request.body))}
      changed={name in request.set}
      onChange={change}
      onSettle={() => editing.settle()}
      onReset={() => {
        editing.edit(name, clearParameter(name));
        editing.settle();
      }}
    />
  );
}
