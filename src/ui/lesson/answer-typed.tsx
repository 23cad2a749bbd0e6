/** A number to type, its unit beside it; comma and point are both read. */
import { useId, useState } from "preact/hooks";
import { formatNumber, t, unitSymbol } from "../../i18n/index.ts";
import type { Words } from "../../lesson/lesson.ts";
import type { Format } from "../../lesson/model/live-figures.ts";
import { InlineView } from "./prose.tsx";
import { readTyped } from "./read-typed.ts";
import type { Voice } from "./voice.ts";

export interface AnswerTypedProps {
  readonly ask: Words;
  readonly format: Format;
  readonly voice: Voice;
  readonly given: number | null;
  /** Given and not to be changed. */
  readonly locked: boolean;
  readonly onAnswer: (value: number) => void;
}

/** Any number shows how one is written; this one is no likely answer. */
const EXAMPLE = 98.7;

export function AnswerTyped({
  ask,
  format: { unit, digits },
  voice,
  given,
  locked,
  onAnswer,
}: AnswerTypedProps) {
  const id = useId();
  const [text, setText] = useState(given === null ? "" : formatNumber(given, digits));
  const [refused, setRefused] = useState<string | null>(null);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (locked) return;
        const value = readTyped(text, unit);
        setRefused(value === undefined ? text.trim() : null);
        if (value !== undefined) onAnswer(value);
      }}
    >
      <label for={id}>
        <InlineView words={ask} voice={voice} />
      </label>
      <div class="typed">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          readOnly={locked}
          aria-invalid={refused !== null}
          aria-describedby={refused === null ? `${id}-unit` : `${id}-unit ${id}-fault`}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <span id={`${id}-unit`}>{unitSymbol(unit)}</span>
      </div>
      {refused !== null && (
        <p class="field-fault" id={`${id}-fault`} role="alert">
          {refused && t("lesson.noNumber", { found: refused })}{" "}
          {t("lesson.typeNumber", { example: formatNumber(EXAMPLE, 1) })}
        </p>
      )}
      {!locked && (
        <button type="submit" class="main">
          {t("lesson.check")}
        </button>
      )}
    </form>
  );
}
