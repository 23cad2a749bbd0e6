/** The organiser's page: what the kiosk offers, how patient it is, how large its words are, its counts and its errors. */
import { useSignal } from "@preact/signals";
import { LANGUAGES, languageName, t } from "../../i18n/index.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import { VERSION } from "../../ui/app-version.ts";
import { Switch } from "../../ui/choice.tsx";
import { Confirm } from "../../ui/confirm.tsx";
import { Slider } from "../../ui/slider.tsx";
import { saveFile } from "../../ui/take-away/save-file.ts";
import { countsTable, eraseCounts, readCounts } from "./counts.ts";
import { errorLog } from "./error-log.ts";
import { DEFAULTS, LIMITS, organiser, setOrganiser } from "./organiser-settings.ts";

export interface OrganiserProps {
  readonly lessons: readonly Lesson[];
  readonly onClose: () => void;
}

const UNITS = { idle: "s", diagonal: "inch", distance: "mm" } as const;

export function Organiser({ lessons, onClose }: OrganiserProps) {
  const settings = organiser.value;
  const counts = useSignal(readCounts());
  const erasing = useSignal(false);
  const toggle = (list: readonly string[], all: readonly string[], item: string, on: boolean) => {
    const present = list.length === 0 ? all : list;
    const next = on ? [...present, item] : present.filter((each) => each !== item);
    // None chosen would leave an empty kiosk: that stands for all.
    return next.length === all.length ? [] : next;
  };
  const offered = (list: readonly string[], item: string) => list.length === 0 || list.includes(item);
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
          <label class="field">
            {t("organiser.newCode")}
            <input
              type="text"
              inputMode="numeric"
              pattern="\d{4,8}"
              value={settings.code}
              onChange={(event) => setOrganiser({ code: event.currentTarget.value })}
            />
          </label>
        </section>
        <section>
          <h2>{t("organiser.languages")}</h2>
          {LANGUAGES.map((tag) => (
            <Switch
              key={tag}
              label={languageName(tag)}
              on={offered(settings.languages, tag)}
              onChange={(on) => setOrganiser({ languages: toggle(settings.languages, LANGUAGES, tag, on) })}
            />
          ))}
          <h2>{t("organiser.lessons")}</h2>
          {lessons.map(({ id, title }) => (
            <Switch
              key={id}
              label={title}
              on={offered(settings.lessons, id)}
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
                    <td>{lesson}</td>
                    <td>{times}</td>
                  </tr>
                )),
              )}
            </tbody>
          </table>
          <div class="actions">
            <button
              type="button"
              onClick={() => saveFile("lungward-counts.csv", countsTable(counts.value), "text/csv")}
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
      <button type="button" class="main" onClick={onClose}>
        {t("organiser.done")}
      </button>
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
