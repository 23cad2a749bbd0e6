/** The figure that stands in a step's words, and what it shows for those who do not see it. */
import { t } from "../../../i18n/index.ts";
import { setPart } from "../../../lesson/edit/lesson-edit.ts";
import { partText } from "../../../lesson/edit/text-outline.ts";
import { FIGURE_MARK } from "../../../lesson/own/own-figures.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import { useDesk } from "./desk.ts";
import { SelectField, TextField } from "./fields.tsx";

export function FigureFields({ lang }: { readonly lang: string }) {
  const desk = useDesk();
  const { outline, step: index, figures } = desk;
  const words = partText(outline, entryAt(outline.steps, index), "plain");
  const [, alt = "", name = ""] = FIGURE_MARK.exec(words) ?? [];
  if (figures.length === 0 && name === "") return null;
  const set = (nextName: string, nextAlt: string, what: string) => {
    const mark = nextName === "" ? "" : `![${nextAlt.replaceAll(/[[\]\n]+/g, " ")}](${nextName})`;
    const next =
      name === "" ? `${words}\n\n${mark}` : words.replace(FIGURE_MARK, () => mark).replace(/\n{3,}/g, "\n\n");
    desk.write(setPart(desk.text, index, "plain", next), what && `${index}.${what}`);
  };
  const names = [...new Set([...figures.map((figure) => figure.name), ...(name ? [name] : [])])];
  return (
    <div class="form-row">
      <SelectField
        field="figure"
        label={t("author.form.figure")}
        value={name}
        options={[["", t("author.form.figure.none")], ...names.map((each) => [each, each] as const)]}
        onChoose={(next) => set(next, alt, "")}
      />
      {name !== "" && (
        <TextField
          field="alt"
          label={t("author.form.alt")}
          lang={lang}
          value={alt}
          onText={(text) => set(name, text, "alt")}
        />
      )}
    </div>
  );
}
