/** What holds for the lesson as a whole. */
import { LANGUAGES, languageName, t } from "../../../i18n/index.ts";
import { recordAt } from "../../../lesson/edit/lenient-scenes.ts";
import { setFront } from "../../../lesson/edit/lesson-edit.ts";
import { asNumber } from "./as-number.ts";
import { useDesk } from "./desk.ts";
import { FieldFaults, SelectField, TextField } from "./fields.tsx";
import { FigureList } from "./figure-list.tsx";
import { namesOfOwnWords, OwnWords } from "./own-words.tsx";

const WORDS = ["title", "reader", "aim", "remember"] as const;
const NUMBERS = ["minutes", "number"] as const;
const SHOWN = [...WORDS, ...NUMBERS, "id", "language", "tell"].map((key) => `front.${key}`);

export function LessonFields() {
  const desk = useDesk();
  const record = recordAt(desk.outline, desk.outline.front);
  const textOf = (key: string) => String(record[key] ?? "");
  const set = (key: string, value: unknown) => desk.write(setFront(desk.text, [key], value), `front.${key}`);
  const lang = textOf("language") || "en";
  const languages = [...new Set([...LANGUAGES, lang])];
  return (
    <>
      <FieldFaults field="front" but={[...SHOWN, ...namesOfOwnWords(record)]} />
      {WORDS.map((key) => (
        <TextField
          key={key}
          field={`front.${key}`}
          label={t(`author.form.${key}`)}
          lang={lang}
          value={textOf(key)}
          onText={(text) => set(key, text)}
        />
      ))}
      <TextField
        field="front.tell"
        label={t("author.form.tell")}
        lang={lang}
        value={textOf("tell")}
        onText={(text) => set("tell", text === "" ? undefined : text)}
      />
      <div class="form-row">
        {NUMBERS.map((key) => (
          <TextField
            key={key}
            field={`front.${key}`}
            label={t(`author.form.${key}`)}
            value={textOf(key)}
            onText={(text) => set(key, asNumber(text))}
          />
        ))}
        <SelectField
          field="front.language"
          label={t("author.form.language")}
          value={lang}
          options={languages.map((tag) => [tag, nameOf(tag)] as const)}
          onChoose={(tag) => set("language", tag === "en" ? undefined : tag)}
        />
      </div>
      <TextField
        field="front.id"
        label={t("author.form.id")}
        hint={t("author.form.id.hint")}
        value={textOf("id")}
        onText={(text) => set("id", text)}
      />
      <FigureList />
      <OwnWords name="glossary" front={record} />
      <OwnWords name="publications" front={record} />
    </>
  );
}

function nameOf(tag: string): string {
  try {
    return languageName(tag);
  } catch {
    // No tag at all: the checker says what is allowed.
    return tag;
  }
}
