/** The steps of a lesson as a list, the one in view marked. */

import { t } from "../../i18n/index.ts";
import type { Lesson } from "../../lesson/lesson.ts";

export interface StepListProps {
  readonly lesson: Lesson;
  readonly current: string;
  readonly seen: readonly string[];
  readonly onGo: (step: string) => void;
}

export const StepList = ({ lesson, current, seen, onGo }: StepListProps) => (
  <ol class="step-list">
    {lesson.steps.map(({ id, title }) => (
      <li key={id}>
        <button
          type="button"
          class="quiet"
          aria-current={id === current ? "step" : undefined}
          onClick={() => onGo(id)}
        >
          {title}
          {seen.includes(id) && id !== current && <span class="unseen">{t("lesson.seen")}</span>}
        </button>
      </li>
    ))}
  </ol>
);
