/** Puts a talk together: steps chosen from lessons, their order, the time; kept as a file or as a link. */
import { useEffect, useMemo, useRef } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import type { Library } from "../../../lesson/library/library.ts";
import { announce } from "../../../ui/announce.tsx";
import { FaultNote, inSight } from "../../../ui/fault-note.tsx";
import { Slider } from "../../../ui/slider.tsx";
import { AT_HOME, writePlace } from "../../shared/address/place.ts";
import type { Context } from "../../shared/mode.ts";
import { NewerVersion } from "../../shared/offline/newer-version.tsx";
import { keepTalk, onOtherTab, readKeptTalk } from "../files/talk-store.ts";
import { MAX_TITLE, type Stop, withMore } from "../talk/own-stops.ts";
import { MINUTES } from "../talk/playlist.ts";
import { secondsOf } from "../talk/stops.ts";
import { BuilderActions } from "./builder-actions.tsx";
import { LessonPicker } from "./lesson-picker.tsx";
import { OwnStops } from "./own-stops-bar.tsx";
import { StopList } from "./stop-list.tsx";
import { type TalkDraft, talkDraft } from "./talk-draft.ts";

const STORE = { read: readKeptTalk, keep: keepTalk, onOtherTab };

export function Builder({ context, library }: { readonly context: Context; readonly library: Library }) {
  const { place } = context;
  const lessons = useRef(library.lessons);
  lessons.current = library.lessons;
  const draft = useMemo(() => talkDraft(place.peek().more, () => lessons.current, STORE), []);
  useEffect(() => draft.release, [draft]);
  const { stops, title } = draft.plan.value;
  const without = Number(place.value.more.without) || 0;
  const { language } = place.value;
  const add = (more: readonly Stop[]) => {
    draft.setStops(null, (all) => withMore(all, more));
    announce(t("lecture.stops", { count: draft.plan.value.stops.length }));
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
          {without > 0 && <p class="note">{t("lecture.link.without", { count: without })}</p>}
          <OwnStops draft={draft} />
          {stops.length === 0 && <p>{t("lecture.list.empty")}</p>}
          <StopList context={context} draft={draft} lessons={library.lessons} />
          <Minutes draft={draft} />
          <label class="field">
            {t("lecture.name")}
            <input
              type="text"
              maxLength={MAX_TITLE}
              value={title}
              onInput={(event) => {
                const { value } = event.currentTarget;
                draft.edit("title", (plan) => ({ ...plan, title: value }));
              }}
            />
          </label>
          <NewerVersion />
          {!draft.keeps.value && <p class="note">{t("lecture.notKept")}</p>}
          <FileFaults draft={draft} />
          <BuilderActions context={context} library={library} draft={draft} />
        </section>
      </main>
    </div>
  );
}

/** What a file could not bring: a talk at all, or some of one. */
function FileFaults({ draft }: { readonly draft: TalkDraft }) {
  const faults = draft.faults.value;
  const name = draft.refusedFile.value;
  if (name === null)
    return faults.length > 0 ? <FaultNote title={t("lecture.fileFault")} faults={faults} /> : null;
  return (
    <p class="note" role="alert">
      {t("lecture.noTalk", { name: inSight(name), save: t("lecture.save") })}
    </p>
  );
}

/** How long the talk may take, and what its steps need. */
function Minutes({ draft: { plan, edit, found } }: { readonly draft: TalkDraft }) {
  const { minutes } = plan.value;
  const minute = (count: number) => t("lecture.minute", { count: Math.round(count) });
  const { min, max } = MINUTES;
  return (
    <>
      <Slider
        label={t("lecture.minutes")}
        value={minutes}
        {...{ min, max }}
        step={1}
        unit="min"
        changed={false}
        onChange={(value) => {
          edit("minutes", (before) => ({ ...before, minutes: value }));
        }}
        onSettle={() => {}}
        onReset={() => {}}
      />
      {found.value.length > 0 && (
        <p data-needs>
          {t("lecture.needs", {
            needs: minute(secondsOf(found.value) / 60),
            has: minute(minutes),
          })}
        </p>
      )}
    </>
  );
}
