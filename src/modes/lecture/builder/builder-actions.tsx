/** What can be done with a talk that is put together: begin it, keep it, open another, pass it on. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import type { Library } from "../../../lesson/library/library.ts";
import { announce } from "../../../ui/announce.tsx";
import { Confirm } from "../../../ui/confirm.tsx";
import { fileName } from "../../../ui/take-away/file-name.ts";
import { saveFile } from "../../../ui/take-away/save-file.ts";
import { linkTo } from "../../shared/address/address-sync.ts";
import { AT_HOME, type Place, writePlace } from "../../shared/address/place.ts";
import type { Context } from "../../shared/mode.ts";
import { heldFiles } from "../../shared/own/dropped-file.ts";
import { takeDrops } from "../../shared/own/take-drops.ts";
import { DeckActions } from "../deck/deck-actions.tsx";
import { writeTalkFile } from "../files/talk-file.ts";
import { ownIn } from "../talk/own-stops.ts";
import { beginAnew } from "../talk/talk-clock.ts";
import { addFiles } from "./own-stops-bar.tsx";
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
  const save = async () => {
    const talk = draft.talk();
    const name = fileName(`talk ${talk.plan.title}`, "", new Date(), "zip");
    saveFile(name, await writeTalkFile(talk));
  };
  const open = (file: File) => void draft.open(file);
  useEffect(() => {
    const take = (files: readonly File[]) => {
      const talk = files.find(({ name }) => /\.(zip|json)$/i.test(name));
      if (talk) open(talk);
      else if (files.length > 0) void addFiles(draft, files);
    };
    void draft.ready.then(() => take(heldFiles(() => true)));
    return takeDrops(take);
  }, [draft]);
  const { stops } = draft.plan.value;
  const left = ownIn(stops);
  const partly = useSignal(false);
  const copy = () => {
    // What is left out is said where the link opens, which is no stage.
    const link = left > 0 ? { ...start, step: "", more: draft.linkWords() } : start;
    partly.value = left > 0;
    return navigator.clipboard?.writeText(linkTo(link)).then(() => announce(t("lecture.copied")));
  };
  return (
    <>
      <div class="actions">
        {any && (
          <a class="button main" href={writePlace(start)} onClick={beginAnew}>
            {t("lecture.begin")}
          </a>
        )}
        <button type="button" onClick={save}>
          {t("lecture.save")}
        </button>
        <OpenFile onOpen={open} />
        {stops.some(({ kind }) => kind === "step") && (
          <button type="button" onClick={copy}>
            {t("lecture.copy")}
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
      {partly.value && left > 0 && (
        <div class="note" data-partly>
          <p>{t("lecture.link.partly", { count: left })}</p>
          <button type="button" onClick={save}>
            {t("lecture.save")}
          </button>
        </div>
      )}
      {draft.offered.value && (
        <Confirm
          title={t("lecture.replace")}
          what={t("lecture.replace.what", { count: draft.plan.value.stops.length })}
          no={t("lecture.replace.no")}
          yes={t("lecture.replace.yes")}
          onNo={draft.keepOwn}
          onYes={draft.takeOffered}
        />
      )}
      {any && (
        <DeckActions
          context={context}
          library={library}
          stops={draft.found.value}
          pictures={draft.pictures.value}
          title={draft.plan.value.title}
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
