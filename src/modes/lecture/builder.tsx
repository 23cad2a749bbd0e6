/** Puts a talk together: steps chosen from lessons, their order, the time; kept as a file or as a link. */
import { useComputed, useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Library } from "../../lesson/library.ts";
import type { Fault } from "../../sim/faults.ts";
import { announce } from "../../ui/announce.tsx";
import { FaultNote } from "../../ui/fault-note.tsx";
import { Slider } from "../../ui/slider.tsx";
import { saveFile } from "../../ui/take-away/save-file.ts";
import type { Context } from "../shared/mode.ts";
import { AT_HOME, writePlace } from "../shared/place.ts";
import { LessonPicker } from "./lesson-picker.tsx";
import {
  MINUTES,
  readPlaylistFile,
  readStops,
  type Stop,
  writePlaylistFile,
  writeStops,
} from "./playlist.ts";
import { saveStills } from "./stills.ts";
import { findStops, secondsOf } from "./stops.ts";

/** min: a usual slot */
const USUAL_MINUTES = 20;

export function Builder({ context, library }: { readonly context: Context; readonly library: Library }) {
  const { place } = context;
  const { list = "", minutes: asked, title: named = "" } = place.peek().more;
  const stops = useSignal<readonly Stop[]>(readStops(list));
  const minutes = useSignal(Number(asked) || USUAL_MINUTES);
  const title = useSignal(named);
  const faults = useSignal<readonly Fault[]>([]);
  const drawing = useSignal<{ readonly done: number; readonly cancel: AbortController } | null>(null);
  const file = useRef<HTMLInputElement>(null);
  const found = useComputed(() => findStops(stops.value, library.lessons).found);
  const there = (step: string) =>
    writePlace({
      ...AT_HOME,
      mode: "lecture",
      language: place.value.language,
      step,
      more: { list: writeStops(stops.value), minutes: String(minutes.value), title: title.value },
    });
  const add = (more: readonly Stop[]) => {
    stops.value = [...stops.value, ...more];
    announce(t("lecture.steps", { count: stops.value.length }));
  };
  const move = (from: number, to: number) => {
    if (to < 0 || to >= stops.value.length) return;
    const next = [...stops.value];
    next.splice(to, 0, ...next.splice(from, 1));
    stops.value = next;
  };
  const open = async () => {
    const [chosen] = file.current?.files ?? [];
    if (!chosen) return;
    const read = readPlaylistFile(await chosen.slice(0, 200_000).text());
    const dropped = read.playlist ? findStops(read.playlist.stops, library.lessons).dropped : [];
    faults.value = [...read.faults, ...dropped];
    if (!read.playlist) return;
    stops.value = read.playlist.stops;
    minutes.value = read.playlist.minutes;
    title.value = read.playlist.title;
  };
  const stills = () => {
    const cancel = new AbortController();
    drawing.value = { done: 0, cancel };
    saveStills(
      context,
      found.value,
      (done) => {
        drawing.value = { done, cancel };
      },
      cancel.signal,
    )
      .catch((reason: unknown) => announce(t("take.failed", { reason: String(reason) })))
      .finally(() => {
        drawing.value = null;
      });
  };
  const minute = (count: number) => t("lecture.minute", { count: Math.round(count) });
  const { min, max } = MINUTES;
  return (
    <div class="page-sheet builder">
      <header class="page-head">
        <a class="wordmark" href={writePlace({ ...AT_HOME, language: place.value.language })}>
          {t("name")}
        </a>
      </header>
      <main class="builder-columns">
        <section>
          <h1>{t("lecture.build")}</h1>
          <p class="quiet-text">{t("lecture.build.help")}</p>
          <h2>{t("lecture.lessons")}</h2>
          <LessonPicker lessons={library.lessons} language={place.value.language} onAdd={add} />
        </section>
        <section class="builder-list" aria-labelledby="talk">
          <h2 id="talk">{t("lecture.list")}</h2>
          {found.value.length === 0 && <p>{t("lecture.list.empty")}</p>}
          <ol>
            {found.value.map(({ lesson, step }, index) => (
              // A step may come twice: its place is what tells it apart.
              <li key={index}>
                <span>
                  {step.title}
                  <span class="quiet-text">{lesson.title}</span>
                </span>
                <button
                  type="button"
                  aria-label={t("lecture.up", { title: step.title })}
                  onClick={() => move(index, index - 1)}
                >
                  <span aria-hidden="true">↑</span>
                </button>
                <button
                  type="button"
                  aria-label={t("lecture.down", { title: step.title })}
                  onClick={() => move(index, index + 1)}
                >
                  <span aria-hidden="true">↓</span>
                </button>
                <button
                  type="button"
                  aria-label={t("lecture.remove", { title: step.title })}
                  onClick={() => {
                    stops.value = stops.value.filter((_, each) => each !== index);
                  }}
                >
                  <span aria-hidden="true">×</span>
                </button>
              </li>
            ))}
          </ol>
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
          <label class="field">
            {t("lecture.name")}
            <input
              type="text"
              maxLength={120}
              value={title}
              onInput={(event) => {
                title.value = event.currentTarget.value;
              }}
            />
          </label>
          {faults.value.length > 0 && <FaultNote title={t("lecture.fileFault")} faults={faults.value} />}
          <div class="actions">
            {found.value.length > 0 && (
              <a class="button main" href={there("1")}>
                {t("lecture.begin")}
              </a>
            )}
            <button
              type="button"
              onClick={() =>
                saveFile(
                  "lungward-talk.json",
                  writePlaylistFile({ title: title.value, minutes: minutes.value, stops: stops.value }),
                  "application/json",
                )
              }
            >
              {t("lecture.save")}
            </button>
            <button type="button" onClick={() => file.current?.click()}>
              {t("lecture.open")}
            </button>
            <input
              class="unseen"
              ref={file}
              type="file"
              accept="application/json,.json"
              tabIndex={-1}
              aria-label={t("lecture.open")}
              onChange={open}
            />
            <button
              type="button"
              onClick={() =>
                navigator.clipboard
                  ?.writeText(new URL(there("1"), location.href).href)
                  .then(() => announce(t("lecture.copied")))
              }
            >
              {t("lecture.copy")}
            </button>
            {found.value.length > 0 && (
              <button
                type="button"
                data-item="stills"
                onClick={() => (drawing.value ? drawing.value.cancel.abort() : stills())}
              >
                {t(drawing.value ? "take.clip.cancel" : "lecture.stills")}
              </button>
            )}
            <button
              type="button"
              onClick={() => {
                stops.value = [];
              }}
            >
              {t("lecture.clear")}
            </button>
          </div>
          {drawing.value && (
            <p role="status">
              {t("lecture.stills.progress", { done: drawing.value.done + 1, count: found.value.length })}
            </p>
          )}
        </section>
      </main>
    </div>
  );
}
