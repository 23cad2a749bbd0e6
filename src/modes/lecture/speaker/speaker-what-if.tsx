/** A what-if in the speaker's window: the answer stays in view beside the controls, and goes on stage when it is sent. */
import { useComputed } from "@preact/signals";
import { t } from "../../../i18n/index.ts";
import { writeAddress } from "../../../state/address.ts";
import { figuresOf } from "../../../ui/figures.ts";
import { ParameterForm } from "../../../ui/parameter-form.tsx";
import { Readouts } from "../../../ui/readout.tsx";
import { figuresThatMatter } from "../../shared/lesson/figures-that-matter.ts";
import type { Session } from "../../shared/session.ts";
import { RoomFigures } from "../room/room-figures.tsx";
import type { ScriptRun } from "../talk/script-run.ts";
import { coversStage, stepShown } from "../talk/stops.ts";
import type { WhatIf } from "../talk/what-if.ts";
import { Changes } from "../talk/what-if-words.tsx";

export interface SpeakerWhatIfProps {
  readonly session: Session;
  readonly script: ScriptRun;
  /** null while the scene is the script's */
  readonly whatIf: WhatIf | null;
  readonly onSend: (state: string) => void;
  readonly onScript: () => void;
}

export const SpeakerWhatIf = (props: SpeakerWhatIfProps) => (
  <section class="speaker-what-if" aria-label={t("lecture.whatIf")}>
    {coversStage(props.script.stop.value) ? (
      // The model still stands at the last scene: its numbers are no answer here.
      <p class="speaker-answer">{t("lecture.noScene")}</p>
    ) : (
      <Answered {...props} />
    )}
  </section>
);

function Answered({ session, script, whatIf, onSend, onScript }: SpeakerWhatIfProps) {
  const step = stepShown(script.stop.value);
  const large = useComputed(() =>
    figuresThatMatter(stepShown(script.stop.value), session.scene.value, session.chain.circulations.value),
  );
  const further = useComputed(() =>
    figuresOf(session.chain.circulations.value[0] ?? null).filter(({ name }) =>
      large.value.every((each) => each.name !== name),
    ),
  );
  const before = whatIf?.before ?? null;
  const [first] = before ?? [];
  return (
    <>
      <div class="speaker-answer">
        <h2>{t("lecture.answer")}</h2>
        <RoomFigures
          scene={session.scene.value.scene}
          figures={large.value}
          earlier={before && figuresThatMatter(step, session.scene.value, before)}
        />
        <Readouts figures={further.value} earlier={first ? figuresOf(first) : null} />
        <Changes whatIf={whatIf} request={session.scene.value.request} />
        <div class="actions">
          <button type="button" class="main" onClick={() => onSend(writeAddress(session.scene.value))}>
            {t("lecture.send")}
          </button>
          <button type="button" onClick={onScript}>
            {t("lecture.script")}
          </button>
        </div>
      </div>
      <div class="speaker-form">
        <ParameterForm editing={session} />
      </div>
    </>
  );
}
