/** Entries with keys: things to order, mistakes with a name. */
import { t } from "../../../i18n/index.ts";
import { Switch } from "../../../ui/choice.tsx";
import { FieldFaults } from "./fields.tsx";
import { OneField } from "./one-field.tsx";
import { type EditQuestion, ENTRY_FIELDS, freshKey } from "./question-table.ts";

export type RawRecord = Readonly<Record<string, unknown>>;

export const entriesOf = (raw: RawRecord, name: string): (readonly [string, RawRecord])[] =>
  Object.entries((raw[name] ?? {}) as Record<string, RawRecord>).map(([key, entry]) => [key, entry ?? {}]);

export interface EntriesProps {
  readonly name: string;
  readonly raw: RawRecord;
  readonly onEdit: EditQuestion;
}

export function Entries({ name, raw, onEdit }: EntriesProps) {
  const entries = entriesOf(raw, name);
  const keys = entries.map(([key]) => key);
  const listed = name === "items" && Array.isArray(raw.order);
  const withOrder = (next: readonly string[]) => (listed ? [[["order"], next] as const] : []);
  const fresh = freshKey(keys);
  const value = name === "mistakes" ? { value: "2 * pathway.pressureDrop", because: "" } : {};
  return (
    <fieldset class="form-group">
      <legend>{t(`author.q.${name}`)}</legend>
      <FieldFaults field={`question.${name}`} />
      {entries.map(([key, entry], index) => (
        <Entry
          key={key}
          {...{ name, index, entry, onEdit }}
          id={key}
          onRemove={() =>
            onEdit("", [[name, key], undefined], ...withOrder(keys.filter((each) => each !== key)))
          }
        />
      ))}
      <button
        type="button"
        onClick={() => onEdit("", [[name, fresh], { say: "", ...value }], ...withOrder([...keys, fresh]))}
      >
        {t("author.form.addEntry")}
      </button>
      {name === "items" && (
        <Switch
          label={t("author.q.listed")}
          on={listed}
          onChange={(on) => onEdit("", [["order"], on ? keys : undefined])}
        />
      )}
    </fieldset>
  );
}

export interface EntryProps {
  readonly name: string;
  /** Its key. */
  readonly id: string;
  readonly index: number;
  readonly entry: RawRecord;
  readonly onEdit: EditQuestion;
  readonly onRemove: () => void;
}

export function Entry({ name, id, index, entry, onEdit, onRemove }: EntryProps) {
  const label = t("author.form.entry", { number: index + 1 });
  return (
    <div class="form-entry">
      <FieldFaults field={`question.${name}.${id}`} />
      {(ENTRY_FIELDS[name] ?? []).map((field) => (
        <OneField key={field.key} field={field} path={[name, id, field.key]} raw={entry} onEdit={onEdit} />
      ))}
      <button type="button" aria-label={t("author.form.takeOut", { what: label })} onClick={onRemove}>
        {t("author.form.remove")}
      </button>
    </div>
  );
}
