/** The organiser's page: what the kiosk offers, how patient it is, how large its words are, its counts and its errors. */
import { useSignal } from "@preact/signals";
import { LANGUAGES, languageName, t } from "../../i18n/index.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import { VERSION } from "../../ui/app-version.ts";
import { Switch } from "../../ui/choice.tsx";
import { Confirm } from "../../ui/confirm.tsx";
import { Slider } from "../../ui/slider.tsx";
import { saveFile } from "../../ui/take-away/save-file.ts";
import { CodeField } from "./code-field.tsx";
import { countsTable, eraseCounts, readCounts } from "./counts.ts";
import { errorLog } from "./error-log.ts";
import { useLeaveWhenQuiet } from "./leave-when-quiet.ts";
import { DEFAULTS, LIMITS, MAX_CONTACT, offeredOf, organiser, setOrganiser } from "./organiser-settings.ts";
import { SettingsFile } from "./settings-file.tsx";

export interface OrganiserProps {
  readonly lessons: readonly Lesson[];
  readonly onClose: () => void;
  /** Out of the kiosk, to the start page. */
  readonly onExit: () => void;
}

const CM_PER_INCH = 2.54;
const UNITS = { idle: "s", diagonal: "inch", distance: "mm" } as const;

export function Organiser({ lessons, onClose, onExit }: OrganiserProps) {
  const settings = organiser.value;
  useLeaveWhenQuiet(onClose);
  const counts = useSignal(readCounts());
  const erasing = useSignal(false);
  const toggle = (list: readonly string[], all: readonly string[], item: string, on: boolean) => {
    const present = offeredOf(all, list);
    const next = on ? [...present, item] : present.filter((each) => each !== item);
    // None chosen would leave an empty kiosk: that stands for all.
    return next.length === all.length ? [] : next;
  };
  const number = (name: keyof typeof LIMITS) => (
    <Slider
      key={name}
      label={t(`organiser.${name}`)}
      value={settings[name]}
      {...LIMITS[name]}
      unit={UNITS[name]}
      changed={settings[name] !== DEFAULTS[name]}
      onChange={(value) => setOrganiser({ [name]: value })}
      onSettle={() => {}}
      onReset={() => setOrganiser({ [name]: DEFAULTS[name] })}
    />
  );
  const ids = lessons.map(({ id }) => id);
  return (
    <main class="page-sheet organiser">
      <h1>{t("organiser.title")}</h1>
      <div class="organiser-columns">
        <section>
          {number("idle")}
          {number("diagonal")}
          {number("distance")}
          <p class="quiet-text">{t("organiser.inCm", { cm: Math.round(CM_PER_INCH * settings.diagonal) })}</p>
          <label class="field">
            {t("organiser.contact")}
            <input
              type="text"
              maxLength={MAX_CONTACT}
              value={settings.contact}
              onChange={(event) => setOrganiser({ contact: event.currentTarget.value })}
            />
          </label>
          <CodeField />
          <h2>{t("organiser.settings")}</h2>
          <SettingsFile />
        </section>
        <section>
          <h2>{t("organiser.languages")}</h2>
          {LANGUAGES.map((tag) => (
            <Switch
              key={tag}
              label={languageName(tag)}
              on={offeredOf(LANGUAGES, settings.languages).includes(tag)}
              onChange={(on) => setOrganiser({ languages: toggle(settings.languages, LANGUAGES, tag, on) })}
            />
          ))}
          <h2>{t("organiser.lessons")}</h2>
          {lessons.map(({ id, title }) => (
            <Switch
              key={id}
              label={title}
              on={offeredOf(ids, settings.lessons).includes(id)}
              onChange={(on) => setOrganiser({ lessons: toggle(settings.lessons, ids, id, on) })}
            />
          ))}
        </section>
        <section>
          <h2>{t("organiser.counts")}</h2>
          <Switch
            label={t("organiser.counting")}
            on={settings.counting}
            onChange={(counting) => setOrganiser({ counting })}
          />
          <p class="quiet-text">{t("organiser.counting.what")}</p>
          <table>
            <thead>
              <tr>
                <th scope="col">{t("organiser.day")}</th>
                <th scope="col">{t("organiser.lesson")}</th>
                <th scope="col">{t("organiser.times")}</th>
              </tr>
            </thead>
            <tbody>
              {Object.entries(counts.value).flatMap(([day, each]) =>
                Object.entries(each).map(([lesson, times]) => (
                  <tr key={day + lesson}>
                    <th scope="row">{day}</th>
                    <td>{lessonTitle(lesson, lessons)}</td>
                    <td>{times}</td>
                  </tr>
                )),
              )}
            </tbody>
          </table>
          <div class="actions">
            <button
              type="button"
              onClick={() =>
                saveFile(
                  "lungward-counts.csv",
                  countsTable(counts.value, (lesson) => lessonTitle(lesson, lessons)),
                  "text/csv",
                )
              }
            >
              {t("organiser.export")}
            </button>
            <button
              type="button"
              onClick={() => {
                erasing.value = true;
              }}
            >
              {t("organiser.erase")}
            </button>
          </div>
          <h2>{t("organiser.errorLog")}</h2>
          {errorLog.value.length === 0 && <p>{t("organiser.noErrors")}</p>}
          <ul>
            {errorLog.value.map(({ at, what }) => (
              <li key={at}>{t("organiser.loggedError", { at, what })}</li>
            ))}
          </ul>
          <p class="quiet-text">{t("help.version", { version: VERSION })}</p>
        </section>
      </div>
      <div class="actions">
        <button type="button" class="main" onClick={onClose}>
          {t("organiser.done")}
        </button>
        <button type="button" onClick={onExit}>
          {t("organiser.exit")}
        </button>
      </div>
      {erasing.value && (
        <Confirm
          title={t("organiser.erase.title")}
          what={t("organiser.erase.what")}
          no={t("organiser.erase.no")}
          yes={t("organiser.erase.yes")}
          onNo={() => {
            erasing.value = false;
          }}
          onYes={() => {
            eraseCounts();
            counts.value = {};
            erasing.value = false;
          }}
        />
      )}
    </main>
  );
}

/** As it is called now; an id whose lesson is gone stays an id. */
const lessonTitle = (counted: string, lessons: readonly Lesson[]): string => {
  const [id, ...rest] = counted.split(" ");
  return [lessons.find((lesson) => lesson.id === id)?.title ?? id, ...rest].join(" ");
};
