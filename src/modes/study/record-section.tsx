/** "My record": to hand in, to take to another device, to check, to erase. */

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Progress } from "../../lesson/progress/progress.ts";
import { LONGEST_PROGRESS_FILE, readProgressFile } from "../../lesson/progress/progress-file.ts";
import { takeProgress } from "../../lesson/progress/progress-merge.ts";
import { Confirm } from "../../ui/confirm.tsx";
import { inSight } from "../../ui/fault-note.tsx";
import { followDrops } from "../shared/own/dropped-file.ts";
import { FilePicker } from "../shared/own/file-picker.tsx";
import { scoreOfAll } from "./kept-progress.ts";
import { saveProgress, saveRecord } from "./learner-record.ts";
import { checkRecord } from "./record-checksum.ts";
import type { StudyProps } from "./study-props.ts";

/** characters */
const LONGEST_NAME = 80;

const isRecordPage = ({ name }: File): boolean => /\.html?$/i.test(name);

/** By its name: the progress or the record that the kit saves. */
export const isOfRecord = (file: File): boolean => isRecordPage(file) || /\.json$/i.test(file.name);

export function RecordSection({ context, library, kept }: StudyProps) {
  const erasing = useSignal(false);
  const name = useSignal("");
  const offered = useSignal<{ readonly progress: Progress; readonly date: string } | null>(null);
  const said = useSignal("");
  const progress = kept.progress.value;
  const take = async (file: File) => {
    const read = readProgressFile(await textOf(file));
    offered.value = read.progress ? read : null;
    said.value = read.progress
      ? ""
      : t("study.load.refused", { name: inSight(file.name), fault: read.fault });
  };
  const check = async (file: File) => {
    said.value = t(`study.check.${checkRecord(await textOf(file))}`, { name: inSight(file.name) });
  };
  const status = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (kept.voice !== "device") return;
    const takeFirst = ([file]: readonly File[]) =>
      file ? (isRecordPage(file) ? check(file) : take(file)) : Promise.resolve();
    return followDrops(isOfRecord, takeFirst, status);
  }, []);
  return (
    <section aria-labelledby="record">
      <h2 id="record">{t("study.record")}</h2>
      <p>{t("lesson.score", { ...scoreOfAll(progress) })}</p>
      <p class="quiet-text">{t(`study.kept.${kept.keeps.value ? kept.voice : "lost"}`)}</p>
      <label class="record-name">
        {t("study.record.name")}
        <input
          type="text"
          maxLength={LONGEST_NAME}
          autocomplete="off"
          aria-describedby="record-name-for"
          value={name}
          onInput={(event) => {
            name.value = event.currentTarget.value;
          }}
        />
      </label>
      <p class="quiet-text" id="record-name-for">
        {t("study.record.name.for")}
      </p>
      <div class="actions">
        <button
          type="button"
          onClick={() => void saveRecord(context.session.chain, progress, library.lessons, name.peek())}
        >
          {t("study.save")}
        </button>
        <button type="button" onClick={() => saveProgress(progress)}>
          {t("study.saveData")}
        </button>
        {kept.voice === "device" && (
          <FilePicker label={t("study.load")} accept=".json,application/json" onPick={take} />
        )}
        <FilePicker label={t("study.check")} accept=".html,text/html" onPick={check} />
        {kept.erase && (
          <button
            type="button"
            onClick={() => {
              erasing.value = true;
            }}
          >
            {t("study.erase")}
          </button>
        )}
      </div>
      <p role="status" ref={status}>
        {said.value}
      </p>
      {offered.value && (
        <Confirm
          title={t("study.load.title")}
          what={t("study.load.what", summaryOf(offered.value))}
          no={t("study.load.no")}
          yes={t("study.load.yes")}
          onNo={() => {
            offered.value = null;
          }}
          onYes={() => {
            if (offered.value) kept.keep(takeProgress(progress, offered.value.progress), "", library.lessons);
            offered.value = null;
            said.value = t("study.load.done");
          }}
        />
      )}
      {erasing.value && (
        <Confirm
          title={t("study.erase.title")}
          what={t("study.erase.what")}
          no={t("study.erase.no")}
          yes={t("study.erase.yes")}
          onNo={() => {
            erasing.value = false;
          }}
          onYes={() => {
            kept.erase?.();
            erasing.value = false;
          }}
        />
      )}
    </section>
  );
}

const summaryOf = ({ progress, date }: { readonly progress: Progress; readonly date: string }) => ({
  date: date.slice(0, 10) || "–",
  lessons: Object.keys(progress.lessons).length,
  answers: Object.values(progress.lessons).reduce((sum, { answers }) => sum + Object.keys(answers).length, 0),
});

/** One too large is no file of ours: its beginning is enough to say so. */
const textOf = (file: File): Promise<string> =>
  file
    .slice(0, 4 * LONGEST_PROGRESS_FILE)
    .text()
    .catch(() => "");
