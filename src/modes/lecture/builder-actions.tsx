/** What can be done with a talk that is put together: begin it, keep it, open another, pass it on. */
import { useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Library } from "../../lesson/library.ts";
import { announce } from "../../ui/announce.tsx";
import { saveFile } from "../../ui/take-away/save-file.ts";
import { linkTo } from "../shared/address-sync.ts";
import type { Context } from "../shared/mode.ts";
import { AT_HOME, type Place, writePlace } from "../shared/place.ts";
import { DeckActions } from "./deck/deck-actions.tsx";
import { writePlaylistFile } from "./playlist.ts";
import type { TalkDraft } from "./talk-draft.ts";

export interface BuilderActionsProps {
  readonly context: Context;
  readonly library: Library;
  readonly draft: TalkDraft;
}

export function BuilderActions({ context, library, draft }: BuilderActionsProps) {
  const start: Place = {
    ...AT_HOME,
    mode: "lecture",
    language: context.place.value.language,
    step: "1",
    more: draft.words(),
  };
  const any = draft.found.value.length > 0;
  const save = () => saveFile("lungward-talk.json", writePlaylistFile(draft.playlist()), "application/json");
  const copy = () => navigator.clipboard?.writeText(linkTo(start)).then(() => announce(t("lecture.copied")));
  return (
    <>
      <div class="actions">
        {any && (
          <a class="button main" href={writePlace(start)}>
            {t("lecture.begin")}
          </a>
        )}
        <button type="button" onClick={save}>
          {t("lecture.save")}
        </button>
        <OpenFile onOpen={draft.open} />
        <button type="button" onClick={copy}>
          {t("lecture.copy")}
        </button>
        <button
          type="button"
          onClick={() => {
            draft.stops.value = [];
          }}
        >
          {t("lecture.clear")}
        </button>
      </div>
      {any && (
        <DeckActions
          context={context}
          library={library}
          stops={draft.found.value}
          title={draft.title.value}
        />
      )}
    </>
  );
}

function OpenFile({ onOpen }: { readonly onOpen: (file: File) => void }) {
  const field = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => field.current?.click()}>
        {t("lecture.open")}
      </button>
      <input
        class="unseen"
        ref={field}
        type="file"
        accept="application/json,.json"
        tabIndex={-1}
        aria-label={t("lecture.open")}
        onChange={() => {
          const [chosen] = field.current?.files ?? [];
          if (chosen) onOpen(chosen);
        }}
      />
    </>
  );
}
