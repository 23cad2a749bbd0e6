/** The answers and numbers as they were before the last change, once it has been answered. */
import type { Circulation } from "../../../sim/circulation/answer/answer.ts";
import { type Figure, figuresOf } from "../../../ui/figures.ts";
import type { Session } from "../session.ts";

/** One for each pane; null while there is nothing to compare with. */
function earlierAnswers({ before, chain }: Session): readonly (Circulation | null)[] | null {
  const earlier = before.value?.map(({ circulation }) => circulation) ?? null;
  const answered = chain.circulations.value[0] !== earlier?.[0] && !chain.solving.value;
  return answered ? earlier : null;
}

/** Of the first pane. */
export function earlierFigures(session: Session): readonly Figure[] | null {
  const [first] = earlierAnswers(session) ?? [];
  return first ? figuresOf(first) : null;
}
