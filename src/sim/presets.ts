/** Persons that a question can begin with: what each stands for, as settings of the same one model. All invented. */
import { CASES, type CirculationRequest, type ParameterValue } from "./parameters/request.ts";

const adult = (set: Readonly<Record<string, ParameterValue>>): CirculationRequest => ({
  kind: "circulation",
  stage: "extracardiac",
  body: { ...CASES.caseB, haemoglobin: 15 },
  volumeRule: "hold-atrial-pressure",
  set,
});

/**
 * A well adult is the thirteen of seventy-two whose catheters read normal, a typical one the other fifty-nine (Miranda, Eur J Heart
 * Fail 2024): a stiffer ventricle that is kept fuller, harder lungs, a heart that reaches some 140 a minute (Jain, Am J Cardiol 2024:
 * 140 +- 28). A failing one adds weakness and retained fluid (Miranda, J Invasive Cardiol 2022, fluid overload).
 */
export const PRESETS = {
  "well-adult": adult({}),
  "typical-adult": adult({
    stiffness: 1.3,
    heldAtrialPressure: 13,
    pulmonaryResistanceIndex: 1.8,
    heartRateReserve: 67,
    lungShunt: 8,
  }),
  "failing-adult": adult({
    stiffness: 1.6,
    contractility: 0.8,
    heldAtrialPressure: 15,
    pulmonaryResistanceIndex: 2.5,
    heartRateReserve: 30,
    lungShunt: 10,
  }),
} as const satisfies Record<string, CirculationRequest>;

export type PresetName = keyof typeof PRESETS;
