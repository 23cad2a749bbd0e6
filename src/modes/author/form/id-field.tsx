/** The id of a step: taken once it is typed to its end, since what names the step follows it. */
import { useState } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { type RenameRefusal, renameStep } from "../../../lesson/edit/rename-step.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import { useDesk } from "./desk.ts";
import { Frame } from "./fields.tsx";

export function IdField() {
  const { text, outline, step: index, write } = useDesk();
  const { id } = entryAt(outline.steps, index);
  const [refused, setRefused] = useState<RenameRefusal | null>(null);
  const take = (typed: string) => {
    const renamed = renameStep(text, index, typed.trim());
    setRefused("refused" in renamed ? renamed.refused : null);
    if ("text" in renamed) write(renamed.text, "");
  };
  return (
    <Frame
      field="id"
      label={t("author.form.id")}
      hint={t("author.form.step.id.hint")}
      control={(props) => (
        <input
          {...props}
          type="text"
          value={id}
          aria-invalid={refused !== null || props["aria-invalid"]}
          onChange={({ currentTarget }) => take(currentTarget.value)}
        />
      )}
      beneath={
        <p class="field-fault" role="status">
          {refused && t(`author.form.step.id.${refused}`)}
        </p>
      }
    />
  );
}
