/** Words and publications that the lesson explains and names itself. */
import { t } from "../../../i18n/index.ts";
import { setFront } from "../../../lesson/edit/lesson-edit.ts";
import { DEPTHS_OF_READING } from "../../../lesson/format/glossary-schema.ts";
import { newId } from "../../../lesson/read/new-id.ts";
import { asNumber } from "./as-number.ts";
import { useDesk } from "./desk.ts";
import { entriesOf, type RawRecord } from "./entries.tsx";
import { FieldFaults, SelectField, TextField } from "./fields.tsx";

/** Each with its fields; those behind the first two or so may be left out. */
const FIELDS = {
  glossary: [
    ["term", false],
    ["plain", false],
    ["technical", true],
  ],
  publications: [
    ["authors", false],
    ["year", true],
    ["title", false],
    ["where", true],
    ["doi", true],
    ["url", true],
  ],
} as const;

const NEW = {
  glossary: { term: "", plain: "" },
  publications: { authors: "", title: "", read: "full" },
} as const;

/** Names of the fields that the entries show. */
export const namesOfOwnWords = (front: RawRecord): readonly string[] =>
  (["glossary", "publications"] as const).flatMap((name) => [
    `front.${name}`,
    ...entriesOf(front, name).flatMap(([key]) =>
      [[], ...FIELDS[name].map(([field]) => [field]), ...(name === "publications" ? [["read"]] : [])].map(
        (field) => ["front", name, key, ...field].join("."),
      ),
    ),
  ]);

export interface OwnWordsProps {
  readonly name: keyof typeof FIELDS;
  readonly front: RawRecord;
}

export function OwnWords({ name, front }: OwnWordsProps) {
  const desk = useDesk();
  const entries = entriesOf(front, name);
  const set = (path: readonly string[], value: unknown, what: string) =>
    desk.write(setFront(desk.text, [name, ...path], value), what);
  const add = () =>
    set(
      [
        newId(
          t(`author.own.${name}.key`),
          entries.map(([key]) => key),
        ),
      ],
      NEW[name],
      "",
    );
  return (
    <fieldset class="form-group">
      <legend>{t(`author.own.${name}`)}</legend>
      <FieldFaults field={`front.${name}`} />
      {entries.map(([key, entry]) => (
        <div class="form-entry" key={key}>
          <p>
            {t(`author.own.${name}.mark`)} <code>{name === "glossary" ? `[[${key}]]` : `[^${key}]`}</code>
          </p>
          <FieldFaults field={`front.${name}.${key}`} />
          {FIELDS[name].map(([field, optional]) => (
            <TextField
              key={field}
              field={`front.${name}.${key}.${field}`}
              label={t(`author.own.${field}`)}
              value={String(entry[field] ?? "")}
              onText={(text) =>
                set(
                  [key, field],
                  text === "" && optional ? undefined : field === "year" ? asNumber(text) : text,
                  `${name}.${key}.${field}`,
                )
              }
            />
          ))}
          {name === "publications" && (
            <SelectField
              field={`front.publications.${key}.read`}
              label={t("author.own.read")}
              value={String(entry.read ?? "")}
              options={DEPTHS_OF_READING.map((depth) => [depth, t(`lesson.read.${depth}`)] as const)}
              onChoose={(depth) => set([key, "read"], depth, "")}
            />
          )}
          <button
            type="button"
            aria-label={t("author.form.takeOut", { what: key })}
            onClick={() => set([key], undefined, "")}
          >
            {t("author.form.remove")}
          </button>
        </div>
      ))}
      <button type="button" onClick={add}>
        {t("author.form.addEntry")}
      </button>
    </fieldset>
  );
}
