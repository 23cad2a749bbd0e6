/** What one can do after a lesson, at the level of the version that is read. */
import { t } from "../../i18n/index.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import type { TextVersion } from "../../ui/lesson/voice.ts";

export const GoalList = ({ lesson, version }: { readonly lesson: Lesson; readonly version: TextVersion }) =>
  lesson.goals && (
    <section class="goals" aria-label={t("lesson.goals")}>
      <p>
        <strong>{t("lesson.goals")}</strong>
      </p>
      <ul lang={lesson.language}>
        {lesson.goals[version].map((goal) => (
          <li key={goal}>{goal}</li>
        ))}
      </ul>
    </section>
  );
