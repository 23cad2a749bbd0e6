/** Writing a lesson: its text beside the stage on which it runs; faults as one types. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { language, t } from "../../i18n/index.ts";
import { type Library, lessonText, loadLibrary } from "../../lesson/library.ts";
import { Confirm } from "../../ui/confirm.tsx";
import { Transport } from "../../ui/transport.tsx";
import type { Context } from "../shared/mode.ts";
import { Notes } from "../shared/notes.tsx";
import { AT_HOME, writePlace } from "../shared/place.ts";
import { isMoving, togglePlay } from "../shared/play.ts";
import { StageView } from "../shared/stage-view.tsx";
import { type Draft, openDraft } from "./draft.ts";
import { FaultList } from "./fault-list.tsx";
import { Preview } from "./preview.tsx";
import { SourceText, type SourceTextHandle } from "./source-text.tsx";

/** A kit lesson, to begin from when nothing is kept and none is asked for. */
const FIRST_EXAMPLE = "04-energy-loss";

export function Author({ context }: { readonly context: Context }) {
  const desk = useSignal<{ readonly library: Library; readonly draft: Draft } | null>(null);
  const line = useSignal(1);
  const source = useRef<SourceTextHandle>(null);
  useEffect(() => {
    const { lesson } = context.place.peek();
    void Promise.all([loadLibrary(language()), lessonText(lesson || FIRST_EXAMPLE)]).then(
      ([library, text]) => {
        const draft = openDraft(library, text ?? "");
        if (lesson && text) draft.offer(text);
        desk.value = { library, draft };
      },
    );
  }, []);
  const take = (file: File | undefined) => file && void desk.peek()?.draft.take(file);
  useEffect(() => takeDrops(take), []);
  if (!desk.value) return <p class="study-loading">{t("study.opening")}</p>;
  const { library, draft } = desk.value;
  const home = writePlace({ ...AT_HOME, language: context.place.value.language });
  return (
    <StageView context={context} floor={13}>
      <div class="author">
        <header class="top">
          <a class="wordmark" href={home} aria-label={t("bench.home")}>
            {t("name")}
          </a>
          <h1>{t("author.title")}</h1>
          <label class="button">
            {t("author.pick")}
            <input
              class="unseen"
              type="file"
              accept=".md,text/markdown,text/plain"
              onChange={(event) => {
                take(event.currentTarget.files?.[0]);
                // Else the same file could not be picked again after "keep my text".
                event.currentTarget.value = "";
              }}
            />
          </label>
          <select
            aria-label={t("author.from")}
            value=""
            onChange={(event) =>
              void lessonText(event.currentTarget.value).then((text) => text && draft.offer(text))
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
        <section class="author-source" aria-label={t("author.text")}>
          <SourceText
            ref={source}
            text={draft.text.value}
            faulty={draft.faults.value.map(({ path }) => Number(path.split(":").pop()))}
            onText={draft.write}
            onLine={(at) => {
              line.value = at;
            }}
          />
          <FaultList faults={draft.faults.value} onGo={(at) => source.current?.goTo(at)} />
        </section>
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
        {draft.offered.value !== null && (
          <Confirm
            title={t("author.replace.title")}
            what={t("author.replace.what")}
            no={t("author.replace.no")}
            yes={t("author.replace.yes")}
            onNo={() => draft.answer(false)}
            onYes={() => draft.answer(true)}
          />
        )}
      </div>
    </StageView>
  );
}

/** A file dropped anywhere on the page; without this the browser would leave the page and show the file. */
function takeDrops(take: (file: File | undefined) => void): () => void {
  const hold = (event: DragEvent) => event.preventDefault();
  const drop = (event: DragEvent) => {
    event.preventDefault();
    take(event.dataTransfer?.files[0]);
  };
  addEventListener("dragover", hold);
  addEventListener("drop", drop);
  return () => {
    removeEventListener("dragover", hold);
    removeEventListener("drop", drop);
  };
}
