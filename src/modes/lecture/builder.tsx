/** Puts a talk together: steps chosen from lessons, their order, the time; kept as a file or as a link. */
import { useMemo, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Library } from "../../lesson/library.ts";
import { announce } from "../../ui/announce.tsx";
import { FaultNote } from "../../ui/fault-note.tsx";
import { Slider } from "../../ui/slider.tsx";
import type { Context } from "../shared/mode.ts";
import { AT_HOME, writePlace } from "../shared/place.ts";
import { BuilderActions } from "./builder-actions.tsx";
import { LessonPicker } from "./lesson-picker.tsx";
import { MINUTES, type Stop } from "./playlist.ts";
import { type FoundStop, secondsOf } from "./stops.ts";
import { type TalkDraft, talkDraft } from "./talk-draft.ts";

export function Builder({ context, library }: { readonly context: Context; readonly library: Library }) {
  const { place } = context;
  const lessons = useRef(library.lessons);
  lessons.current = library.lessons;
  const draft = useMemo(() => talkDraft(place.peek().more, () => lessons.current), []);
  const { language } = place.value;
  const add = (more: readonly Stop[]) => {
    draft.stops.value = [...draft.stops.value, ...more];
    announce(t("lecture.steps", { count: draft.stops.value.length }));
  };
  return (
    <div class="page-sheet builder">
      <header class="page-head">
        <a class="wordmark" href={writePlace({ ...AT_HOME, language })}>
          {t("name")}
        </a>
      </header>
      <main class="builder-columns">
        <section>
          <h1>{t("lecture.build")}</h1>
          <p class="quiet-text">{t("lecture.build.help")}</p>
          <h2>{t("lecture.lessons")}</h2>
          <LessonPicker lessons={library.lessons} language={language} onAdd={add} />
        </section>
        <section class="builder-list" aria-labelledby="talk">
          <h2 id="talk">{t("lecture.list")}</h2>
          {draft.found.value.length === 0 && <p>{t("lecture.list.empty")}</p>}
          <ol>
            {draft.found.value.map((stop, index) => (
              // A step may come twice: its place is its key.
              <StopRow key={index} {...{ draft, stop, index }} />
            ))}
          </ol>
          <Minutes draft={draft} />
          <label class="field">
            {t("lecture.name")}
            <input
              type="text"
              maxLength={120}
              value={draft.title}
              onInput={(event) => {
                draft.title.value = event.currentTarget.value;
              }}
            />
          </label>
          {draft.faults.value.length > 0 && (
            <FaultNote title={t("lecture.fileFault")} faults={draft.faults.value} />
          )}
          <BuilderActions context={context} library={library} draft={draft} />
        </section>
      </main>
    </div>
  );
}

interface StopRowProps {
  readonly draft: TalkDraft;
  readonly stop: FoundStop;
  readonly index: number;
}

const StopRow = ({ draft, stop: { lesson, step }, index }: StopRowProps) => (
  <li>
    <span>
      {step.title}
      <span class="quiet-text">{lesson.title}</span>
    </span>
    <button
      type="button"
      aria-label={t("lecture.up", { title: step.title })}
      onClick={() => draft.move(index, index - 1)}
    >
      <span aria-hidden="true">↑</span>
    </button>
    <button
      type="button"
      aria-label={t("lecture.down", { title: step.title })}
      onClick={() => draft.move(index, index + 1)}
    >
      <span aria-hidden="true">↓</span>
    </button>
    <button
      type="button"
      aria-label={t("lecture.remove", { title: step.title })}
      onClick={() => {
        draft.stops.value = draft.stops.value.filter((_, each) => each !== index);
      }}
    >
      <span aria-hidden="true">×</span>
    </button>
  </li>
);

/** How long the talk may take, and what its steps need. */
function Minutes({ draft: { minutes, found } }: { readonly draft: TalkDraft }) {
  const minute = (count: number) => t("lecture.minute", { count: Math.round(count) });
  const { min, max } = MINUTES;
  return (
    <>
      <Slider
        label={t("lecture.minutes")}
        value={minutes.value}
        {...{ min, max }}
        step={1}
        unit="min"
        changed={false}
        onChange={(value) => {
          minutes.value = value;
        }}
        onSettle={() => {}}
        onReset={() => {}}
      />
      {found.value.length > 0 && (
        <p data-needs>
          {t("lecture.needs", {
            needs: minute(secondsOf(found.value) / 60),
            has: minute(minutes.value),
          })}
        </p>
      )}
    </>
  );
}
