/** What to look at: one large button a lesson. */
import type { Signal } from "@preact/signals";
import { t } from "../../i18n/index.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import { Cautions } from "../../ui/cautions.tsx";
import { LargerButton } from "./larger-button.tsx";

export interface TopicsProps {
  readonly lessons: readonly Lesson[];
  /** Whom to ask here, as the organiser wrote it; may be empty. */
  readonly contact: string;
  readonly larger: Signal<boolean>;
  readonly onLesson: (id: string) => void;
  readonly onLeave: () => void;
}

export const Topics = ({ lessons, contact, larger, onLesson, onLeave }: TopicsProps) => (
  <div class="kiosk-topics">
    <div class="clear" data-clear />
    <main>
      <h1>{t("kiosk.topics")}</h1>
      <ul>
        {lessons.map(({ id, title, language }) => (
          <li key={id}>
            <button type="button" lang={language} onClick={() => onLesson(id)}>
              {title}
            </button>
          </li>
        ))}
      </ul>
      <Cautions />
      {contact && <p class="kiosk-contact">{contact}</p>}
    </main>
    <nav class="kiosk-bar" aria-label={t("kiosk.bar")}>
      <LargerButton larger={larger} />
      <button type="button" class="kiosk-leave" onClick={onLeave}>
        {t("kiosk.again")}
      </button>
    </nav>
  </div>
);
