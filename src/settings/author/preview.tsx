/** The lesson as a learner has it, at the step in which the cursor stands; claims that the model does not bear out are told. */
import { useEffect, useMemo } from "preact/hooks";
import { judgeClaim } from "../../lesson/claims.ts";
import type { Lesson, Step } from "../../lesson/lesson.ts";
import type { Situation } from "../../lesson/outputs.ts";
import { inlinesOf } from "../../lesson/prose.ts";
import type { Shelf } from "../../lesson/shelf.ts";
import { t } from "../../words/index.ts";
import { runLesson } from "../lesson/lesson-run.ts";
import type { Session } from "../session.ts";
import { LessonWords } from "../study/lesson-words.tsx";

/** An author sees one reader's places, the same at each keystroke. */
const ANY_READER = 0;

export interface PreviewProps {
  readonly session: Session;
  readonly shelf: Shelf;
  readonly lesson: Lesson;
  /** The cursor's line in the lesson's text. */
  readonly line: number;
}

export function Preview({ session, shelf, lesson, line }: PreviewProps) {
  const at = [...lesson.steps].reverse().find((step) => step.line <= line)?.id;
  const run = useMemo(
    () =>
      runLesson(session, lesson, {
        alone: false,
        reader: ANY_READER,
        at,
        lessons: [...shelf.lessons, lesson],
      }),
    [session, lesson],
  );
  useEffect(() => run.release, [run]);
  useEffect(() => {
    if (at !== undefined) run.send({ kind: "go", step: at });
  }, [run, at]);
  const broken = brokenClaims(lesson.steps[run.shown.value]!, run.situation.value);
  return (
    <div class="author-preview">
      {broken.map((claim) => (
        <p class="note" key={claim}>
          {t("author.claim", { claim })}
        </p>
      ))}
      <LessonWords run={run} shelf={shelf} session={session} homeHref="" takesFocus={false} />
    </div>
  );
}

/** As written; those whose answer is still under way are not counted. */
function brokenClaims(step: Step, situation: Situation): readonly string[] {
  const parts = [step.plain, step.technical, step.notes, step.caution];
  return parts
    .flatMap((part) => (part ? [...inlinesOf(part.prose)] : []))
    .flatMap((node) => (node.kind === "claim" ? node.claims : []))
    .filter((claim) => judgeClaim(claim, situation).holds === false)
    .map(({ written }) => written);
}
