/** A control to set until the model does what was asked. */

import { t } from "../../i18n/index.ts";
import type { GoalQuestion } from "../../lesson/lesson.ts";
import { present } from "../../sim/checked/present.ts";
import { findParameter, settingOf } from "../../sim/parameters/parameters.ts";
import type { Editing } from "../editing.ts";
import { ParameterControl } from "../parameter-control.tsx";
import { InlineView } from "./prose.tsx";
import type { Voice } from "./voice.ts";

export interface AnswerGoalProps {
  readonly question: GoalQuestion;
  readonly voice: Voice;
  readonly editing: Editing;
  readonly onAnswer: (value: number) => void;
}

export function AnswerGoal({ question, voice, editing, onAnswer }: AnswerGoalProps) {
  const parameter = present(findParameter(question.control));
  return (
    <div class="goal">
      <p>
        <InlineView words={question.ask} voice={voice} />
      </p>
      <ParameterControl parameter={parameter} editing={editing} />
      <button
        type="button"
        class="main"
        onClick={() => onAnswer(Number(settingOf(editing.scene.peek().request, parameter)))}
      >
        {t("lesson.thisIsIt")}
      </button>
    </div>
  );
}
