/** A talk for a deck of one's own: slides, pages to print, pictures with their words; one at a time, with a way to stop. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import type { Library } from "../../../lesson/library/library.ts";
import { announce } from "../../../ui/announce.tsx";
import type { Context } from "../../shared/mode.ts";
import type { Pictures } from "../talk/own-stops.ts";
import type { FoundStop } from "../talk/stops.ts";
import { DECK_KINDS, type DeckKind, exportDeck } from "./export-deck.ts";

export interface DeckActionsProps {
  readonly context: Context;
  readonly library: Library;
  readonly stops: readonly FoundStop[];
  readonly pictures: Pictures;
  readonly title: string;
}

const LABEL: Readonly<Record<DeckKind, string>> = {
  pptx: "lecture.deck.pptx",
  pdf: "lecture.deck.pdf",
  stills: "lecture.stills",
};

export function DeckActions({ stops, ...props }: DeckActionsProps) {
  const making = useSignal<{ readonly done: number; readonly cancel: AbortController } | null>(null);
  useEffect(() => () => making.peek()?.cancel.abort(), [making]);
  const begin = (kind: DeckKind) => {
    const cancel = new AbortController();
    const onProgress = (done: number) => {
      making.value = { done, cancel };
    };
    onProgress(0);
    exportDeck(kind, { ...props, stops, onProgress, cancel: cancel.signal })
      .catch((reason: unknown) => announce(t("take.failed", { reason: String(reason) })))
      .finally(() => {
        if (cancel.signal.aborted) announce(t("lecture.deck.cancelled"));
        making.value = null;
      });
  };
  const now = making.value;
  return (
    <div data-deck>
      <p class="quiet-text">{t("lecture.deck.help")}</p>
      {now ? (
        <div class="actions">
          <p role="status">{t("lecture.stills.progress", { done: now.done + 1, count: stops.length })}</p>
          <button type="button" data-item="cancel" onClick={() => now.cancel.abort()}>
            {t("take.clip.cancel")}
          </button>
        </div>
      ) : (
        <div class="actions">
          {DECK_KINDS.map((kind) => (
            <button key={kind} type="button" data-item={kind} onClick={() => begin(kind)}>
              {t(LABEL[kind])}
            </button>
          ))}
        </div>
      )}
    </div>
  );
}
