/** The numbers next to every scene, as one list: name, value, unit and origin of each. */
import type { TabulatedLoss } from "../chain/tabulated.ts";
import type { Circulation } from "../sim/circulation/answer.ts";
import { energyBudget } from "../sim/flow-field/energy-book.ts";
import type { FieldReadings } from "../sim/flow-field/flow-field.ts";
import { lowerVeinDrop } from "../sim/flow-field/pressure-drop.ts";
import { hasPathway } from "../sim/parameters/request.ts";

type FigureSource = "model" | "handbook" | "field" | "table";

export interface Figure {
  /** Its name in words is the message `figure.<name>`. */
  readonly name: string;
  /** In `unit`; null while it is not known. */
  readonly value: number | null;
  readonly unit: string;
  readonly digits: number;
  readonly source: FigureSource;
  /** Message to show with a number that cannot be real. */
  readonly note?: string;
}

/** Fraction of the demanded oxygen that may be missing before a message says so: more than the model's own tolerance. */
const SLACK = 0.1;

export const SHORT_OF_OXYGEN = "figure.note.shortOfOxygen";

/** Whether the effort needs more oxygen than this blood delivers: the answer is shown, but nobody could keep it up. */
export function shortOfOxygen(circulation: Circulation | null): boolean {
  const { oxygenMissing = 0, oxygenUse = 0 } = circulation?.extras ?? {};
  return oxygenMissing > SLACK * (oxygenUse + oxygenMissing);
}

const figure = (
  name: string,
  value: number | null | undefined,
  unit: string,
  digits: number,
  source: FigureSource,
): Figure => ({ name, value: value ?? null, unit, digits, source });

const measured = (
  name: keyof TabulatedLoss,
  value: number | null,
  tabulated: TabulatedLoss | null,
  unit: string,
): Figure =>
  value === null && tabulated
    ? figure(name, tabulated[name], unit, 1, "table")
    : figure(name, value, unit, 1, "field");

/** Why no loss is read from the flow that is shown; undefined when one is, or when none is shown. */
export function bookNote(readings: FieldReadings | null): string | undefined {
  const book = readings && energyBudget(readings);
  return book === null || book === "closed" ? undefined : `figure.note.${book}`;
}

/**
 * Power loss and pressure drop come first, once from the handbook's relations and once measured in the flow field (while its energy budget
 * is not closed, from the table of such fields, when given); where no pathway leads to the lungs, the veins' pressure stands in their place.
 */
export function figuresOf(
  circulation: Circulation | null,
  readings: FieldReadings | null,
  tabulated: TabulatedLoss | null = null,
): readonly Figure[] {
  const { pathway, pressures, saturations, flows } = circulation ?? {};
  const tells = readings !== null && energyBudget(readings) === "closed";
  const note = bookNote(readings);
  const before = circulation && !hasPathway(circulation.request.stage);
  const carried = [
    {
      ...figure("arterialSaturation", saturations?.arterial, "%", 0, "model"),
      ...(shortOfOxygen(circulation) ? { note: SHORT_OF_OXYGEN } : {}),
    },
    figure("output", flows?.systemic, "L/min", 1, "model"),
  ];
  if (before) return [figure("hepaticVeinPressure", pressures?.hepaticVein, "mmHg", 1, "model"), ...carried];
  return [
    figure("pressureDrop", pathway?.pressureDrop, "mmHg", 1, "handbook"),
    measured("pressureDrop", fieldPressureDrop(readings), tabulated, "mmHg"),
    figure("powerLoss", pathway?.powerLoss, "mW", 1, "handbook"),
    {
      ...measured("powerLoss", tells ? readings.powerLoss : null, tabulated, "mW"),
      ...(note ? { note } : {}),
    },
    figure("pathwayPressure", pressures?.pathway, "mmHg", 1, "model"),
    ...carried,
  ];
}

/** mmHg, see `lowerVeinDrop`; null while the field's energy budget is not closed. */
export const fieldPressureDrop = (readings: FieldReadings | null): number | null =>
  readings && energyBudget(readings) === "closed" ? lowerVeinDrop(readings) : null;
