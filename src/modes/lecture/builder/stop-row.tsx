/** One stop of a talk in the making: its picture and name, what the speaker adds, and its place in the order. */
import { useSignal } from "@preact/signals";
import { t } from "../../../i18n/index.ts";
import type { Lesson } from "../../../lesson/lesson.ts";
import type { Context } from "../../shared/mode.ts";
import { ScenePicture } from "../picture/scene-picture.tsx";
import {
  MAX_NOTES,
  MAX_TITLE,
  MAX_WORDS,
  personAt,
  pictureOf,
  STOP_MINUTES,
  type Stop,
} from "../talk/own-stops.ts";
import { sceneOfStop } from "../talk/stop-state.ts";
import { findStops, nameOfStop } from "../talk/stops.ts";
import { OwnPersonFields } from "./own-person-fields.tsx";
import { changed } from "./stop-keys.ts";
import { StopThumb } from "./stop-thumb.tsx";
import type { TalkDraft } from "./talk-draft.ts";

/** px */
const THUMB = [480, 270] as const;
/** ms: lists are scrolled through, and a person's values are being set */
const THUMB_AFTER = 1500;

interface OneStop {
  readonly draft: TalkDraft;
  readonly lessons: readonly Lesson[];
  readonly stop: Stop;
  readonly index: number;
}

export interface StopRowProps extends OneStop {
  readonly context: Context;
  /** Being dragged. */
  readonly held: boolean;
  /** CSS px away from its place while a row is dragged. */
  readonly shift: number;
  readonly onMove: (to: number) => void;
}

/** What a stop is called in the list. */
export function titleOf(stop: Stop, lessons: readonly Lesson[]): string {
  const [found] = findStops([stop], lessons).found;
  const own = stop.kind === "step" ? `${stop.lesson}#${stop.step}` : "";
  return (found ? nameOfStop(found) : own) || t(`lecture.kind.${stop.kind}`);
}

export function StopRow({ context, held, shift, onMove, ...row }: StopRowProps) {
  const { draft, lessons, stop, index } = row;
  const open = useSignal(false);
  const [found] = findStops([stop], lessons).found;
  const title = titleOf(stop, lessons);
  const scene = found && !pictureOf(stop) ? sceneOfStop(found) : null;
  const { setStops } = draft;
  const act = (name: string, sign: string, run: () => void) => (
    <button
      type="button"
      aria-label={t(`lecture.${name}`, { title })}
      onClick={({ currentTarget }) => {
        run();
        // A row that is put elsewhere in the page loses the focus, and the next press is for it.
        requestAnimationFrame(() => currentTarget.isConnected && currentTarget.focus());
      }}
    >
      <span aria-hidden="true">{sign}</span>
    </button>
  );
  return (
    <li
      data-kind={stop.kind}
      class={held ? "held" : ""}
      style={shift ? { transform: `translateY(${shift}px)` } : {}}
    >
      <div class="stop-line" data-line>
        <span class="stop-grip" data-grip aria-hidden="true" />
        {scene ? (
          <ScenePicture {...{ context, scene }} size={THUMB} after={THUMB_AFTER} />
        ) : (
          <StopThumb stop={stop} pictures={draft.pictures.value} />
        )}
        <button
          type="button"
          class="stop-name"
          aria-expanded={open.value}
          onClick={() => {
            open.value = !open.value;
          }}
        >
          {title}
          <span class="quiet-text">
            {found?.kind === "step" ? found.found.lesson.title : t(`lecture.kind.${stop.kind}`)}
          </span>
        </button>
        {act("up", "↑", () => onMove(index - 1))}
        {act("down", "↓", () => onMove(index + 1))}
        {act("duplicate", "+", () => setStops(null, (stops) => stops.toSpliced(index, 0, { ...stop })))}
        {act("remove", "×", () => setStops(null, (stops) => stops.toSpliced(index, 1)))}
      </div>
      {open.value && <StopFields {...row} />}
    </li>
  );
}

function StopFields({ draft, lessons, stop, index }: OneStop) {
  const [found] = findStops(["person" in stop ? { ...stop, person: null } : stop], lessons).found;
  const scene = found && sceneOfStop(found);
  const set = (change: Partial<Stop>) =>
    draft.setStops(`${index} ${Object.keys(change)}`, (stops) => stops.with(index, changed(stop, change)));
  return (
    <div class="stop-fields">
      {stop.kind !== "step" && (
        <label class="field">
          {t("lecture.stopTitle")}
          <input
            type="text"
            maxLength={MAX_TITLE}
            value={stop.title}
            onInput={(event) => set({ title: event.currentTarget.value })}
          />
        </label>
      )}
      {"words" in stop && (
        <label class="field">
          {t("lecture.stopWords")}
          <textarea
            rows={2}
            maxLength={MAX_WORDS}
            value={stop.words}
            onInput={(event) => set({ words: event.currentTarget.value })}
          />
        </label>
      )}
      <label class="field">
        {t("lecture.ownNotes")}
        <textarea
          rows={3}
          maxLength={MAX_NOTES}
          value={stop.notes}
          onInput={(event) => set({ notes: event.currentTarget.value })}
        />
      </label>
      <label class="field">
        {t("lecture.ownMinutes")}
        <input
          type="number"
          {...STOP_MINUTES}
          step={0.5}
          value={stop.minutes ?? ""}
          onChange={(event) => {
            const wanted = event.currentTarget.valueAsNumber;
            const { min, max } = STOP_MINUTES;
            set({ minutes: Number.isNaN(wanted) ? null : Math.min(max, Math.max(min, wanted)) });
          }}
        />
      </label>
      {scene && (
        <OwnPersonFields scene={scene} person={personAt(stop)} onChange={(person) => set({ person })} />
      )}
    </div>
  );
}
