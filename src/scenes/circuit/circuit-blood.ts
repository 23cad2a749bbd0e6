/** How much oxygen the blood of a vessel carries, as the circulation answers it. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { flowTrace, meanOf } from "../drawing/trace-clock.ts";
import { BELOW_LIVER, type Blood, type Vessel } from "./vessel.ts";

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

/** What the model gives beside its saturations, and what stands for it where it doesn't. */
const EXTRAS = {
  pulmonaryArtery: ["pulmonaryArterySaturation", "svc"],
  legs: ["legVeinSaturation", "ivc"],
  kidneys: ["renalVeinSaturation", "ivc"],
  hepatic: ["hepaticVeinSaturation", "ivc"],
} as const;

/**
 * Part of the fall from arterial to hepatic venous saturation that has come about in the portal vein: the model has gut and liver in
 * one, of which the gut takes two fifths of the oxygen from three quarters of the flow (textbooks, from memory).
 */
const PORTAL_FALL = 0.4 / 0.75;

const mixed = new WeakMap<Circulation, number>();

/** Percent, of what legs and kidneys give. */
function belowLiver(circulation: Circulation): number {
  const known = mixed.get(circulation);
  if (known !== undefined) return known;
  const { traces } = circulation;
  const mean = (name: string) => {
    const flow = flowTrace(traces.flows, name);
    return flow ? Math.max(0, meanOf(traces, flow)) : 0;
  };
  const [legs, both] = [mean("legs"), mean(BELOW_LIVER)];
  const share = both > 0 ? legs / both : 0;
  const from = (blood: Blood) => saturationOf(circulation, blood);
  const saturation = share * from("legs") + (1 - share) * from("kidneys");
  mixed.set(circulation, saturation);
  return saturation;
}

/** Percent */
export function saturationOf(circulation: Circulation, blood: Blood): number {
  if (blood === "portal") {
    const { arterial } = circulation.saturations;
    return arterial + PORTAL_FALL * (saturationOf(circulation, "hepatic") - arterial);
  }
  if (blood === "belowLiver") return belowLiver(circulation);
  if (!(blood in EXTRAS)) return circulation.saturations[blood as keyof Circulation["saturations"]];
  const [name, other] = EXTRAS[blood as keyof typeof EXTRAS];
  return circulation.extras[name] ?? circulation.saturations[other];
}

/** Percent at `fraction` of a vessel; in a bed it changes over the middle half. */
export function saturationAlong(circulation: Circulation, vessel: Vessel, fraction: number): number {
  const from = saturationOf(circulation, vessel.blood);
  if (!vessel.becomes) return from;
  const to = saturationOf(circulation, vessel.becomes);
  const share = Math.min(1, Math.max(0, (fraction - 0.25) / 0.5));
  return from + (to - from) * share;
}
