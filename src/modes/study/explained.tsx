/** After the run: what was predicted, what the model did and why, and the learner's own words about it. */
import { useId } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { predictionFor, stepAt } from "../../lesson/player.ts";
import { Feedback } from "../../ui/lesson/feedback.tsx";
import { InlineView } from "../../ui/lesson/prose.tsx";
import { verdictOf } from "../../ui/lesson/question-view.tsx";
import type { Voice } from "../../ui/lesson/voice.ts";
import type { LessonRun } from "../shared/lesson/lesson-run.ts";

export function Explained({ run, voice }: { readonly run: LessonRun; readonly voice: Voice }) {
  const id = useId();
  const player = run.player.value;
  const prediction = predictionFor(run.lesson, stepAt(run.lesson, player));
  const attempt = prediction && player.answers[prediction.id];
  if (!attempt || !player.judgement || prediction.question?.kind !== "predict") return null;
  const said = prediction.question.answers.find((answer) => answer.id === attempt.given);
  return (
    <>
      <Feedback
        judgement={player.judgement}
        voice={voice}
        verdict={verdictOf(prediction.question, player.judgement)}
        given={
          said && (
            <>
              {t("lesson.youSaid")}{" "}
              <strong>
                <InlineView words={said.say} voice={voice} />
              </strong>
            </>
          )
        }
        onWhy={
          player.judgement.show === stepAt(run.lesson, player).id
            ? null
            : (step) => run.send({ kind: "why", step })
        }
      />
      <div class="surprise">
        <label for={id}>{t("lesson.surprise")}</label>
        <textarea
          id={id}
          rows={2}
          maxLength={500}
          value={attempt.note ?? ""}
          aria-describedby={`${id}-for`}
          onInput={(event) =>
            run.send({ kind: "note", question: prediction.id, text: event.currentTarget.value })
          }
        />
        <p class="quiet-text" id={`${id}-for`}>
          {t("lesson.surprise.for")}
        </p>
      </div>
    </>
  );
}
