/** What rises and falls together with exertion, as factors on the values at rest. */
import { numberSetting, wordSetting } from "../../parameters/parameters.ts";
import type { Body, CirculationRequest, Stage } from "../../parameters/request.ts";

/** Factors (dimensionless, 1 at rest) on the values at rest, unless another unit is given. */
export interface Exertion {
  readonly heartRate: number;
  readonly contractility: number;
  /** conductance of the working legs, of belly and of upper body */
  readonly legFlow: number;
  readonly splanchnicFlow: number;
  readonly upperFlow: number;
  /** part of the veins' unstressed volume given up, 0..1 */
  readonly venousTone: number;
  readonly breathingRate: number;
  readonly breathingDepth: number;
  /** mmHg of rhythmic muscle pressure on the legs, and the part of their veins that lies within working muscle */
  readonly musclePressure: number;
  readonly muscleShare: number;
  /** part of the legs' flow that passes this muscle, 0..1 */
  readonly workingShare: number;
  /** factor on the arterial pressure that the reflex defends */
  readonly arterialMean: number;
}

/** Part of the leg veins that lies within the calf (an adult's hold 60-100 mL; textbooks), and within calf and thigh. */
const CALF_SHARE = 0.07;
const LEG_SHARE = 0.25;

/**
 * mmHg in working muscle from walking (3 MET) on, and what each further MET adds as a part of it: 1.5 times (soleus) to 1.7 times as much
 * (tibialis anterior) when running, some 8 MET (Ballard, J Appl Physiol 1998;84:1976, abstract). So legs that a first easy effort has
 * emptied by a third stay emptied by a quarter to the greatest, as measured (Flamm, Circulation 1990;81:1550, abstract: 32 and 23 %).
 */
const WALKING_PUMP = 100;
const HARDER_PUMP = 0.11;

/**
 * Part of the lower body's flow at rest that both calves' muscle takes: 0.87 L each (Fukunaga, J Orthop Res 1992;10:926) at 3.9 mL/min for 100 mL
 * (Richardson, J Appl Physiol 1981;51, abstract), of some 1.0 L/min.
 */
const CALF_FLOW = 0.07;

/**
 * Greatest part of their unstressed volume that veins give up: some 10 mL/kg (Rothe, Physiol Rev 1983;63:1281); two thirds of that
 * after completion and before it, whose veins are constricted and stiff at rest: a forearm's hold 2.6 mL/100 mL where others' hold 3.9
 * (Kelley, Am J Cardiol 1995;76:158, abstract).
 */
export const mostVenousTone = (stage: Stage): number => (stage === "two-ventricle" ? 0.3 : 0.2);

/** A pacemaker holds the rate that is set, whatever reflexes and effort ask for. */
export const isPaced = (request: CirculationRequest): boolean =>
  ["aai", "vvi"].includes(wordSetting(request, "rhythm"));

/** 1/min that neither effort nor reflex passes: 220 - age (common practice, no source). */
export const highestRate = ({ ageYears }: Body): number => 220 - ageYears;

/** Gain of contractility for each MET; a single ventricle is weaker and has less in reserve (Saiki, J Am Heart Assoc 2016: PMC5079039; sizes are teaching values). */
const INOTROPY = { healthy: 0.08, single: 0.04 } as const;

/**
 * What gut, liver and kidneys lose of their conductance for each MET, and what they keep. Their flow falls with the part of a body's own
 * best that an effort is (Rowell, Physiol Rev 1974;54:75, from memory), and a single ventricle's best is half of a healthy one's: to 65 %
 * of rest in the less and 27 % in the most disabled of fourteen with weak hearts (Bishop, J Clin Invest 1955;34:1114).
 */
const SPLANCHNIC = { healthy: { loss: 0.07, least: 0.35 }, single: { loss: 0.14, least: 0.25 } } as const;

/**
 * Linear in METs above rest, each with its ceiling. Slopes are teaching values, one set for all bodies and stages, chosen so that leg
 * work of 1 W/kg (about 3.5 MET) gives the lower body about twice its flow and the upper body its old one (Hjortdal 2003), and that
 * peak oxygen use after completion is as measured (Mayo, 323 adults: 15.2-23.9 mL/min/kg); judged on healthy output at 8 and 10 MET.
 * The lungs' resistance is left to their distensibility: it falls no further (Reeves 1988).
 */
export function exertion(request: CirculationRequest): Exertion {
  const above = numberSetting(request, "metabolicEquivalents") - 1;
  const calves = numberSetting(request, "calfPumpPressure");
  const rest = numberSetting(request, "heartRate");
  // Ceiling: 85 % of the greatest rate (common practice, no source).
  const reserve = numberSetting(request, "heartRateReserve") / 100;
  const ceiling = 1 + reserve * Math.max(0, (0.85 * highestRate(request.body)) / rest - 1);
  const heart = request.stage === "two-ventricle" ? "healthy" : "single";
  const inotropy = INOTROPY[heart];
  const splanchnic = SPLANCHNIC[heart];
  const legs = Math.min(1, above / 2);
  const legFlow = 1 + 1.25 * above;
  return {
    heartRate: isPaced(request) ? 1 : Math.min(ceiling, 1 + 0.14 * above),
    contractility: Math.min(1 + 7.5 * inotropy, 1 + inotropy * above),
    legFlow,
    splanchnicFlow: Math.max(splanchnic.least, 1 - splanchnic.loss * above),
    upperFlow: Math.max(0.8, 1 - 0.03 * above),
    venousTone: Math.min(0.93 * mostVenousTone(request.stage), 0.04 * above),
    breathingRate: Math.min(2.5, 1 + 0.2 * above),
    breathingDepth: Math.min(3, 1 + 0.2 * above),
    musclePressure: Math.max(calves, WALKING_PUMP * (legs + HARDER_PUMP * Math.max(0, above - 2))),
    muscleShare: CALF_SHARE + (LEG_SHARE - CALF_SHARE) * legs,
    // What effort adds goes to muscle that works.
    workingShare: 1 - (1 - CALF_FLOW) / legFlow,
    arterialMean: 1 + 0.03 * above,
  };
}

/** How hard muscle presses at a phase of its contraction, both dimensionless (0..1), against its hardest. */
export const squeezing = (phase: number): number => Math.sin(Math.PI * phase) ** 2;

/** Moments of a contraction at which the hindrance is taken; the part of the arterial pressure that drives blood through the legs, and the most that their vessels widen for a squeeze (teaching values). */
const MOMENTS = 64;
const HEAD = 0.85;
const WIDEST = 2;

/**
 * Factor (dimensionless) by which the small vessels of muscle widen, so that between its squeezes they let in what was held back: the mean flow
 * of rhythmic work is as great as free flow (Folkow, Acta Physiol Scand 1970;80:61), less in hard work (Lutjemeier, J Appl Physiol
 * 2005;98:1575; abstracts). @param arterialMean mmHg, at rest
 */
export function widening({ musclePressure, arterialMean: rise }: Exertion, arterialMean: number): number {
  const head = HEAD * arterialMean * rise;
  let passes = 0;
  for (let i = 0; i < MOMENTS; i++)
    passes += Math.max(0, 1 - (musclePressure * squeezing(i / MOMENTS)) / head);
  return Math.min(WIDEST, MOMENTS / passes);
}
