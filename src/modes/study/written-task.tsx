/** A task to be answered in one's own words; a model answer opens once something is written. */
import { useId, useState } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { WrittenTask } from "../../lesson/lesson.ts";
import { MAX_WRITTEN } from "../../lesson/progress/progress.ts";
import { InlineView } from "../../ui/lesson/prose.tsx";
import type { Voice } from "../../ui/lesson/voice.ts";

export interface WrittenTaskProps {
  readonly task: WrittenTask;
  readonly voice: Voice;
  /** of the task's words */
  readonly language: string | undefined;
  readonly text: string;
  readonly onWrite: (text: string) => void;
}

export function WrittenTaskView({ task, voice, language, text, onWrite }: WrittenTaskProps) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const begun = text.trim() !== "";
  return (
    <section class="question" aria-label={t("lesson.task")}>
      <p class="question-kind">{t("lesson.task")}</p>
      <label for={id} lang={language}>
        <InlineView words={task.ask} voice={voice} />
      </label>
      <textarea
        id={id}
        rows={4}
        maxLength={MAX_WRITTEN}
        value={text}
        aria-describedby={`${id}-for`}
        onInput={(event) => onWrite(event.currentTarget.value)}
      />
      <p class="quiet-text" id={`${id}-for`}>
        {t("lesson.surprise.for")}
      </p>
      <button
        type="button"
        aria-expanded={open}
        aria-disabled={!begun || undefined}
        onClick={() => begun && setOpen(!open)}
      >
        {t("lesson.task.compare")}
      </button>
      {!begun && <p class="quiet-text">{t("lesson.task.first")}</p>}
      {open && begun && (
        <div class="feedback" lang={language}>
          {task.answer.map((line, index) => (
            <p key={index}>
              <InlineView words={line} voice={voice} />
            </p>
          ))}
        </div>
      )}
    </section>
  );
}
