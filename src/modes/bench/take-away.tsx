/** What a person takes along: link, still, clip, table, page for families. */
import { useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { announce } from "../../ui/announce.tsx";
import { Choice } from "../../ui/choice.tsx";
import { Panel } from "../../ui/panel.tsx";
import { clipType } from "../../ui/take-away/clip.ts";
import { saveFile } from "../../ui/take-away/save-file.ts";
import { writeTable } from "../../ui/take-away/state-table.ts";
import { AT_HOME, writePlace } from "../shared/address/place.ts";
import { stateLink } from "../shared/address/state-link.ts";
import { HandoutView } from "../shared/handout/handout-view.tsx";
import type { Context } from "../shared/mode.ts";
import { saveClip, saveDrawing, saveStill } from "../shared/stage/stills-and-clips.ts";

const ADDED = "lecture.addedToTalk";
const HEIGHTS = ["720", "1080", "2160"] as const;

export function TakeAway({ context, onClose }: { readonly context: Context; readonly onClose: () => void }) {
  const { session } = context;
  const link = stateLink(context);
  const field = useRef<HTMLInputElement>(null);
  /** What became of the last press; a message by its key, which a state put into the talk leads on from. */
  const said = useSignal<{ readonly message: string; readonly text: string } | null>(null);
  const height = useSignal<(typeof HEIGHTS)[number]>("1080");
  const handing = useSignal(false);
  const recording = useSignal<{ readonly share: number; readonly cancel: AbortController } | null>(null);
  const say = (message: string, values?: Readonly<Record<string, string>>) => {
    const text = t(message, values);
    said.value = { message, text };
    announce(text);
  };
  const attempt = (work: () => Promise<unknown>, done: string) => {
    work().then(
      () => say(done),
      (reason: unknown) => say("take.failed", { reason: String(reason) }),
    );
  };
  const copy = () => {
    field.current?.select();
    navigator.clipboard?.writeText(link).then(
      () => say("take.copied"),
      () => say("take.copyByHand"),
    );
  };
  const addToTalk = () =>
    attempt(async () => (await import("../lecture/builder/add-to-talk.ts")).addBenchToTalk(context), ADDED);
  const table = () => {
    const circulation = session.chain.circulations.value[0];
    if (!circulation) return;
    const text = writeTable({ circulation, link, date: new Date().toISOString() });
    saveFile("lungward.csv", text, "text/csv");
  };
  const clip = () => {
    const cancel = new AbortController();
    recording.value = { share: 0, cancel };
    const follow = (share: number) => {
      recording.value = { share, cancel };
    };
    attempt(
      () =>
        saveClip(context, follow, cancel.signal).finally(() => {
          recording.value = null;
        }),
      "take.clip.saved",
    );
  };
  const close = () => {
    handing.value = false;
  };
  if (handing.value) return <HandoutView context={context} onClose={close} />;
  return (
    <Panel title={t("bench.take")} onClose={onClose}>
      <label>
        {t("take.link")}
        <input class="link-field" ref={field} type="text" readOnly value={link} data-link />
      </label>
      <div class="actions">
        <button type="button" onClick={copy}>
          {t("take.copy")}
        </button>
        <button type="button" data-item="talk" onClick={addToTalk}>
          {t("lecture.addToTalk")}
        </button>
        <button type="button" data-item="table" onClick={table}>
          {t("take.table")}
        </button>
        <button
          type="button"
          data-item="handout"
          onClick={() => {
            handing.value = true;
          }}
        >
          {t("take.handout")}
        </button>
      </div>
      <Choice
        label={t("take.size")}
        value={height.value}
        words={HEIGHTS}
        nameOf={(word) => t(`take.size.${word}`)}
        onChoose={(word) => {
          height.value = word;
        }}
      />
      <div class="actions">
        <button
          type="button"
          data-item="still"
          onClick={() => attempt(() => saveStill(context, Number(height.value)), "take.saved")}
        >
          {t("take.still")}
        </button>
        <button
          type="button"
          data-item="drawing"
          onClick={() => attempt(() => saveDrawing(context), "take.saved")}
        >
          {t("take.drawing")}
        </button>
        {recording.value ? (
          <button type="button" onClick={() => recording.value?.cancel.abort()}>
            {t("take.clip.cancel")}
          </button>
        ) : (
          <button
            type="button"
            data-item="clip"
            aria-disabled={!clipType()}
            onClick={() => clipType() && clip()}
          >
            {t("take.clip")}
          </button>
        )}
      </div>
      {!clipType() && <p>{t("take.clip.impossible")}</p>}
      {recording.value && (
        <p>{t("take.clip.progress", { percent: Math.round(100 * recording.value.share) })}</p>
      )}
      {said.value && <Said {...said.value} language={context.place.value.language} />}
    </Panel>
  );
}

/** What became of a press; from a state put into the talk the way leads to the talk. */
const Said = ({
  message,
  text,
  language,
}: {
  readonly message: string;
  readonly text: string;
  readonly language: string;
}) => (
  <>
    <p>{text}</p>
    {message === ADDED && (
      <a class="button" href={writePlace({ ...AT_HOME, mode: "lecture", language })}>
        {t("lecture.build")}
      </a>
    )}
  </>
);
