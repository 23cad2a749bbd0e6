/** Own lessons taken in by the one who studies: a file picked or dropped, kept on this device. */

import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { inSight } from "../../ui/fault-note.tsx";
import { followDrops } from "../shared/own/dropped-file.ts";
import { LessonFilePicker } from "../shared/own/lesson-file-picker.tsx";
import { addOwnFile } from "../shared/own/own-lessons.ts";
import { MAX_KILOBYTES } from "../shared/own/own-texts.ts";
import { isOfRecord } from "./record-section.tsx";

export function OwnLessons({ authorHref }: { readonly authorHref: string }) {
  const said = useSignal("");
  const take = async (files: readonly File[]) => {
    const sentences: string[] = [];
    for (const file of files)
      sentences.push(
        t((await addOwnFile(file)) ? "study.own.added" : "study.own.refused", {
          name: inSight(file.name),
          most: MAX_KILOBYTES,
        }),
      );
    said.value = sentences.join(" ");
  };
  const status = useRef<HTMLParagraphElement>(null);
  useEffect(() => followDrops((file) => !isOfRecord(file), take, status), []);
  return (
    <section aria-labelledby="own-lessons">
      <h2 id="own-lessons">{t("study.own")}</h2>
      <p>{t("study.own.what")}</p>
      <div class="actions">
        <LessonFilePicker label={t("study.own.add")} onPick={(file) => void take([file])} />
        <a class="button" href={authorHref}>
          {t("study.own.write")}
        </a>
      </div>
      <p role="status" ref={status}>
        {said.value}
      </p>
    </section>
  );
}
