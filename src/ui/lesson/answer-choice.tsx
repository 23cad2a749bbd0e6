/** One of a few answers: for predictions, which are locked once given, and for questions that may be tried again. */
import { useId, useState } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Answer, Words } from "../../lesson/lesson.ts";
import { InlineView } from "./prose.tsx";
import type { Voice } from "./voice.ts";

export interface AnswerChoiceProps {
  readonly ask: Words;
  readonly answers: readonly Answer[];
  readonly voice: Voice;
  readonly given: string | null;
  /** Given and not to be changed. */
  readonly locked: boolean;
  /** Message key of the button. */
  readonly button: string;
  readonly onAnswer: (id: string) => void;
}

export function AnswerChoice({ ask, answers, voice, given, locked, button, onAnswer }: AnswerChoiceProps) {
  const name = useId();
  const [chosen, choose] = useState(given);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (chosen !== null && !locked) onAnswer(chosen);
      }}
    >
      <fieldset class="answers">
        <legend>
          <InlineView words={ask} voice={voice} />
        </legend>
        {answers.map(({ id, say }) => (
          <label key={id} class={chosen === id ? "answer chosen" : "answer"}>
            <input
              type="radio"
              name={name}
              value={id}
              checked={chosen === id}
              disabled={locked}
              onChange={() => choose(id)}
            />
            <span>
              <InlineView words={say} voice={voice} />
            </span>
          </label>
        ))}
      </fieldset>
      {!locked && (
        <button type="submit" class="main" aria-disabled={chosen === null || undefined}>
          {t(button)}
        </button>
      )}
    </form>
  );
}
