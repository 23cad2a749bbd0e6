/** A number to guess, in its unit; comma and point are both read. */
import { useId, useState } from "preact/hooks";
import { formatNumber, parseNumber, t, unitSymbol } from "../../i18n/index.ts";
import type { EstimateQuestion } from "../../lesson/lesson.ts";
import { InlineView } from "./prose.tsx";
import type { Voice } from "./voice.ts";

export interface AnswerEstimateProps {
  readonly question: EstimateQuestion;
  readonly voice: Voice;
  readonly given: number | null;
  readonly onAnswer: (value: number) => void;
}

export function AnswerEstimate({ question, voice, given, onAnswer }: AnswerEstimateProps) {
  const id = useId();
  const { unit, digits } = question.format;
  const [text, setText] = useState(given === null ? "" : formatNumber(given, digits));
  const [refused, setRefused] = useState(false);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        const value = parseNumber(text);
        setRefused(value === undefined);
        if (value !== undefined) onAnswer(value);
      }}
    >
      <label for={id}>
        <InlineView words={question.ask} voice={voice} />
      </label>
      <div class="estimate">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={refused}
          aria-describedby={`${id}-unit`}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <span id={`${id}-unit`}>{refused ? t("lesson.noNumber", { found: text }) : unitSymbol(unit)}</span>
      </div>
      <button type="submit" class="main">
        {t("lesson.check")}
      </button>
    </form>
  );
}
