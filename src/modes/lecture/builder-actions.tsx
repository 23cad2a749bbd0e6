/** What can be done with a talk that is put together: begin it, keep it, open another, pass it on. */
import { useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { announce } from "../../ui/announce.tsx";
import { saveFile } from "../../ui/take-away/save-file.ts";
import { linkTo } from "../shared/address-sync.ts";
import type { Context } from "../shared/mode.ts";
import { AT_HOME, type Place, writePlace } from "../shared/place.ts";
import { writePlaylistFile } from "./playlist.ts";
import { saveStills } from "./stills.ts";
import type { TalkDraft } from "./talk-draft.ts";

export interface BuilderActionsProps {
  readonly context: Context;
  readonly draft: TalkDraft;
}

export function BuilderActions({ context, draft }: BuilderActionsProps) {
  const start: Place = {
    ...AT_HOME,
    mode: "lecture",
    language: context.place.value.language,
    step: "1",
    more: draft.words(),
  };
  const any = draft.found.value.length > 0;
  const stills = useStills(context, draft);
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
        {any && (
          <button type="button" data-item="stills" onClick={stills.toggle}>
            {t(stills.done === null ? "lecture.stills" : "take.clip.cancel")}
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            draft.stops.value = [];
          }}
        >
          {t("lecture.clear")}
        </button>
      </div>
      {stills.done !== null && (
        <p role="status">
          {t("lecture.stills.progress", { done: stills.done + 1, count: draft.found.value.length })}
        </p>
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

/** Pictures of the steps under way; `done`: how many there are, null while none are made. */
function useStills(context: Context, draft: TalkDraft) {
  const drawing = useSignal<{ readonly done: number; readonly cancel: AbortController } | null>(null);
  const begin = () => {
    const cancel = new AbortController();
    const follow = (done: number) => {
      drawing.value = { done, cancel };
    };
    follow(0);
    saveStills(context, draft.found.value, follow, cancel.signal)
      .catch((reason: unknown) => announce(t("take.failed", { reason: String(reason) })))
      .finally(() => {
        drawing.value = null;
      });
  };
  return {
    done: drawing.value?.done ?? null,
    toggle: () => (drawing.value ? drawing.value.cancel.abort() : begin()),
  };
}
