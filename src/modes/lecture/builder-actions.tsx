/** What can be done with a talk that is put together: begin it, keep it, open another, pass it on. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { announce } from "../../ui/announce.tsx";
import { Confirm } from "../../ui/confirm.tsx";
import { saveFile } from "../../ui/take-away/save-file.ts";
import { linkTo } from "../shared/address-sync.ts";
import type { Context } from "../shared/mode.ts";
import { AT_HOME, type Place, writePlace } from "../shared/place.ts";
import { takeDrops } from "../shared/take-drops.ts";
import { fitsInLink } from "./own-stops.ts";
import { addFiles } from "./own-stops-bar.tsx";
import { saveStills } from "./stills.ts";
import type { TalkDraft } from "./talk-draft.ts";
import { writeTalkFile } from "./talk-file.ts";

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
  const save = async () => saveFile("lungward-talk.zip", await writeTalkFile(draft.talk()));
  const asked = useSignal<File | null>(null);
  const open = (file: File) => {
    if (draft.plan.peek().stops.length > 0) asked.value = file;
    else void draft.open(file);
  };
  useEffect(
    () =>
      takeDrops(
        (file) => file && (/\.(zip|json)$/i.test(file.name) ? open(file) : void addFiles(draft, [file])),
      ),
    [draft],
  );
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
        <OpenFile onOpen={open} />
        {fitsInLink(draft.plan.value.stops) && (
          <button type="button" onClick={copy}>
            {t("lecture.copy")}
          </button>
        )}
        {any && (
          <button type="button" data-item="stills" onClick={stills.toggle}>
            {t(stills.done === null ? "lecture.stills" : "take.clip.cancel")}
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            draft.setStops(null, () => []);
          }}
        >
          {t("lecture.clear")}
        </button>
      </div>
      {asked.value && (
        <Confirm
          title={t("lecture.replace")}
          what={t("lecture.replace.what", { count: draft.plan.value.stops.length })}
          no={t("lecture.replace.no")}
          yes={t("lecture.replace.yes")}
          onNo={() => {
            asked.value = null;
          }}
          onYes={() => {
            if (asked.value) void draft.open(asked.value);
            asked.value = null;
          }}
        />
      )}
      {stills.done !== null && (
        <p role="status">
          {t("lecture.stills.progress", { done: stills.done + 1, count: stepsOf(draft).length })}
        </p>
      )}
    </>
  );
}

const stepsOf = (draft: TalkDraft) =>
  draft.found.value.flatMap((stop) => (stop.kind === "step" ? [stop] : []));

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
        accept="application/zip,.zip,application/json,.json"
        tabIndex={-1}
        aria-label={t("lecture.open")}
        onChange={() => {
          const [chosen] = field.current?.files ?? [];
          if (chosen) onOpen(chosen);
          if (field.current) field.current.value = "";
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
    saveStills(context, stepsOf(draft), follow, cancel.signal)
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
