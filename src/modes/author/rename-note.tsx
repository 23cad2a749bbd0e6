/** A lesson got another id: what named it can take the new one, once its author agrees. */
import { useSignal, useSignalEffect } from "@preact/signals";
import { language, t } from "../../i18n/index.ts";
import type { Library } from "../../lesson/library/library.ts";
import { lessonIdOf } from "../../lesson/read/lesson-id.ts";
import { messageOf } from "../../sim/checked/message-of.ts";
import { MAX_LENGTH, type OwnTexts } from "../shared/own/own-texts.ts";
import type { Draft } from "./draft.ts";
import { isNamed, placesNaming, type RenamePlaces, renameEverywhere } from "./rename-places.ts";

interface Renaming {
  readonly old: string;
  readonly id: string;
  readonly places: RenamePlaces;
  /** why it was not changed everywhere */
  readonly failed?: string;
}

interface RenameNoteProps {
  readonly texts: OwnTexts;
  readonly library: Pick<Library, "lessons" | "own">;
  readonly draft: Draft;
}

export function RenameNote(props: RenameNoteProps) {
  const { renaming, follow, settle } = useRenaming(props);
  if (!renaming) return null;
  const { old, places, failed } = renaming;
  return (
    <div class="note author-rename" role="status">
      <p>{t("author.rename", { old, places: namesOf(places) })}</p>
      {failed && <p>{t("author.rename.failed", { reason: failed })}</p>}
      <div class="actions">
        <button type="button" onClick={follow}>
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
function useRenaming({ texts, library, draft }: RenameNoteProps) {
  const known = useSignal({ text: "", id: "" });
  const renaming = useSignal<Renaming | null>(null);
  useSignalEffect(() => {
    const { id: text, text: words } = draft.own.value;
    const id = lessonIdOf(words);
    const { text: before, id: old } = known.value;
    if (renaming.peek()?.id !== id) renaming.value = null;
    if (before !== text || old === "") known.value = { text, id };
    else if (id !== old && !draft.busy.value && !draft.taken.value && draft.lesson.value?.id === id)
      void placesNaming({ texts, library }, old).then((places) => {
        if (lessonIdOf(draft.own.peek().text) !== id) return;
        if (isNamed(places)) renaming.value = { ...renaming.peek(), old, id, places };
        else known.value = { text, id };
      });
  });
  const settle = () => {
    const { id: text, text: words } = draft.own.peek();
    renaming.value = null;
    known.value = { text, id: lessonIdOf(words) };
  };
  const follow = async () => {
    const asked = renaming.peek();
    if (!asked) return;
    const reason = await renameEverywhere({ texts, library }, asked.old, asked.id).then(
      (left) =>
        left.length === 0 ? null : t("author.rename.tooLong", { lessons: listOf(left), most: MAX_LENGTH }),
      messageOf,
    );
    // Another text, or another id, meanwhile.
    const now = renaming.peek();
    if (now?.old !== asked.old || now.id !== asked.id) return;
    if (reason === null) settle();
    else renaming.value = { ...now, failed: reason };
  };
  return { renaming: renaming.value, follow, settle };
}

function namesOf({ stops, kiosk, record, lessons }: RenamePlaces): string {
  const names = [
    stops > 0 && `${t("home.lecture")} (${t("lecture.stops", { count: stops })})`,
    kiosk && t("home.kiosk"),
    record && t("study.record"),
    lessons > 0 && t("author.ownCount", { count: lessons }),
  ].filter((name) => name !== false);
  return listOf(names);
}

const listOf = (names: readonly string[]): string =>
  new Intl.ListFormat(language(), { type: "conjunction" }).format(names);
