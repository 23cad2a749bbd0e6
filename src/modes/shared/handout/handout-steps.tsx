/** The steps of a lesson, to choose those that its page for families has, with a picture or without. */
import type { Signal } from "@preact/signals";
import { t } from "../../../i18n/index.ts";
import type { Lesson } from "../../../lesson/lesson.ts";
import { type HandoutChoice, ONE_PAGE, withAllSteps, withOne } from "./handout-choice.ts";

interface HandoutStepsProps {
  readonly lesson: Lesson;
  readonly choice: Signal<HandoutChoice>;
}

export function HandoutSteps({ lesson, choice }: HandoutStepsProps) {
  const { steps, pictures } = choice.value;
  const set = (part: keyof HandoutChoice, id: string, on: boolean) => {
    choice.value = withOne(choice.peek(), part, id, on);
  };
  return (
    <details class="handout-steps">
      <summary>{t("handout.steps")}</summary>
      <p>{t("handout.steps.fit", { count: ONE_PAGE })}</p>
      <button
        type="button"
        onClick={() => {
          choice.value = withAllSteps(choice.peek(), lesson);
        }}
      >
        {t("handout.steps.all")}
      </button>
      <ul>
        {lesson.steps.map(({ id, title }) => (
          <li key={id}>
            <label class="switch">
              <input
                type="checkbox"
                checked={steps.has(id)}
                onChange={({ currentTarget }) => set("steps", id, currentTarget.checked)}
              />
              <span>{title}</span>
            </label>
            {steps.has(id) && (
              <label class="switch">
                <input
                  type="checkbox"
                  aria-label={t("handout.picture.of", { step: title })}
                  checked={pictures.has(id)}
                  onChange={({ currentTarget }) => set("pictures", id, currentTarget.checked)}
                />
                <span>{t("handout.picture")}</span>
              </label>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
