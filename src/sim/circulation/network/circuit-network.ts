/** One request's network as plain numbers, SI: what the equations read. The five stages differ by `connections` alone. */
import { relativeViscosity } from "../../body/blood.ts";
import { referenceSet } from "../../body/growth.ts";
import type { ReferenceSet } from "../../body/reference-sets.ts";
import { BRANCHES, type BranchName, type PathwayLaw } from "../../hydraulics/law.ts";
import { numberSetting, wordSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import {
  fromElastance,
  fromLitresPerMinute,
  fromMillilitre,
  fromMmHg,
  fromPerMillilitre,
  fromPerMmHg,
  fromQuadraticLoss,
  fromResistance,
  fromSquareMillimetre,
  fromWood,
} from "../../units.ts";
import { exertion, mostVenousTone, widening } from "../regulation/exercise.ts";
import { lungTone } from "../regulation/lung-tone.ts";
import type { ByCompartment } from "./compartments.ts";
import { lungOpening } from "./lung-opening.ts";
import { CONNECTIONS, type Connections } from "./stages.ts";
import { type VenousTone, vesselsOf } from "./vessels.ts";

/** Pressure lost as a q + b q|q|; `inertance` where the blood's inertia counts. SI: Pa.s/m3, Pa.s2/m6, Pa.s2/m3. */
export interface Path {
  readonly a: number;
  readonly b: number;
  readonly inertance: number;
}

/** Everything the equations need to know of a request but its forcing; SI. */
export interface Network {
  readonly connections: Connections;
  /** m3 and m3/Pa; chambers hold their unstressed volume and no compliance */
  readonly unstressed: ByCompartment;
  readonly compliance: ByCompartment;
  readonly venousTone: VenousTone;
  readonly ventricle: Ventricle;
  readonly rightVentricle: Ventricle;
  /** Pa/m3 relaxed, and added by full contraction */
  readonly atriumRelaxed: number;
  readonly atriumContracted: number;
  /** part of a ventricle's change of volume by which its base moves and draws its atrium, and the volume (m3) at which it stands midway */
  readonly longAxisShare: number;
  readonly longAxisVolume: number;
  /** Pa/m3 added to the junction by full contraction of the wall that it is made of */
  readonly junctionContracted: number;
  readonly atrioventricularValve: Path;
  readonly semilunarValve: Path;
  /** b of the leaking hole, Infinity when tight */
  readonly atrioventricularLeak: number;
  readonly semilunarLeak: number;
  /** Pa.s/m3 */
  readonly aortaResistance: number;
  readonly aortaInertance: number;
  readonly upperBed: number;
  readonly splanchnicBed: number;
  /** muscle of the legs that squeezes, and all else there */
  readonly workingMuscle: number;
  readonly restOfLegs: number;
  readonly coronary: number;
  /** m3/s/Pa: conductances, so that zero can mean none */
  readonly collateralLeft: number;
  readonly collateralRight: number;
  readonly hepatic: number;
  readonly legVeins: number;
  /** backward over forward conductance */
  readonly legValveLeak: number;
  /** renewed while the search finds the flows that their coefficients depend on */
  branches: Readonly<Record<BranchName, Path>>;
  readonly fenestration: Path | null;
  /** flow = strength ((1 + d p)^5 - (1 + d p')^5); d in 1/Pa */
  readonly lungLeft: number;
  readonly lungRight: number;
  readonly distensibility: number;
  /** Pa: the column of blood from the lungs' middle to the middle of their upper third */
  readonly lungHeight: number;
  readonly pulmonaryVeins: number;
  /** m3/s/Pa: upper veins to atrium, past the lungs */
  readonly venoVenous: number;
  /** Pa: column of blood between heart and leg veins; 0 lying down */
  readonly legColumn: number;
}

/** Walls of a ventricle: active elastance and an exponential filling curve. */
export interface Ventricle {
  /** Pa/m3, m3, Pa, 1/m3 */
  readonly elastance: number;
  readonly unstressed: number;
  readonly passivePressure: number;
  readonly passiveRate: number;
}

/** Share of output that the heart's own vessels take at rest, before they follow demand (textbooks: 4-5 %, three in five of it by the sinus). */
const CORONARY_SHARE = 0.03;
/** Part of stroke volume that the descent of the ventricle's base makes (Carlsson, Am J Physiol Heart 2007;293:H636: 60 % of a left ventricle's). */
const LONG_AXIS_SHARE = 0.6;
/** mL/m2 above the unstressed volume: a ventricle midway through its beat. */
const LONG_AXIS_MIDDLE = 55;
/** Contractility of a ventricle whose walls are paced one after the other (dyssynchrony; teaching value). */
const OUT_OF_STEP = 0.85;
/** Force of an atrium stretched by the pathway's pressure, over that of a healthy one (teaching value: a waves of some 4 mmHg). */
const STRETCHED_ATRIUM = 0.25;
/** mmHg between upper veins and atrium at which veno-venous channels carry what is set: usual after completion. */
const VENO_VENOUS_HEAD = 5;
/** mm of blood in a mmHg; mm from the lungs' middle to that of their upper third, lying and upright, at 1.72 m2 (lungs some 180 and 280 high; textbook sizes). */
const MILLIMETRES_OF_BLOOD = 12.8;
const LUNG_HEIGHT = { lying: 60, upright: 93 };
/** mm: heart to the middle of what leg veins hold, upright, at 1.72 m2 (textbook: a foot lies 1.2 m below the heart). */
const LEG_COLUMN = 650;
/**
 * Rise of the resistance of gut, liver and kidneys for each mmHg in the abdomen: portal flow falls to 66 % at 25 mmHg (Rasmussen, Eur J
 * Surg 1995;161:819, pigs), the whole body's resistance rises by 65 % at 14 (Joris, Anesth Analg 1993;76:1067, from memory).
 */
const PRESSED = 0.03;
/** The aortic root's characteristic resistance over the systemic one (textbook: 4-7 %). */
const CHARACTERISTIC_SHARE = 0.04;
/** Pressures (mmHg) in pulmonary arteries and veins at which the resistance index is stated: well after completion. */
const PULMONARY_ARTERY_USUAL = 12.3;
const PULMONARY_VEIN_USUAL = 7.5;
/** Where collaterals enter (mmHg), for the size of their resistance. */
const COLLATERAL_END = 12;
const VALVE_DENSITY = 1060;
/** mm2: a smaller leak counts as none. */
const SMALLEST_LEAK = 0.01;

/** The network of a request whose pathway obeys `law`; all in SI. */
export function networkOf(request: CirculationRequest, law: PathwayLaw): Network {
  const { bsa } = request.body;
  const set = referenceSet(request.stage, bsa);
  const setting = (name: string) => numberSetting(request, name);
  const connections = CONNECTIONS[request.stage];
  const effort = exertion(request);
  const upright = wordSetting(request, "posture") === "upright";
  const tone = 1 - Math.min(mostVenousTone(request.stage), setting("venousTone") / 100 + effort.venousTone);
  const leftShare = setting("leftLungShare") / 100;

  // The set's three beds keep their shares; the index fixes the whole, coronary and characteristic parts included.
  const whole =
    relativeViscosity(request.body.haemoglobin) * fromWood(setting("systemicResistanceIndex") / bsa);
  const aortaResistance = CHARACTERISTIC_SHARE * whole;
  const setConductance = 1 / set.upperResistance + 1 / set.splanchnicResistance + 1 / set.legResistance;
  const bed = (resistance: number, flow: number) =>
    ((whole - aortaResistance) * resistance * setConductance) / (1 - CORONARY_SHARE) / flow;

  const collaterals =
    fromLitresPerMinute(setting("collateralFlowIndex") * bsa) / fromMmHg(set.arterialMean - COLLATERAL_END);

  return {
    connections,
    ...vesselsOf(set, connections, tone, leftShare),
    ...heartOf(request, set),
    ...lungsOf(request, set, upright ? LUNG_HEIGHT.upright : LUNG_HEIGHT.lying),
    aortaResistance,
    aortaInertance: fromResistance(set.aortaInertance),
    upperBed: bed(set.upperResistance, effort.upperFlow),
    splanchnicBed: bed(
      set.splanchnicResistance,
      effort.splanchnicFlow / (1 + PRESSED * Math.max(0, setting("abdominalPressure"))),
    ),
    workingMuscle: bed(
      set.legResistance,
      effort.legFlow * effort.workingShare * widening(effort, set.arterialMean),
    ),
    restOfLegs: bed(set.legResistance, effort.legFlow * (1 - effort.workingShare)),
    coronary: (whole - aortaResistance) / CORONARY_SHARE,
    collateralLeft: leftShare * collaterals,
    collateralRight: (1 - leftShare) * collaterals,
    hepatic: 1 / fromResistance(set.hepaticResistance),
    legVeins: 1 / fromResistance(set.legVeinResistance),
    legValveLeak: setting("legValveLeak") / 100,
    branches: branchesOf(law),
    fenestration: law.fenestration ? { ...law.fenestration, inertance: 0 } : null,
    venoVenous: fromLitresPerMinute(setting("venoVenousFlowIndex") * bsa) / fromMmHg(VENO_VENOUS_HEAD),
    legColumn: upright ? column(LEG_COLUMN, bsa) : 0,
  };
}

/** Pa: a column of blood of so many mm in an adult, in a body of this size (m2). */
const column = (millimetres: number, bsa: number): number =>
  fromMmHg((millimetres * Math.sqrt(bsa / 1.72)) / MILLIMETRES_OF_BLOOD);

/** The chambers' walls and the valves. */
function heartOf(request: CirculationRequest, set: ReferenceSet) {
  const setting = (name: string) => numberSetting(request, name);
  const effort = exertion(request);
  const inStep = wordSetting(request, "rhythm") === "vvi" ? OUT_OF_STEP : 1;
  const ventricle = (side: "ventricle" | "rightVentricle"): Ventricle => ({
    elastance:
      fromElastance(set[`${side}Elastance`]) * setting("contractility") * effort.contractility * inStep,
    unstressed: fromMillilitre(set[`${side}Unstressed`]),
    passivePressure: fromMmHg(set[`${side}PassivePressure`]),
    passiveRate: fromPerMillilitre(set[`${side}PassiveRate`]) * setting("stiffness"),
  });
  const valve = (side: "atrioventricularValve" | "semilunarValve"): Path => ({
    a: fromResistance(set[`${side}Resistance`]),
    b: fromQuadraticLoss(set[`${side}Quadratic`]),
    inertance: 0,
  });
  const leak = (areaSquareMillimetre: number) =>
    areaSquareMillimetre > SMALLEST_LEAK
      ? VALVE_DENSITY / (2 * fromSquareMillimetre(areaSquareMillimetre) ** 2)
      : Number.POSITIVE_INFINITY;

  return {
    ventricle: ventricle("ventricle"),
    rightVentricle: ventricle("rightVentricle"),
    atriumRelaxed: fromElastance(set.atriumElastanceRelaxed),
    atriumContracted: fromElastance(set.atriumElastanceContracted - set.atriumElastanceRelaxed),
    longAxisShare: LONG_AXIS_SHARE,
    longAxisVolume: fromMillilitre(set.ventricleUnstressed + LONG_AXIS_MIDDLE * request.body.bsa),
    junctionContracted: CONNECTIONS[request.stage].junctionContracts
      ? STRETCHED_ATRIUM * fromElastance(set.atriumElastanceContracted - set.atriumElastanceRelaxed)
      : 0,
    atrioventricularValve: valve("atrioventricularValve"),
    semilunarValve: valve("semilunarValve"),
    atrioventricularLeak: leak(setting("atrioventricularValveLeak")),
    semilunarLeak: leak(setting("semilunarValveLeak")),
  };
}

/** The vessels of the lungs; `height` (mm) as of {@link LUNG_HEIGHT}. */
function lungsOf(request: CirculationRequest, set: ReferenceSet, height: number) {
  const setting = (name: string) => numberSetting(request, name);
  const { bsa, haemoglobin } = request.body;
  const leftShare = setting("leftLungShare") / 100;
  const lungHeight = column(height, bsa);
  const pulmonaryVeinResistance = fromResistance(set.pulmonaryVeinResistance);
  const lungs = Math.max(
    0.1 * pulmonaryVeinResistance,
    relativeViscosity(haemoglobin) *
      lungTone(request) *
      (fromWood(setting("pulmonaryResistanceIndex") / bsa) - pulmonaryVeinResistance),
  );
  const distensibility = fromPerMmHg(Math.max(1e-4, setting("pulmonaryDistensibility") / 100));
  const strength =
    fromMmHg(PULMONARY_ARTERY_USUAL - PULMONARY_VEIN_USUAL) /
    lungs /
    (lungOpening(distensibility, fromMmHg(PULMONARY_ARTERY_USUAL), lungHeight) -
      lungOpening(distensibility, fromMmHg(PULMONARY_VEIN_USUAL), lungHeight));
  return {
    lungLeft: leftShare * strength,
    lungRight: (1 - leftShare) * strength,
    distensibility,
    lungHeight,
    pulmonaryVeins: 1 / pulmonaryVeinResistance,
  };
}

/** Each branch as one path, SI; a steep one gets inertance enough for {@link SHORTEST_ANSWER}. */
export const branchesOf = (law: PathwayLaw): Network["branches"] =>
  Object.fromEntries(BRANCHES.map((name) => [name, sum(law.branches[name])])) as Network["branches"];

/** s: shortest time in which a branch's flow may answer; where a tight narrowing makes it shorter, inertance is raised to it. */
const SHORTEST_ANSWER = 2e-3;

function sum(elements: readonly Path[]): Path {
  const a = elements.reduce((total, element) => total + element.a, 0);
  const b = elements.reduce((total, element) => total + element.b, 0);
  const inertance = elements.reduce((total, element) => total + element.inertance, 0);
  // Steepness at the flow that 30 mmHg would drive.
  const steepness = Math.sqrt(a * a + 4 * b * fromMmHg(30));
  return { a, b, inertance: Math.max(inertance, steepness * SHORTEST_ANSWER) };
}
