/** The lesson and its steps to open, and what is done with a whole step: added, moved, doubled, taken out. */
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { addStep, duplicateStep, moveStep, removeStep } from "../../../lesson/edit/lesson-edit.ts";
import { newId } from "../../../lesson/read/new-id.ts";
import { useDesk } from "./desk.ts";
import type { TextHistory } from "./text-history.ts";

export interface StepNavProps {
  readonly history: TextHistory;
  readonly onOpen: (step: number) => void;
  readonly onUndo: () => void;
  readonly onRedo: () => void;
}

export function StepNav({ history, onOpen, onUndo, onRedo }: StepNavProps) {
  const { text, outline, step: at, faults, write } = useDesk();
  const { steps } = outline;
  const ids = steps.map(({ id }) => id);
  const names = [t("author.form.lesson"), ...steps.map(({ title }, index) => nameOf(title, index))];
  const act = (key: string, on: boolean, run: () => void) => (
    <button key={key} type="button" aria-disabled={!on} onClick={() => on && run()}>
      {t(`author.form.${key}`)}
    </button>
  );
  const isStep = at >= 0;
  const list = useRef<HTMLOListElement>(null);
  // On a narrow screen the steps stand in one row.
  useEffect(() => {
    const open = list.current?.children[at + 1];
    if (open instanceof HTMLElement)
      list.current?.scrollTo({ left: open.offsetLeft - list.current.offsetLeft });
  }, [at]);
  return (
    <nav class="form-nav" aria-label={t("author.form.steps")}>
      <ol class="plain-list" ref={list}>
        {names.map((name, index) => {
          const count = faults.filter(({ step }) => step === index - 1).length;
          return (
            <li key={index}>
              <button
                type="button"
                aria-current={index - 1 === at ? "step" : undefined}
                onClick={() => onOpen(index - 1)}
              >
                {name}
                {count > 0 && <span class="form-count">{t("author.form.faults", { count })}</span>}
              </button>
            </li>
          );
        })}
      </ol>
      <div class="actions">
        {act("add", true, () => write(addStep(text, at, "", newId("step", ids)), "", at + 1))}
        {act("up", at > 0, () => write(moveStep(text, at, at - 1), "", at - 1))}
        {act("down", isStep && at < steps.length - 1, () => write(moveStep(text, at, at + 1), "", at + 1))}
        {act("double", isStep, () => write(duplicateStep(text, at, newId(ids[at] ?? "", ids)), "", at + 1))}
        {act("takeAway", isStep, () => write(removeStep(text, at), "", Math.min(at, steps.length - 2)))}
        <button type="button" aria-disabled={!history.canUndo.value} onClick={onUndo}>
          {t("bench.undo")}
        </button>
        <button type="button" aria-disabled={!history.canRedo.value} onClick={onRedo}>
          {t("bench.redo")}
        </button>
      </div>
    </nav>
  );
}

const nameOf = (title: string, index: number): string =>
  t("author.form.stepAt", { number: index + 1, title: title || t("author.form.untitled") });
