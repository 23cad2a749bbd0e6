/** The lesson's text as fields, for those who never wrote one: each field shows and changes its own lines, and nothing is kept beside the text. */
import { useSignal } from "@preact/signals";
import { useEffect, useMemo, useRef } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { fieldOfFault } from "../../../lesson/edit/field-of-fault.ts";
import { outlineOf } from "../../../lesson/edit/text-outline.ts";
import { readLeniently } from "../../../lesson/edit/yaml-edit.ts";
import type { Library } from "../../../lesson/library/library.ts";
import type { LessonFigure } from "../../../lesson/own/own-figures.ts";
import type { Fault } from "../../../sim/faults.ts";
import type { Session } from "../../shared/session.ts";
import { AdjustScene } from "./adjust-scene.tsx";
import { DeskContext, type FormDesk, faultsIn } from "./desk.ts";
import "./form.css";
import { LessonFields } from "./lesson-fields.tsx";
import { StepFields } from "./step-fields.tsx";
import { StepNav } from "./step-nav.tsx";
import type { TextHistory } from "./text-history.ts";

export interface LessonFormProps {
  readonly history: TextHistory;
  readonly text: string;
  readonly faults: readonly Fault[];
  readonly library: Library;
  readonly session: Session;
  /** The line (1-based) on which one works, the same as the text's cursor. */
  readonly line: number;
  readonly onLine: (line: number) => void;
  readonly onText: (text: string) => void;
  readonly figures: readonly LessonFigure[];
  readonly onFigures: (figures: readonly LessonFigure[]) => void;
}

/** Brings the field of a fault into view, once its step is open. */
export function goToField(text: string, fault: Fault): void {
  const { field } = fieldOfFault(outlineOf(text), fault);
  setTimeout(() => {
    const fields = [...document.querySelectorAll<HTMLElement>(".lesson-form [data-field]")];
    // The field itself, else the one that it is within or that is within it.
    const near =
      fields.find(({ dataset: { field: name = "" } }) => name === field) ??
      fields.find(
        ({ dataset: { field: name = "" } }) => name.startsWith(`${field}.`) || field.startsWith(`${name}.`),
      );
    (near ?? document.querySelector<HTMLElement>(".lesson-form"))?.focus();
  });
}

export function LessonForm(props: LessonFormProps) {
  const { history, text, faults, library, session, line, onLine, onText, figures, onFigures } = props;
  const latest = useRef(text);
  latest.current = text;
  useEffect(() => {
    history.meet(text);
    return () => history.leave(latest.current);
  }, [history]);
  const adjusting = useSignal(false);
  const outline = useMemo(() => outlineOf(text), [text]);
  const placed = useMemo(() => faultsIn(text, faults), [text, faults]);
  const step = outline.steps.findLastIndex(({ from }) => from < line);
  const show = (next: string, index: number) => {
    onText(next);
    onLine((outlineOf(next).steps[index]?.from ?? 0) + 1);
  };
  const desk: FormDesk = {
    text,
    outline,
    library,
    figures,
    setFigures: onFigures,
    faults: placed,
    step,
    write(next, what, at = step) {
      if (next === null || next === text) return;
      history.remember(text, what);
      show(next, at);
    },
  };
  const go = (to: string | null) => to !== null && show(to, step);
  return (
    <DeskContext.Provider value={desk}>
      <div class="lesson-form" tabIndex={-1}>
        {adjusting.value && step >= 0 ? (
          <AdjustScene
            session={session}
            onClose={() => {
              adjusting.value = false;
            }}
          />
        ) : (
          <>
            <StepNav
              history={history}
              onOpen={(index) => onLine((outline.steps[index]?.from ?? 0) + 1)}
              onUndo={() => go(history.undo(text))}
              onRedo={() => go(history.redo(text))}
            />
            {unreadable(desk) && (
              <p class="note" role="status">
                {t("author.form.unreadable")}
              </p>
            )}
            {step < 0 ? (
              <LessonFields />
            ) : (
              <StepFields
                key={step}
                onAdjust={() => {
                  adjusting.value = true;
                }}
              />
            )}
          </>
        )}
      </div>
    </DeskContext.Provider>
  );
}

/** Settings that the form can neither show nor change. */
function unreadable({ outline, step }: FormDesk): boolean {
  const { front, steps, lines } = outline;
  const { scene, question } = steps[step]?.blocks ?? {};
  return [step < 0 ? front : null, scene, question].some(
    (place) => place && readLeniently(lines.slice(place.from, place.to).join("\n")) === null,
  );
}
