/** How much oxygen the blood of a vessel carries, as the circulation answers it. */
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Blood, Vessel } from "./vessel.ts";

/** Percent: from here on a mixture is drawn as rings. */
const RICH = 82;

/** Whether it is drawn as rings. What comes back from the body never is: a resting kidney's and leg's veins hold much oxygen yet less than any artery. */
export const isRich = (blood: Blood, saturation: number): boolean =>
  (blood === "arterial" || blood === "pulmonaryVein") && saturation >= RICH;

/** Which blood a vessel holds at `fraction` of it. */
export const bloodAlong = (
  { blood, becomes = blood }: Pick<Vessel, "blood" | "becomes">,
  fraction: number,
): Blood => (fraction < 0.5 ? blood : becomes);

/** Percent. The pulmonary arteries' mixture is the model's own extra. */
export function saturationOf(circulation: Circulation, blood: Blood): number {
  if (blood !== "pulmonaryArtery") return circulation.saturations[blood];
  return circulation.extras.pulmonaryArterySaturation ?? circulation.saturations.svc;
}

/** Percent at `fraction` of a vessel; in a bed it changes over the middle half. */
export function saturationAlong(circulation: Circulation, vessel: Vessel, fraction: number): number {
  const from = saturationOf(circulation, vessel.blood);
  if (!vessel.becomes) return from;
  const to = saturationOf(circulation, vessel.becomes);
  const share = Math.min(1, Math.max(0, (fraction - 0.25) / 0.5));
  return from + (to - from) * share;
}
