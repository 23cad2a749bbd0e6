/** What every field of the form reads and writes: one text, of which each field shows and changes its own lines. */
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import { type FieldPlace, fieldOfFault } from "../../../lesson/edit/field-of-fault.ts";
import { type Outline, outlineOf } from "../../../lesson/edit/text-outline.ts";
import type { Library } from "../../../lesson/library/library.ts";
import type { LessonFigure } from "../../../lesson/own/own-figures.ts";
import { present } from "../../../sim/checked/present.ts";
import type { Fault } from "../../../sim/faults.ts";

export interface FormDesk {
  readonly text: string;
  readonly outline: Outline;
  readonly library: Library;
  readonly figures: readonly LessonFigure[];
  setFigures(figures: readonly LessonFigure[]): void;
  readonly faults: readonly (FieldPlace & { readonly fault: Fault })[];
  /** Index of the step that is open; -1: the lesson as a whole. */
  readonly step: number;
  /** The text after an edit; null where it could not be made. `what` names it for undo, `step` opens another one. */
  write(text: string | null, what: string, step?: number): void;
}

export const DeskContext = createContext<FormDesk | null>(null);
export const useDesk = (): FormDesk => present(useContext(DeskContext));

export function faultsIn(text: string, faults: readonly Fault[]): FormDesk["faults"] {
  const outline = outlineOf(text);
  return faults.map((fault) => ({ ...fieldOfFault(outline, fault), fault }));
}

/** Faults of the open step's field; with `within`, of all fields that begin with it. */
export function faultsOf(desk: FormDesk, field: string, within = false): readonly Fault[] {
  return desk.faults
    .filter(({ step }) => step === desk.step)
    .filter((each) => each.field === field || (within && each.field.startsWith(`${field}.`)))
    .map(({ fault }) => fault);
}
