/** The fields of a stop's own person: age, size, haemoglobin, and any value of the model. */
import { signal } from "@preact/signals";
import { t } from "../../../i18n/index.ts";
import { actsIn, findParameter, PARAMETERS, settingOf } from "../../../sim/parameters/parameters.ts";
import { BODY_RANGES, type Body } from "../../../sim/parameters/request.ts";
import type { SceneState } from "../../../state/scene-state.ts";
import { Switch } from "../../../ui/choice.tsx";
import type { Editing } from "../../../ui/editing.ts";
import { ParameterControl } from "../../../ui/parameter-control.tsx";
import { Slider } from "../../../ui/slider.tsx";
import { type OwnPerson, personIn } from "../talk/own-person.ts";

export interface OwnPersonFieldsProps {
  /** The scene as the stop has it without a person of its own. */
  readonly scene: SceneState;
  readonly person: OwnPerson | null;
  readonly onChange: (person: OwnPerson | null) => void;
}

const BODY: readonly { readonly name: keyof Body; readonly label: string; readonly step: number }[] = [
  { name: "ageYears", label: "control.age", step: 0.5 },
  { name: "bsa", label: "lecture.body.bsa", step: 0.01 },
  { name: "haemoglobin", label: "lecture.body.haemoglobin", step: 0.1 },
];

export function OwnPersonFields({ scene, person, onChange }: OwnPersonFieldsProps) {
  return (
    <>
      <Switch
        label={t("lecture.person.own")}
        on={person !== null}
        onChange={(on) => onChange(on ? { body: scene.request.body, set: {} } : null)}
      />
      {person && (
        <fieldset class="own-person">
          <legend>{t("lecture.person.invented")}</legend>
          {BODY.map(({ name, label, step }) => (
            <Slider
              key={name}
              label={t(label)}
              value={person.body[name]}
              usual={scene.request.body[name]}
              {...BODY_RANGES[name]}
              step={step}
              changed={person.body[name] !== scene.request.body[name]}
              onChange={(value) => onChange({ ...person, body: { ...person.body, [name]: value } })}
              onSettle={() => {}}
              onReset={() =>
                onChange({ ...person, body: { ...person.body, [name]: scene.request.body[name] } })
              }
            />
          ))}
          <SetValues scene={scene} person={person} onChange={onChange} />
        </fieldset>
      )}
    </>
  );
}

function SetValues({ scene, person, onChange }: OwnPersonFieldsProps & { readonly person: OwnPerson }) {
  const { request } = scene;
  const editing: Editing = {
    scene: signal(personIn(scene, person)),
    settle() {},
    edit(name, change) {
      const parameter = findParameter(name);
      if (!parameter) return;
      const value = settingOf(change(editing.scene.peek()).request, parameter);
      const { [name]: _, ...rest } = person.set;
      const own = value !== settingOf({ ...request, body: person.body }, parameter);
      onChange({ ...person, set: own ? { ...rest, [name]: value } : rest });
    },
  };
  const count = Object.keys(person.set).length;
  return (
    <details>
      <summary>{t("lecture.person.set", { count })}</summary>
      {PARAMETERS.filter((parameter) => actsIn(parameter, request.stage)).map((parameter) => (
        <ParameterControl key={parameter.name} parameter={parameter} editing={editing} />
      ))}
    </details>
  );
}
