/** Writing a lesson: its text beside the stage on which it runs; faults as one types. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { workerPort } from "../../chain/port.ts";
import { language, t } from "../../i18n/index.ts";
import DraftCheckWorker from "../../lesson/check/draft-check-worker.ts?worker&inline";
import { forgetLibraries, type Library, loadLibrary } from "../../lesson/library/library.ts";
import { Transport } from "../../ui/transport.tsx";
import { AT_HOME, writePlace } from "../shared/address/place.ts";
import { Notes } from "../shared/bar/notes.tsx";
import { isMoving, togglePlay } from "../shared/handles/play.ts";
import type { Context } from "../shared/mode.ts";
import { LessonFilePicker } from "../shared/own/lesson-file-picker.tsx";
import { type OwnTexts, openOwnTexts } from "../shared/own/own-texts.ts";
import { takeDrops } from "../shared/own/take-drops.ts";
import { browserTextStore } from "../shared/own/text-store.ts";
import { StageView } from "../shared/stage/stage-view.tsx";
import { type Draft, openDraft } from "./draft.ts";
import { copyOfKitLesson, firstText, newText } from "./first-text.ts";
import { Preview } from "./preview.tsx";
import { SourcePane } from "./source-pane.tsx";
import { TextList } from "./text-list.tsx";
import { isNarrow, viewIn } from "./views.ts";

interface Desk {
  readonly library: Library;
  readonly texts: OwnTexts;
  readonly draft: Draft;
}

async function openDesk(lesson: string): Promise<Desk> {
  const [library, texts] = await Promise.all([
    loadLibrary(language()),
    openOwnTexts({ store: browserTextStore() }),
  ]);
  const { id, tooLong } = await firstText(texts, lesson);
  const startChecker = () => workerPort(() => new DraftCheckWorker());
  return { library, texts, draft: openDraft({ texts, library, startChecker, id, tooLong }) };
}

export function Author({ context }: { readonly context: Context }) {
  const desk = useSignal<Desk | null>(null);
  const line = useSignal(1);
  const listing = useSignal(false);
  const early = useRef<File[]>([]);
  useEffect(() => {
    let left = false;
    void openDesk(context.place.peek().lesson).then((opened) => {
      if (left) {
        opened.draft.release();
        return;
      }
      desk.value = opened;
      // What was dropped while the page opened.
      for (const file of early.current.splice(0)) void opened.draft.take(file);
    });
    return () => {
      left = true;
      forgetLibraries();
      desk.peek()?.draft.release();
    };
  }, []);
  const take = (file: File) => {
    if (desk.peek()) void desk.peek()?.draft.take(file);
    else early.current.push(file);
  };
  useEffect(() => takeDrops((files) => files.forEach(take)), []);
  if (!desk.value) return <p class="study-loading">{t("study.opening")}</p>;
  const { library, texts, draft } = desk.value;
  const view = viewIn(context.place.value.more.view, isNarrow.value);
  const own = draft.own.value;
  const startNew = () => newText(texts).then(draft.open);
  const home = writePlace({ ...AT_HOME, language: context.place.value.language });
  return (
    <StageView context={context} floor={13}>
      <div class="author" data-view={view}>
        <header class="top">
          <a class="wordmark" href={home} aria-label={t("bench.home")}>
            {t("name")}
          </a>
          <h1>{t("author.title")}</h1>
          <button
            type="button"
            onClick={() => {
              listing.value = true;
            }}
          >
            {t("author.ownCount", { count: texts.list.value.length })}
          </button>
          <LessonFilePicker label={t("author.pick")} onPick={take} />
          <select
            aria-label={t("author.from")}
            value=""
            onChange={(event) =>
              void copyOfKitLesson(texts, event.currentTarget.value).then((id) => id && draft.open(id))
            }
          >
            <option value="">{t("author.from")}</option>
            {library.lessons.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </header>
        <SourcePane
          {...{ context, draft, library, texts, view }}
          line={line.value}
          onLine={(at) => {
            line.value = at;
          }}
        />
        <div class="clear" data-clear />
        {draft.lesson.value && (
          <Preview
            session={context.session}
            library={library}
            lesson={draft.lesson.value}
            line={line.value}
          />
        )}
        <footer class="foot">
          <Transport moving={isMoving(context)} onTogglePause={() => togglePlay(context)} />
          <p class="caution-short">{t("caution.short")}</p>
        </footer>
        <Notes session={context.session} />
        {!texts.keeps.value && <p class="note author-not-kept">{t("author.notKept")}</p>}
        {listing.value && (
          <TextList
            texts={texts}
            open={own.id}
            onOpen={draft.open}
            onNew={startNew}
            onClose={() => {
              listing.value = false;
            }}
          />
        )}
      </div>
    </StageView>
  );
}
