/** Steady mixing of oxygen with the mean flows: each vein carries what its organs leave, the lungs fill what passes them. */
import { contentAtSaturation, contentOf, saturationOf, tensionOf } from "./content.ts";
import { type ByOrgan, MIN_SATURATION, ORGANS, type Organ } from "./use.ts";

/** L/min, none negative */
interface MixingFlows extends ByOrgan {
  readonly collaterals: number;
  /** through both lungs, collaterals included */
  readonly lungs: number;
  readonly fenestrationForward: number;
  readonly fenestrationBackward: number;
  /** of the upper body's veins, past the lungs to the atrium */
  readonly venoVenous: number;
}

interface VeinParts {
  readonly ivc: number;
  readonly svc: number;
}

/** What flows where, who takes how much, and what the lungs offer; shares 0 to 1. */
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
  /** g/dL */
  readonly haemoglobin: number;
  /** mmHg in the pulmonary veins */
  readonly lungTension: number;
  /** part of the lungs' flow that passes them without meeting air, 0..1 */
  readonly lungShunt: number;
  /** mL/min asked for */
  readonly use: ByOrgan;
}

/** mL/dL */
export interface Contents {
  readonly arterial: number;
  /** what each organ leaves in its vein */
  readonly left: ByOrgan;
  readonly pulmonaryVein: number;
  /** what enters the lungs by their arteries, collaterals included */
  readonly pulmonaryArtery: number;
}

/** The oxygen of the whole circulation; saturations 0 to 1. */
export interface OxygenBalance {
  /** 0..1 */
  readonly arterial: number;
  readonly organs: ByOrgan;
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
  /** the same of each organ */
  readonly drawn: ByOrgan;
  /** mL/min asked for and not there */
  readonly missing: number;
  /** used over delivered, 0..1 */
  readonly extraction: number;
}

const DECILITRES = 10;
const MAX_ROUNDS = 200;
const LOWER: readonly Organ[] = ["kidneys", "gut", "legs"];

/** Goes round until the arterial content stands (each round forgets all but the share that bypasses the lungs). */
export function mixContents(request: MixingRequest): Contents {
  const { flows, haemoglobin, use, lungShunt } = request;
  const filled = contentOf(request.lungTension, haemoglobin);
  const floor = (organ: Organ) => contentAtSaturation(MIN_SATURATION[organ], haemoglobin);
  const floors = byOrgan(floor);
  const leave = (content: number, organ: Organ): number => {
    const flow = flows[organ];
    if (flow <= 0) return 0;
    // What an organ can't draw out stays in its vein.
    return Math.max(Math.min(content, floors[organ]), content - use[organ] / (flow * DECILITRES));
  };
  let arterial = filled;
  let left = byOrgan((organ) => leave(arterial, organ));
  let pulmonaryArtery = arterial;
  let pulmonaryVein = arterial;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    left = byOrgan((organ) => leave(arterial, organ));
    const joint = jointContent(request, left, arterial);
    pulmonaryArtery = intoLungs(flows, towardsLungs(request, left, joint), arterial);
    pulmonaryVein = filled + lungShunt * (Math.min(filled, pulmonaryArtery) - filled);
    const next = enteringVentricle(request, left, joint, pulmonaryVein, arterial);
    const settled = Math.abs(next - arterial) < 1e-10;
    arterial = next;
    if (settled) break;
  }
  return { arterial, left, pulmonaryVein, pulmonaryArtery };
}

const byOrgan = (value: (organ: Organ) => number): ByOrgan => ({
  upper: value("upper"),
  kidneys: value("kidneys"),
  gut: value("gut"),
  legs: value("legs"),
  coronary: value("coronary"),
});

/** Mean of contents weighted by flow; `without` where nothing flows. */
function mean(parts: readonly (readonly [flow: number, content: number])[], without: number): number {
  let flow = 0;
  let carried = 0;
  for (const [each, content] of parts) {
    flow += each;
    carried += each * content;
  }
  return flow > 0 ? carried / flow : without;
}

const lowerVein = (flows: ByOrgan, left: ByOrgan): number =>
  mean(
    LOWER.map((organ) => [flows[organ], left[organ]] as const),
    0,
  );

const lowerFlow = (flows: ByOrgan): number => flows.kidneys + flows.gut + flows.legs;

function jointContent(request: MixingRequest, left: ByOrgan, arterial: number): number {
  const { flows, lowerPassesLungs, coronaryPassesLungs } = request;
  return mean(
    [
      [Math.max(0, flows.upper - flows.venoVenous), left.upper],
      [lowerPassesLungs ? lowerFlow(flows) : 0, lowerVein(flows, left)],
      [coronaryPassesLungs ? flows.coronary : 0, left.coronary],
      [flows.fenestrationBackward, arterial],
    ],
    arterial,
  );
}

const intoLungs = (flows: MixingFlows, joint: number, arterial: number): number =>
  mean(
    [
      [Math.max(0, flows.lungs - flows.collaterals), joint],
      [flows.lungs > 0 ? flows.collaterals : 0, arterial],
    ],
    0,
  );

/** What a fenestration lets out; it takes no more of the lower veins' blood than there is. */
function throughHole({ flows, pathway }: MixingRequest, left: ByOrgan, joint: number): number {
  if (!pathway || flows.fenestrationForward <= 0) return joint;
  const below = Math.min(pathway.holeFromBelow, lowerFlow(flows) / flows.fenestrationForward);
  return below * lowerVein(flows, left) + (1 - below) * left.upper;
}

/** What is left for the lungs when a fenestration has taken its part of the joint's blood. */
function towardsLungs(request: MixingRequest, left: ByOrgan, joint: number): number {
  const { lungs, collaterals, fenestrationForward } = request.flows;
  const fromJoint = Math.max(0, lungs - collaterals);
  if (fromJoint <= 0) return joint;
  const hole = throughHole(request, left, joint);
  return ((fromJoint + fenestrationForward) * joint - fenestrationForward * hole) / fromJoint;
}

/** Each lung's artery, where it is known which vein's blood goes there. */
function eachArtery({ flows, pathway }: MixingRequest, left: ByOrgan) {
  if (!pathway) return undefined;
  const lower = lowerVein(flows, left);
  const artery = ({ ivc, svc }: VeinParts): number =>
    mean(
      [
        [lowerFlow(flows) * ivc, lower],
        [flows.upper * svc, left.upper],
      ],
      0,
    );
  return { left: artery(pathway.left), right: artery(pathway.right) };
}

function enteringVentricle(
  request: MixingRequest,
  left: ByOrgan,
  joint: number,
  pulmonaryVein: number,
  arterial: number,
): number {
  const { flows, lowerPassesLungs, coronaryPassesLungs } = request;
  return mean(
    [
      [flows.lungs, pulmonaryVein],
      [flows.fenestrationForward, throughHole(request, left, joint)],
      [flows.venoVenous, left.upper],
      [lowerPassesLungs ? 0 : lowerFlow(flows), lowerVein(flows, left)],
      [coronaryPassesLungs ? 0 : flows.coronary, left.coronary],
    ],
    arterial,
  );
}

/** Saturations (0 to 1) and use (mL/min) of the steady state; never throws: what is asked for and not there is `missing`. */
export function mixOxygen(request: MixingRequest): OxygenBalance {
  const { flows, haemoglobin, use } = request;
  const { arterial, left, pulmonaryVein, pulmonaryArtery } = mixContents(request);
  const arteries = eachArtery(request, left);
  const saturation = (content: number) => saturationOf(tensionOf(content, haemoglobin));
  const systemic = ORGANS.reduce((sum, organ) => sum + flows[organ], 0);
  const mixed = mean(
    ORGANS.map((organ) => [flows[organ], left[organ]] as const),
    0,
  );
  const delivery = arterial * systemic * DECILITRES;
  const used = (arterial - mixed) * systemic * DECILITRES;
  const asked = ORGANS.reduce((sum, organ) => sum + use[organ], 0);
  return {
    arterial: saturation(arterial),
    organs: byOrgan((organ) => saturation(left[organ])),
    upper: saturation(left.upper),
    lower: saturation(lowerVein(flows, left)),
    coronary: saturation(left.coronary),
    mixedVenous: saturation(mixed),
    pulmonaryVein: saturation(pulmonaryVein),
    pulmonaryArtery: saturation(pulmonaryArtery),
    ...(arteries
      ? { pulmonaryArteries: { left: saturation(arteries.left), right: saturation(arteries.right) } }
      : {}),
    delivery,
    used,
    drawn: byOrgan((organ) => (arterial - left[organ]) * flows[organ] * DECILITRES),
    missing: Math.max(0, asked - used),
    extraction: delivery > 0 ? used / delivery : 0,
  };
}
