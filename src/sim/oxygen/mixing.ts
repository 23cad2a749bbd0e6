/** Steady mixing of oxygen with the mean flows: each vein carries what its organs leave, the lungs fill what passes them. */
import { contentOf, saturationOf, tensionOf } from "./content.ts";

/** L/min, none negative */
interface MixingFlows {
  readonly upper: number;
  /** belly and legs together */
  readonly lower: number;
  readonly coronary: number;
  readonly collaterals: number;
  /** through both lungs, collaterals included */
  readonly lungs: number;
  readonly fenestrationForward: number;
  readonly fenestrationBackward: number;
}

interface VeinParts {
  readonly ivc: number;
  readonly svc: number;
}

export interface MixingRequest {
  readonly flows: MixingFlows;
  /** where the lower veins' blood goes, and whether the coronary veins' joins it before the lungs */
  readonly lowerPassesLungs: boolean;
  readonly coronaryPassesLungs: boolean;
  /** where the veins meet the lungs' arteries: parts of each vein's blood to either lung, and of a fenestration's blood from below */
  readonly pathway?: {
    readonly holeFromBelow: number;
    readonly left: VeinParts;
    readonly right: VeinParts;
  };
  readonly haemoglobin: number;
  /** mmHg in the pulmonary veins */
  readonly lungTension: number;
  /** mL/min */
  readonly use: { readonly upper: number; readonly lower: number; readonly coronary: number };
}

export interface OxygenBalance {
  /** 0..1 */
  readonly arterial: number;
  readonly upper: number;
  readonly lower: number;
  readonly coronary: number;
  /** all systemic veins together */
  readonly mixedVenous: number;
  readonly pulmonaryVein: number;
  /** blood that enters the lungs by their arteries, collaterals included */
  readonly pulmonaryArtery: number;
  /** the same for each lung, where it is known which vein's blood goes there; collaterals left out */
  readonly pulmonaryArteries?: { readonly left: number; readonly right: number };
  /** mL/min carried to the body, and really used there */
  readonly delivery: number;
  readonly used: number;
  /** mL/min asked for and not there */
  readonly missing: number;
  /** used over delivered, 0..1 */
  readonly extraction: number;
}

const DECILITRES = 10;
const MAX_ROUNDS = 200;

/** Goes round until the arterial content stands (each round forgets all but the share that bypasses the lungs). */
export function mixOxygen({
  flows,
  lowerPassesLungs,
  coronaryPassesLungs,
  pathway,
  haemoglobin,
  lungTension,
  use,
}: MixingRequest): OxygenBalance {
  const lungContent = contentOf(lungTension, haemoglobin);
  let arterial = lungContent;
  let left = venous(arterial);
  for (let round = 0; round < MAX_ROUNDS; round++) {
    left = venous(arterial);
    const next = enteringVentricle(arterial);
    const settled = Math.abs(next - arterial) < 1e-10;
    arterial = next;
    if (settled) break;
  }

  function venous(content: number) {
    const leave = (demand: number, flow: number) =>
      flow > 0 ? Math.max(0, content - demand / (flow * DECILITRES)) : 0;
    return {
      upper: leave(use.upper, flows.upper),
      lower: leave(use.lower, flows.lower),
      coronary: leave(use.coronary, flows.coronary),
    };
  }

  function joint(content: number): number {
    const lower = lowerPassesLungs ? flows.lower : 0;
    const coronary = coronaryPassesLungs ? flows.coronary : 0;
    const total = flows.upper + lower + coronary + flows.fenestrationBackward;
    if (total <= 0) return content;
    const carried =
      flows.upper * left.upper +
      lower * left.lower +
      coronary * left.coronary +
      flows.fenestrationBackward * content;
    return carried / total;
  }

  /** What a fenestration lets out; it takes no more of the lower veins' blood than there is. */
  function throughHole(content: number): number {
    if (!pathway || flows.fenestrationForward <= 0) return joint(content);
    const below = Math.min(pathway.holeFromBelow, flows.lower / flows.fenestrationForward);
    return below * left.lower + (1 - below) * left.upper;
  }

  function enteringVentricle(content: number): number {
    const lower = lowerPassesLungs ? 0 : flows.lower;
    const coronary = coronaryPassesLungs ? 0 : flows.coronary;
    const total = flows.lungs + flows.fenestrationForward + lower + coronary;
    if (total <= 0) return content;
    const carried =
      flows.lungs * lungContent +
      flows.fenestrationForward * throughHole(content) +
      lower * left.lower +
      coronary * left.coronary;
    return carried / total;
  }

  const saturation = (content: number) => saturationOf(tensionOf(content, haemoglobin));
  const systemic = flows.upper + flows.lower + flows.coronary;
  const mixed =
    systemic > 0
      ? (flows.upper * left.upper + flows.lower * left.lower + flows.coronary * left.coronary) / systemic
      : 0;
  const delivery = arterial * systemic * DECILITRES;
  const used = (arterial - mixed) * systemic * DECILITRES;
  const fromJoint = Math.max(0, flows.lungs - flows.collaterals);
  /** What is left for the lungs when a fenestration has taken its part of the joint's blood. */
  const leaving = fromJoint + flows.fenestrationForward;
  const towardsLungs =
    fromJoint > 0
      ? (leaving * joint(arterial) - flows.fenestrationForward * throughHole(arterial)) / fromJoint
      : joint(arterial);
  const intoLungs =
    flows.lungs > 0
      ? (fromJoint * towardsLungs + flows.collaterals * arterial) / (fromJoint + flows.collaterals)
      : 0;
  const artery = (lower: number, upper: number) =>
    saturation(lower + upper > 0 ? (lower * left.lower + upper * left.upper) / (lower + upper) : 0);
  return {
    arterial: saturation(arterial),
    upper: saturation(left.upper),
    lower: saturation(left.lower),
    coronary: saturation(left.coronary),
    mixedVenous: saturation(mixed),
    pulmonaryVein: saturationOf(lungTension),
    pulmonaryArtery: saturation(intoLungs),
    ...(pathway
      ? {
          pulmonaryArteries: {
            left: artery(flows.lower * pathway.left.ivc, flows.upper * pathway.left.svc),
            right: artery(flows.lower * pathway.right.ivc, flows.upper * pathway.right.svc),
          },
        }
      : {}),
    delivery,
    used,
    missing: Math.max(0, use.upper + use.lower + use.coronary - used),
    extraction: delivery > 0 ? used / delivery : 0,
  };
}
