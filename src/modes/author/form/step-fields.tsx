/** One step: its title, what is said, what is shown, what is asked, and what else can be read. */
import { t } from "../../../i18n/index.ts";
import { recordAt } from "../../../lesson/edit/lenient-scenes.ts";
import { setHeading, setPart } from "../../../lesson/edit/lesson-edit.ts";
import { partText, splitSaid } from "../../../lesson/edit/text-outline.ts";
import { FIGURE_MARK } from "../../../lesson/own/own-figures.ts";
import { countWords } from "../../../lesson/prose.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import { useDesk } from "./desk.ts";
import { entriesOf } from "./entries.tsx";
import { FieldFaults, Insert, TextField } from "./fields.tsx";
import { FigureFields } from "./figure-fields.tsx";
import { IdField } from "./id-field.tsx";
import { liveNumbers } from "./model-numbers.ts";
import { QuestionFields } from "./question-fields.tsx";
import { SceneFields } from "./scene-fields.tsx";

const FIGURE_AT_END = new RegExp(`(?:^|\\n\\n)(${FIGURE_MARK.source})$`);

/** Parts beyond what is said, in the order in which an author needs them. */
const FURTHER = ["notes", "technical", "caution"] as const;

export function StepFields({ onAdjust }: { readonly onAdjust: () => void }) {
  const desk = useDesk();
  const { outline, step: index } = desk;
  const step = entryAt(outline.steps, index);
  const lang = String(recordAt(outline, outline.front).language ?? "en");
  const { said, more: rest } = splitSaid(partText(outline, step, "plain"));
  // A figure at the end has fields of its own.
  const picture = FIGURE_AT_END.exec(rest);
  const more = picture ? rest.slice(0, picture.index) : rest;
  const key = (name: string) => `${index}.${name}`;
  const writePlain = (first: string, further: string, name: string) =>
    desk.write(
      setPart(desk.text, index, "plain", [first, further, picture?.[1] ?? ""].filter(Boolean).join("\n\n")),
      key(name),
    );
  const { glossary, sources } = desk.library;
  const own = recordAt(outline, outline.front);
  const words = { ...glossary, ...Object.fromEntries(entriesOf(own, "glossary")) };
  const publications = { ...sources, ...Object.fromEntries(entriesOf(own, "publications")) };
  const numbers = (put: (text: string) => void) => (
    <>
      <Insert label={t("author.form.insert")} options={liveNumbers()} onPick={put} />
      <Insert
        label={t("author.form.insertWord")}
        options={Object.entries(words).map(([key, { term }]) => [`[[${key}]]`, String(term || key)] as const)}
        onPick={put}
      />
    </>
  );
  const withSources = (put: (text: string) => void) => (
    <>
      {numbers(put)}
      <Insert
        label={t("author.form.insertSource")}
        options={Object.entries(publications).map(
          ([key, { authors, title }]) => [`[^${key}]`, `${authors}: ${title}`] as const,
        )}
        onPick={put}
      />
    </>
  );
  return (
    <>
      <FieldFaults field="step" />
      <TextField
        field="title"
        label={t("author.form.stepTitle")}
        lang={lang}
        value={step.title}
        onText={(title) => desk.write(setHeading(desk.text, index, title, step.id), key("title"))}
      />
      <TextField
        field="said"
        label={t("author.form.said")}
        hint={t("author.form.said.hint", { count: countWords(said) })}
        rows={3}
        lang={lang}
        value={said}
        onText={(text) => writePlain(text.replaceAll(/\n\s*\n/g, "\n"), more, "said")}
        insert={numbers}
      />
      <FigureFields lang={lang} />
      <SceneFields onAdjust={onAdjust} />
      <QuestionFields />
      <TextField
        field="more"
        label={t("author.form.more")}
        hint={t("author.form.more.hint")}
        rows={3}
        lang={lang}
        value={more}
        onText={(text) => writePlain(said, text, "more")}
        insert={numbers}
      />
      {FURTHER.map((name) => (
        <TextField
          key={name}
          field={name}
          label={t(`author.form.${name}`)}
          hint={t(`author.form.${name}.hint`)}
          rows={2}
          lang={lang}
          value={partText(outline, step, name)}
          onText={(text) => desk.write(setPart(desk.text, index, name, text), key(name))}
          insert={name === "caution" ? undefined : withSources}
        />
      ))}
      <IdField />
    </>
  );
}
