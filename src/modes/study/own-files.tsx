/** Own lessons taken in by the one who studies: a file picked or dropped, kept on this device. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { heldFile } from "../shared/dropped-file.ts";
import { LessonFilePicker } from "../shared/lesson-file-picker.tsx";
import { addOwnFile } from "../shared/own-lessons.ts";
import { MAX_LENGTH } from "../shared/own-texts.ts";
import { takeDrops } from "../shared/take-drops.ts";

export function OwnLessons({ authorHref }: { readonly authorHref: string }) {
  const said = useSignal("");
  const take = (file: File | undefined) =>
    file &&
    void addOwnFile(file).then((added) => {
      const most = Math.round(MAX_LENGTH / 1000);
      said.value = t(added ? "study.own.added" : "study.own.refused", { name: file.name, most });
    });
  const status = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    const held = heldFile();
    take(held);
    if (held) status.current?.scrollIntoView({ block: "center" });
    return takeDrops(take);
  }, []);
  return (
    <section aria-labelledby="own-lessons">
      <h2 id="own-lessons">{t("study.own")}</h2>
      <p>{t("study.own.what")}</p>
      <div class="actions">
        <LessonFilePicker label={t("study.own.add")} onPick={take} />
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
