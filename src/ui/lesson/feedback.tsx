/** What an answer brought: never "wrong" alone, always the reason, and the way to the picture that shows it. */
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Judgement } from "../../lesson/judge/questions.ts";
import { announce } from "../announce.tsx";
import { InlineView } from "./prose.tsx";
import type { Voice } from "./voice.ts";

export interface FeedbackProps {
  readonly judgement: Judgement;
  readonly voice: Voice;
  /** What was given, where it is no longer to be seen. */
  readonly given?: ComponentChildren;
  /** In place of whether the model does so. */
  readonly verdict?: ComponentChildren;
  /** What the model gives, where that is a number or an order. */
  readonly truth?: ComponentChildren;
  readonly onWhy: ((step: string) => void) | null;
}

export function Feedback({ judgement, voice, given, verdict, truth, onWhy }: FeedbackProps) {
  const element = useRef<HTMLDivElement>(null);
  useEffect(() => {
    announce(element.current?.textContent ?? "");
    element.current?.scrollIntoView({ block: "nearest" });
  }, [judgement]);
  const { right, because, show } = judgement;
  return (
    <div class={right ? "feedback fits" : "feedback differs"} ref={element}>
      {given && <p>{given}</p>}
      <p class="feedback-verdict">{verdict ?? t(right ? "lesson.fits" : "lesson.differs")}</p>
      <p>
        <InlineView words={because} voice={voice} />
      </p>
      {truth && <p>{truth}</p>}
      {!right && show && onWhy && (
        <button type="button" onClick={() => onWhy(show)}>
          {t("lesson.showWhy")}
        </button>
      )}
    </div>
  );
}
