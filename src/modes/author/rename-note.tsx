/** A lesson got another id: what named it can take the new one, once its author agrees. */
import { useSignal, useSignalEffect } from "@preact/signals";
import { language, t } from "../../i18n/index.ts";
import { lessonIdOf } from "../../lesson/lesson-id.ts";
import type { OwnTexts } from "../shared/own-texts.ts";
import type { Draft } from "./draft.ts";
import { isNamed, placesNaming, type RenamePlaces, renameEverywhere } from "./rename-places.ts";

interface Renaming {
  readonly old: string;
  readonly id: string;
  readonly places: RenamePlaces;
}

export function RenameNote({ texts, draft }: { readonly texts: OwnTexts; readonly draft: Draft }) {
  const { renaming, settle } = useRenaming(texts, draft);
  if (!renaming) return null;
  const { old, id, places } = renaming;
  return (
    <div class="note author-rename" role="status">
      <p>{t("author.rename", { old, places: namesOf(places) })}</p>
      <div class="actions">
        <button type="button" onClick={() => void renameEverywhere(texts, old, id).then(settle)}>
          {t("author.rename.follow")}
        </button>
        <button type="button" onClick={settle}>
          {t("author.rename.leave")}
        </button>
      </div>
    </div>
  );
}

/** What the open text was called when it was opened or last answered for, beside what it is called now; asked about once it is at rest. */
function useRenaming(texts: OwnTexts, draft: Draft) {
  const known = useSignal({ text: "", id: "" });
  const renaming = useSignal<Renaming | null>(null);
  useSignalEffect(() => {
    const { id: text, text: words } = draft.own.value;
    const id = lessonIdOf(words);
    const { text: before, id: old } = known.value;
    if (renaming.peek()?.id !== id) renaming.value = null;
    if (before !== text || old === "") known.value = { text, id };
    else if (id !== old && !draft.busy.value && !draft.taken.value && draft.lesson.value?.id === id)
      void placesNaming(texts, old).then((places) => {
        if (lessonIdOf(draft.own.peek().text) !== id) return;
        if (isNamed(places)) renaming.value = { old, id, places };
        else known.value = { text, id };
      });
  });
  const settle = () => {
    const { id: text, text: words } = draft.own.peek();
    renaming.value = null;
    known.value = { text, id: lessonIdOf(words) };
  };
  return { renaming: renaming.value, settle };
}

function namesOf({ stops, kiosk, record, lessons }: RenamePlaces): string {
  const names = [
    stops > 0 && `${t("home.lecture")} (${t("lecture.stops", { count: stops })})`,
    kiosk && t("home.kiosk"),
    record && t("study.record"),
    lessons > 0 && t("author.ownCount", { count: lessons }),
  ].filter((name) => name !== false);
  return new Intl.ListFormat(language(), { type: "conjunction" }).format(names);
}
