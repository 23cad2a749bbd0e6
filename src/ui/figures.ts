/** The numbers that stand beside every scene, as one list: what each is called, its value, unit and band. All are the circulation's answer. */
import { type Band, LOSS_DIGITS } from "../i18n/index.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import { hasPathway } from "../sim/parameters/request.ts";

export interface Figure {
  /** Its name in words is the message `figure.<name>`. No list has a name twice. */
  readonly name: string;
  /** In `unit`; null while it is not known. */
  readonly value: number | null;
  readonly unit: string;
  readonly digits: number;
  /** in `unit`; only where the model leaves a range open */
  readonly band?: Band;
  /** Message that has to stand beside the number, where it says what cannot be. */
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

const figure = (name: string, value: number | null | undefined, unit: string, digits: number): Figure => ({
  name,
  value: value ?? null,
  unit,
  digits,
});

/** Drop and loss of the pathway, each with its band. */
function lossOf(circulation: Circulation | null, name: keyof typeof LOSS_DIGITS, unit: string): Figure {
  const band = circulation?.pathway.band?.[name];
  return {
    ...figure(name, circulation?.pathway[name], unit, LOSS_DIGITS[name]),
    ...(band ? { band } : {}),
  };
}

/** Pressure drop and power loss come first; where no pathway leads to the lungs, the veins' pressure stands in their place. */
export function figuresOf(circulation: Circulation | null): readonly Figure[] {
  const { pressures, saturations, flows } = circulation ?? {};
  const before = circulation && !hasPathway(circulation.request.stage);
  const carried = [
    {
      ...figure("arterialSaturation", saturations?.arterial, "%", 0),
      ...(shortOfOxygen(circulation) ? { note: SHORT_OF_OXYGEN } : {}),
    },
    figure("output", flows?.systemic, "L/min", 1),
  ];
  if (before) return [figure("hepaticVeinPressure", pressures?.hepaticVein, "mmHg", 1), ...carried];
  return [
    lossOf(circulation, "pressureDrop", "mmHg"),
    lossOf(circulation, "powerLoss", "mW"),
    figure("pathwayPressure", pressures?.pathway, "mmHg", 1),
    ...carried,
  ];
}
