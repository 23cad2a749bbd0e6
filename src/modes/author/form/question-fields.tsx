/** What a step asks: the kind, and the fields of that kind. */
import { t } from "../../../i18n/index.ts";
import { recordAt } from "../../../lesson/edit/lenient-scenes.ts";
import { setBlock, setBlockText } from "../../../lesson/edit/lesson-edit.ts";
import { type Path, recordText } from "../../../lesson/edit/yaml-edit.ts";
import { QUESTION_KINDS, type QuestionKind } from "../../../lesson/format/question-schema.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import { Answers } from "./answers.tsx";
import { useDesk } from "./desk.ts";
import { Entries } from "./entries.tsx";
import { FieldFaults, SelectField } from "./fields.tsx";
import { OneField } from "./one-field.tsx";
import { namesWithin, newQuestion, QUESTION_FIELDS } from "./question-table.ts";

export function QuestionFields() {
  const desk = useDesk();
  const { outline, step: index } = desk;
  const block = entryAt(outline.steps, index).blocks.question;
  const raw = recordAt(outline, block);
  const kind = QUESTION_KINDS.find((each) => each === raw.kind);
  const edit = (what: string, ...edits: (readonly [Path, unknown])[]) =>
    desk.write(setBlock(desk.text, index, "question", edits), what && `${index}.question.${what}`);
  const choose = (next: QuestionKind | "") =>
    desk.write(setBlockText(desk.text, index, "question", next && recordText(newQuestion(next, raw))), "");
  const fields = kind ? QUESTION_FIELDS[kind] : [];
  return (
    <fieldset class="form-group">
      <legend>{t("author.form.question")}</legend>
      <SelectField
        field="question.kind"
        label={t("author.form.kind")}
        value={kind ?? ""}
        options={[
          ["", t("author.kind.none")],
          ...QUESTION_KINDS.map((each) => [each, t(`author.kind.${each}`)] as const),
        ]}
        onChoose={choose}
      />
      {fields.map((field) => {
        const key = `${kind} ${field.key}`;
        if (field.form === "answers") return <Answers key={key} raw={raw} onEdit={edit} />;
        if (field.form === "entries") return <Entries key={key} name={field.key} raw={raw} onEdit={edit} />;
        return <OneField key={key} field={field} path={[field.key]} raw={raw} onEdit={edit} />;
      })}
      <FieldFaults
        field="question"
        but={[
          "question.kind",
          ...fields.flatMap(({ key }) => [`question.${key}`, ...namesWithin(key, raw[key])]),
        ]}
      />
    </fieldset>
  );
}
