/** The speaker's own stops for a talk: pictures, pages of a PDF, a title, an end; and the way back from a change. */
import { signal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import type { Fault } from "../../../sim/faults.ts";
import { announce } from "../../../ui/announce.tsx";
import type { Taken } from "../files/take-pictures.ts";
import { wordsStop } from "../talk/own-stops.ts";
import { MAX_STOPS } from "../talk/playlist.ts";
import type { TalkDraft } from "./talk-draft.ts";

/** Pages of a PDF drawn so far. */
const drawing = signal<{ readonly page: number; readonly of: number } | null>(null);

/** What each file brings, in the files' order. */
export async function addFiles(draft: TalkDraft, files: readonly File[]): Promise<void> {
  const { takePictures } = await import("../files/take-pictures.ts");
  const faults: Fault[] = [];
  for (const file of files) {
    const room = MAX_STOPS - draft.plan.peek().stops.length;
    const taken = await takePictures(file, room, (page, of) => {
      drawing.value = { page, of };
    }).catch((reason: unknown) => unreadable(file, reason));
    draft.addPictures(taken.pictures);
    faults.push(...taken.faults);
  }
  drawing.value = null;
  draft.report(faults);
  announce(t("lecture.stops", { count: draft.plan.peek().stops.length }));
}

/** Moved or deleted since it was chosen. */
const unreadable = ({ name }: File, reason: unknown): Taken => ({
  pictures: [],
  faults: [{ path: name, found: String(reason), allowed: "a file that can be read" }],
});

export function OwnStops({ draft }: { readonly draft: TalkDraft }) {
  const field = useRef<HTMLInputElement>(null);
  const press = (label: string, run: () => void, disabled = false) => (
    <button type="button" disabled={disabled} onClick={run}>
      {t(label)}
    </button>
  );
  const { setStops } = draft;
  const title = () =>
    setStops(null, (stops) => [
      wordsStop("title", draft.plan.peek().title || t("lecture.kind.title")),
      ...stops,
    ]);
  const end = () => setStops(null, (stops) => [...stops, wordsStop("end", t("lecture.thanks"))]);
  return (
    <>
      <div class="actions">
        {press("lecture.addTitle", title)}
        {press("lecture.addPictures", () => field.current?.click())}
        {press("lecture.addEnd", end)}
        {press("bench.undo", draft.undo, !draft.canUndo.value)}
        {press("bench.redo", draft.redo, !draft.canRedo.value)}
      </div>
      <input
        class="unseen"
        ref={field}
        type="file"
        multiple
        accept="image/png,image/jpeg,image/svg+xml,image/webp,application/pdf"
        tabIndex={-1}
        aria-label={t("lecture.addPictures")}
        onChange={() => {
          void addFiles(draft, [...(field.current?.files ?? [])]);
          if (field.current) field.current.value = "";
        }}
      />
      {drawing.value && <p role="status">{t("lecture.drawingPage", { ...drawing.value })}</p>}
    </>
  );
}
