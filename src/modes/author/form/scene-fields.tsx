/** What a step shows: person, pathway and scene by name, everything else by adjusting the picture and taking what is seen. */
import { digitsOfStep, formatQuantity, t } from "../../../i18n/index.ts";
import { recordAt } from "../../../lesson/edit/lenient-scenes.ts";
import { setBlock } from "../../../lesson/edit/lesson-edit.ts";
import type { Path } from "../../../lesson/edit/yaml-edit.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import { findParameter } from "../../../sim/parameters/parameters.ts";
import { CASES, STAGES } from "../../../sim/parameters/request.ts";
import { PERSONS } from "../../../state/person.ts";
import { SCENES } from "../../../state/scene-state.ts";
import { Switch } from "../../../ui/choice.tsx";
import { asNumber } from "./as-number.ts";
import { useDesk } from "./desk.ts";
import { FieldFaults, SelectField, TextField } from "./fields.tsx";

const CASE_NAMES = Object.keys(CASES);
const SHOWN = ["scene.scene", "scene.stage", "scene.seconds"];

export function SceneFields({ onAdjust }: { readonly onAdjust: () => void }) {
  const desk = useDesk();
  const { outline, step: index } = desk;
  const record = recordAt(outline, entryAt(outline.steps, index).blocks.scene);
  const edit = (what: string, ...edits: (readonly [Path, unknown])[]) =>
    desk.write(setBlock(desk.text, index, "scene", edits), `${index}.scene.${what}`);
  const textOf = (key: string) => String(record[key] ?? "");
  const named = (words: readonly string[], kind: string): readonly (readonly [string, string])[] => [
    ["", t("author.form.asBefore")],
    ...words.map((word) => [word, t(`${kind}.${word}`)] as const),
  ];
  const view = (record.view ?? {}) as Record<string, unknown>;
  return (
    <fieldset class="form-group">
      <legend>{t("author.form.shown")}</legend>
      <FieldFaults field="scene" but={SHOWN} />
      <div class="form-row">
        <SelectField
          field="scene.stage"
          label={t("control.stage")}
          value={textOf("stage")}
          options={named(STAGES, "stage")}
          onChoose={(stage) => edit("stage", [["stage"], stage || undefined])}
        />
        <SelectField
          field="scene.scene"
          label={t("look.scene")}
          value={textOf("scene")}
          options={named(SCENES, "scene")}
          onChoose={(scene) => edit("scene", [["scene"], scene || undefined])}
        />
        <SelectField
          field="scene.preset"
          label={t("author.form.person")}
          value={textOf("preset") || textOf("case")}
          options={[...named(CASE_NAMES, "case"), ...named(PERSONS, "person").slice(1)]}
          onChoose={(name) =>
            edit(
              "person",
              [["body"], undefined],
              [["preset"], PERSONS.some((each) => each === name) ? name : undefined],
              [["case"], CASE_NAMES.includes(name) ? name : undefined],
            )
          }
        />
        <TextField
          field="scene.seconds"
          label={t("author.form.seconds")}
          value={textOf("seconds")}
          onText={(text) => edit("seconds", [["seconds"], text === "" ? undefined : asNumber(text)])}
        />
      </div>
      <Changes record={record} onTakeOut={(path) => edit("", [path, undefined])} />
      <Switch
        label={t("author.form.dye")}
        on={view.dye === true}
        onChange={(on) => edit("dye", [["view", "dye"], on || undefined])}
      />
      <div class="actions">
        <button type="button" onClick={onAdjust}>
          {t("author.form.adjust")}
        </button>
      </div>
    </fieldset>
  );
}

interface ChangesProps {
  readonly record: Readonly<Record<string, unknown>>;
  readonly onTakeOut: (path: Path) => void;
}

/** Parameters that the step sets, by their names on the bench. */
function Changes({ record, onTakeOut }: ChangesProps) {
  const set = Object.entries((record.set ?? {}) as Record<string, unknown>);
  if (set.length === 0) return null;
  return (
    <ul class="plain-list form-changes">
      {set.map(([name, value]) => {
        const what = `${findParameter(name) ? t(`parameter.${name}`) : name}: ${written(name, value)}`;
        return (
          <li key={name}>
            {what}{" "}
            <button
              type="button"
              class="quiet"
              aria-label={t("author.form.takeOut", { what })}
              onClick={() => onTakeOut(["set", name])}
            >
              {t("author.form.remove")}
            </button>
          </li>
        );
      })}
    </ul>
  );
}

function written(name: string, value: unknown): string {
  const parameter = findParameter(name);
  if (value === "default") return t("author.form.usual");
  if (parameter?.kind === "number" && typeof value === "number")
    return formatQuantity(value, parameter.unit, digitsOfStep(parameter.step));
  return parameter?.kind === "word" && parameter.words.includes(String(value))
    ? t(`parameter.${name}.${value}`)
    : String(value);
}
