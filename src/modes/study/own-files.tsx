/** Own lessons taken in by the one who studies: a file picked or dropped, kept on this device. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { addOwnFile } from "../shared/own-lessons.ts";
import { takeDrops } from "../shared/take-drops.ts";

export function OwnLessons({ authorHref }: { readonly authorHref: string }) {
  const said = useSignal("");
  const take = (file: File | undefined) =>
    file &&
    void addOwnFile(file).then((added) => {
      said.value = t(added ? "study.own.added" : "study.own.refused", { name: file.name });
    });
  useEffect(() => takeDrops(take), []);
  return (
    <section aria-labelledby="own-lessons">
      <h2 id="own-lessons">{t("study.own")}</h2>
      <p>{t("study.own.what")}</p>
      <div class="actions">
        <label class="button">
          {t("study.own.add")}
          <input
            class="unseen"
            type="file"
            accept=".md,text/markdown,text/plain"
            onChange={(event) => {
              take(event.currentTarget.files?.[0]);
              event.currentTarget.value = "";
            }}
          />
        </label>
        <a class="button" href={authorHref}>
          {t("study.own.write")}
        </a>
      </div>
      <p role="status">{said.value}</p>
    </section>
  );
}
