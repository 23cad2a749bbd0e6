/** The form's fields: each with its label, what helps to fill it, and the faults of its own lines. */
import type { ComponentChildren } from "preact";
import { useId, useRef, useState } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import { plainFix } from "../plain-fix.ts";
import { faultsOf, useDesk } from "./desk.ts";

interface FieldProps {
  readonly label: string;
  readonly hint?: string | undefined;
  /** Name of the field for faults, such as "question.ask". */
  readonly field: string;
}

interface ControlProps {
  readonly id: string;
  readonly "data-field": string;
  readonly "aria-invalid": boolean;
  readonly "aria-describedby": string;
}

interface FrameProps extends FieldProps {
  readonly control: (props: ControlProps) => ComponentChildren;
  readonly beneath?: ComponentChildren;
}

export function Frame({ label, hint, field, control, beneath }: FrameProps) {
  const id = useId();
  const desk = useDesk();
  const faulty = faultsOf(desk, field).length > 0;
  return (
    <div class="form-field">
      <label for={id}>{label}</label>
      {control({ id, "data-field": field, "aria-invalid": faulty, "aria-describedby": `${id}-more` })}
      <div id={`${id}-more`}>
        {hint && <p class="quiet-text">{hint}</p>}
        <FieldFaults field={field} />
      </div>
      {beneath}
    </div>
  );
}

/** Faults of one field; with `but` also of the fields within it, except those, which show their own. */
export function FieldFaults({
  field,
  but = [],
}: {
  readonly field: string;
  readonly but?: readonly string[];
}) {
  const desk = useDesk();
  const faults =
    but.length === 0
      ? faultsOf(desk, field)
      : faultsOf(desk, field, true).filter(
          (fault) => !but.some((shown) => faultsOf(desk, shown).includes(fault)),
        );
  return (
    <>
      {faults.map((fault) => {
        const fix = plainFix(fault, desk.text);
        return (
          <p class="field-fault" key={`${fault.found} ${fault.allowed}`}>
            {t("author.form.fault", { found: fault.found, allowed: fault.allowed })}
            {fix && (
              <button type="button" onClick={() => desk.write(fix.text, "")}>
                {t("author.fix", { word: fix.word })}
              </button>
            )}
          </p>
        );
      })}
    </>
  );
}

export interface TextFieldProps extends FieldProps {
  readonly value: string;
  readonly onText: (text: string) => void;
  /** Lines that are open from the start; 1: a line whose breaks are blanks. */
  readonly rows?: number;
  readonly lang?: string | undefined;
  /** What can be put in where the cursor stands. */
  readonly insert?: ((put: (text: string) => void) => ComponentChildren) | undefined;
}

/** While it has the cursor it shows what was typed, blanks at the end and all; else what stands in the lesson. */
export function TextField({ value, onText, rows = 1, lang, insert, ...field }: TextFieldProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const area = useRef<HTMLTextAreaElement>(null);
  const take = (raw: string) => {
    const text = rows === 1 ? raw.replaceAll(/\s*\n\s*/g, " ") : raw;
    setTyped(text);
    onText(text);
  };
  const put = (text: string) => {
    const box = area.current;
    if (!box) return;
    box.focus();
    box.setRangeText(text, box.selectionStart, box.selectionEnd, "end");
    take(box.value);
  };
  return (
    <Frame
      {...field}
      control={(props) => (
        <textarea
          {...props}
          ref={area}
          rows={rows}
          lang={lang}
          value={typed ?? value}
          onInput={(event) => take(event.currentTarget.value)}
          onBlur={() => setTyped(null)}
        />
      )}
      beneath={insert?.(put)}
    />
  );
}

export interface SelectFieldProps<Value extends string> extends FieldProps {
  readonly value: Value;
  readonly options: readonly (readonly [Value, string])[];
  readonly onChoose: (value: Value) => void;
}

export function SelectField<Value extends string>(props: SelectFieldProps<Value>) {
  const { value, options, onChoose, ...field } = props;
  return (
    <Frame
      {...field}
      control={(control) => (
        <select
          {...control}
          value={value}
          onChange={(event) => onChoose(entryAt(options, event.currentTarget.selectedIndex)[0])}
        >
          {options.map(([word, name]) => (
            <option key={word} value={word}>
              {name}
            </option>
          ))}
        </select>
      )}
    />
  );
}

/** Something to pick from that is put into the text; the list goes back to its name. */
export function Insert({
  label,
  options,
  onPick,
}: {
  readonly label: string;
  readonly options: readonly (readonly [string, string])[];
  readonly onPick: (text: string) => void;
}) {
  return (
    <select
      class="form-insert"
      aria-label={label}
      value=""
      onChange={(event) => {
        const { value } = event.currentTarget;
        event.currentTarget.value = "";
        if (value) onPick(value);
      }}
    >
      <option value="">{label}</option>
      {options.map(([text, name]) => (
        <option key={text} value={text}>
          {name}
        </option>
      ))}
    </select>
  );
}
