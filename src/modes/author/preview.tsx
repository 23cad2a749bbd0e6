/** The lesson as a learner has it, at the step in which the cursor stands; claims that the model does not bear out are reported. */
import { useEffect, useMemo } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Lesson, Step } from "../../lesson/lesson.ts";
import type { Library } from "../../lesson/library/library.ts";
import { judgeClaim } from "../../lesson/model/claims.ts";
import type { Situation } from "../../lesson/model/figure-paths.ts";
import { withOwnWords } from "../../lesson/own/own-keys.ts";
import { inlinesOf } from "../../lesson/prose.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { runLesson } from "../shared/lesson/lesson-run.ts";
import type { Session } from "../shared/session.ts";
import { LessonWords } from "../study/lesson-words.tsx";

/** An author sees one reader's places, the same at each keystroke. */
const ANY_READER = 0;

export interface PreviewProps {
  readonly session: Session;
  readonly library: Library;
  readonly lesson: Lesson;
  /** The cursor's line in the lesson's text. */
  readonly line: number;
}

export function Preview({ session, library, lesson, line }: PreviewProps) {
  const at = [...lesson.steps].reverse().find((step) => step.line <= line)?.id;
  const run = useMemo(
    () =>
      runLesson(session, lesson, {
        alone: false,
        reader: ANY_READER,
        at,
        lessons: [...library.lessons, lesson],
      }),
    [session, lesson],
  );
  useEffect(() => run.release, [run]);
  useEffect(() => {
    if (at !== undefined) run.send({ kind: "go", step: at });
  }, [run, at]);
  const broken = brokenClaims(entryAt(lesson.steps, run.shown.value), run.situation.value);
  return (
    <div class="author-preview">
      {broken.map((claim) => (
        <p class="note" key={claim}>
          {t("author.claim", { claim })}
        </p>
      ))}
      <LessonWords
        run={run}
        library={withOwnWords(library, [lesson])}
        session={session}
        homeHref=""
        takesFocus={false}
      />
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
