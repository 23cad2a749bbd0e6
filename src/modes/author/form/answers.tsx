/** Answers to choose from: which one is right says the author, or a condition that the model judges. */
import { t } from "../../../i18n/index.ts";
import { Choice, Switch } from "../../../ui/choice.tsx";
import { Entry, entriesOf, type RawRecord } from "./entries.tsx";
import { FieldFaults, Insert, TextField } from "./fields.tsx";
import { numberNames } from "./model-numbers.ts";
import { type EditQuestion, freshKey } from "./question-table.ts";

/** What a question about a change begins with. */
const CONDITIONS = [
  "pathway.pressureDrop > previous.pathway.pressureDrop",
  "pathway.pressureDrop <= previous.pathway.pressureDrop",
];

export interface AnswersProps {
  readonly raw: RawRecord;
  readonly onEdit: EditQuestion;
}

export function Answers({ raw, onEdit }: AnswersProps) {
  const answers = entriesOf(raw, "answers");
  const keys = answers.map(([key]) => key);
  const byModel = answers.some(([, { right }]) => right !== undefined && typeof right !== "boolean");
  const scaled = Array.isArray(raw.scale);
  const withScale = (next: readonly string[]) => (scaled ? [[["scale"], next] as const] : []);
  const setRight = (chosen: string) =>
    onEdit("", ...keys.map((key) => [["answers", key, "right"], key === chosen || undefined] as const));
  const judge = (who: "author" | "model") =>
    who === "author"
      ? setRight(keys[0] ?? "")
      : onEdit(
          "",
          ...keys.map((key, index) => [["answers", key, "right"], CONDITIONS[index] ?? "false"] as const),
        );
  const add = () => {
    const fresh = freshKey(keys);
    onEdit("", [["answers", fresh], { say: "", because: "" }], ...withScale([...keys, fresh]));
  };
  return (
    <fieldset class="form-group">
      <legend>{t("author.q.answers")}</legend>
      <FieldFaults field="question.answers" />
      <Choice
        label={t("author.q.judge")}
        value={byModel ? "model" : "author"}
        words={["author", "model"]}
        nameOf={(who) => t(`author.q.judge.${who}`)}
        onChoose={judge}
      />
      {answers.map(([key, entry], index) => (
        <div key={key}>
          <RightMark {...{ index, entry, byModel, onEdit }} id={key} onRight={() => setRight(key)} />
          <Entry
            name="answers"
            {...{ index, entry, onEdit }}
            id={key}
            onRemove={() =>
              onEdit("", [["answers", key], undefined], ...withScale(keys.filter((each) => each !== key)))
            }
          />
        </div>
      ))}
      <button type="button" onClick={add}>
        {t("author.form.addEntry")}
      </button>
      <Switch
        label={t("author.q.scale")}
        on={scaled}
        onChange={(on) => onEdit("", [["scale"], on ? keys : undefined])}
      />
      <FieldFaults field="question.scale" />
    </fieldset>
  );
}

interface RightMarkProps {
  readonly id: string;
  readonly index: number;
  readonly entry: RawRecord;
  readonly byModel: boolean;
  readonly onEdit: EditQuestion;
  readonly onRight: () => void;
}

function RightMark({ id, index, entry, byModel, onEdit, onRight }: RightMarkProps) {
  if (byModel)
    return (
      <TextField
        field={`question.answers.${id}.right`}
        label={t("author.q.condition", { number: index + 1 })}
        value={entry.right === undefined ? "" : String(entry.right)}
        onText={(text) => onEdit(`answers.${id}.right`, [["answers", id, "right"], text])}
        insert={(put) => <Insert label={t("author.q.pick")} options={numberNames()} onPick={put} />}
      />
    );
  return (
    <label class="check">
      <input type="radio" name="right-answer" checked={entry.right === true} onChange={onRight} />
      {t("author.q.isRight", { number: index + 1 })}
    </label>
  );
}
