/** One field of a question that holds one thing or a plain list. */
import { t } from "../../../i18n/index.ts";
import type { Path } from "../../../lesson/edit/yaml-edit.ts";
import { PARAMETERS } from "../../../sim/parameters/parameters.ts";
import { Switch } from "../../../ui/choice.tsx";
import { asNumber } from "./as-number.ts";
import { useDesk } from "./desk.ts";
import { FieldFaults, Insert, SelectField, TextField } from "./fields.tsx";
import { liveNumbers, numberNames, usualUnit } from "./model-numbers.ts";
import type { EditQuestion, QuestionField } from "./question-table.ts";

export interface OneFieldProps {
  readonly field: QuestionField;
  readonly path: Path;
  /** The record that holds the field's key. */
  readonly raw: Readonly<Record<string, unknown>>;
  readonly onEdit: EditQuestion;
}

export function OneField(props: OneFieldProps) {
  const { field, path, raw, onEdit } = props;
  const name = `question.${path.join(".")}`;
  const value = raw[field.key];
  const label = t(`author.q.${field.key}`);
  const set = (next: unknown) => onEdit(path.join("."), [path, next]);
  const text = value === undefined || value === null ? "" : String(value);
  const orNone = (next: string) => (next === "" && field.optional ? undefined : next);
  switch (field.form) {
    case "words":
      return (
        <TextField
          field={name}
          label={label}
          value={text}
          onText={(next) => set(orNone(next))}
          insert={(put) => <Insert label={t("author.form.insert")} options={liveNumbers()} onPick={put} />}
        />
      );
    case "expression":
      return <ExpressionField {...props} name={name} />;
    case "unit":
      return (
        <TextField field={name} label={label} hint={t("author.q.unit.hint")} value={text} onText={set} />
      );
    case "amount":
      return (
        <TextField
          field={name}
          label={label}
          value={text}
          onText={(next) => set(next === "" && field.optional ? undefined : asNumber(next))}
        />
      );
    case "control":
      return <ControlField name={name} label={label} value={text} onChoose={set} />;
    case "best":
      return (
        <SelectField
          field={name}
          label={label}
          value={text}
          options={["", "smallest", "largest"].map(
            (word) => [word, t(`author.q.best.${word || "any"}`)] as const,
          )}
          onChoose={(next) => set(next || undefined)}
        />
      );
    case "step":
      return <StepField name={name} label={label} value={text} onChoose={(next) => set(next || undefined)} />;
    case "switch":
      return (
        <div>
          <Switch label={label} on={value === true} onChange={(on) => set(on || undefined)} />
          <FieldFaults field={name} />
        </div>
      );
    case "list":
      return <ListField {...props} label={label} />;
    default:
      return null;
  }
}

/** A name of the model, picked or typed; its usual unit comes with it where the question shows one. */
function ExpressionField({ field, path, raw, onEdit, name }: OneFieldProps & { readonly name: string }) {
  const value = raw[field.key];
  const set = (text: string) => {
    const unit = path.length === 1 && "unit" in raw ? usualUnit(text.trim()) : undefined;
    const number = asNumber(text);
    const next = text === "" && field.optional ? undefined : number;
    onEdit(path.join("."), [path, next], ...(unit ? [[["unit"], unit] as const] : []));
  };
  return (
    <TextField
      field={name}
      label={t(`author.q.${field.key}`)}
      value={value === undefined ? "" : String(value)}
      onText={set}
      insert={(put) => <Insert label={t("author.q.pick")} options={numberNames()} onPick={put} />}
    />
  );
}

interface NamedProps {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly onChoose: (value: string) => void;
}

function ControlField({ name, label, value, onChoose }: NamedProps) {
  const numbers = PARAMETERS.filter(({ kind }) => kind === "number").map(
    (each) => [each.name, t(`parameter.${each.name}`)] as const,
  );
  const known = numbers.some(([each]) => each === value);
  return (
    <SelectField
      field={name}
      label={label}
      value={value}
      options={known ? numbers : [[value, value], ...numbers]}
      onChoose={onChoose}
    />
  );
}

function StepField({ name, label, value, onChoose }: NamedProps) {
  const { outline } = useDesk();
  const steps = outline.steps.map(({ id, title }, index) => [id, `${index + 1}. ${title}`] as const);
  const known = value === "" || steps.some(([id]) => id === value);
  return (
    <SelectField
      field={name}
      label={label}
      value={value}
      options={[["", t("author.form.asUsual")], ...(known ? [] : [[value, value] as const]), ...steps]}
      onChoose={onChoose}
    />
  );
}

function ListField({ field, path, raw, onEdit, label }: OneFieldProps & { readonly label: string }) {
  const value = raw[field.key];
  const items = Array.isArray(value) ? value.map(String) : [];
  const { key } = field;
  return (
    <fieldset class="form-group">
      <legend>{label}</legend>
      <FieldFaults field={`question.${key}`} />
      {items.map((item, index) => (
        <div class="form-item" key={`${index + 1}`}>
          <TextField
            field={`question.${key}.${index}`}
            label={t("author.form.line", { number: index + 1 })}
            value={item}
            onText={(text) => onEdit(`${key}.${index}`, [[...path, index], text])}
            insert={(put) => <Insert label={t("author.form.insert")} options={liveNumbers()} onPick={put} />}
          />
          <button
            type="button"
            aria-label={t("author.form.takeOut", { what: t("author.form.line", { number: index + 1 }) })}
            onClick={() => onEdit("", [[...path, index], undefined])}
          >
            {t("author.form.remove")}
          </button>
        </div>
      ))}
      <button
        type="button"
        onClick={() => onEdit("", items.length === 0 ? [path, [""]] : [[...path, items.length], ""])}
      >
        {t("author.form.addLine")}
      </button>
    </fieldset>
  );
}
