/**
 * What holds arterial pressure: receptors in aorta and carotids, and those of the atrium; they answer with heart rate, resistance,
 * contractility and the tone of the veins.
 */
import { referenceSet } from "../../body/growth.ts";
import { numberSetting, wordSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import { fromMmHg } from "../../units.ts";
import { CONTRACTILITY, type Point, RATE, RESISTANCE, VENOUS_ROOM } from "../network/compartments.ts";
import { exertion, highestRate, isPaced, mostVenousTone } from "./exercise.ts";

/** Pa: means over a cycle, the atrium's across its wall */
interface Sensed {
  readonly aorta: number;
  readonly atrium: number;
}

/**
 * Moves the factors towards what is sensed.
 * @param seconds since they were last moved; left out in search of where they come to rest
 */
export type Reflex = (point: Point, sensed: Sensed, seconds?: number) => void;

type Arm = "rate" | "resistance" | "contractility" | "room";
type ByArm = Readonly<Record<Arm, number>>;

/**
 * Parts gained for each part of arterial pressure lost, and for each part of the usual atrial pressure lost; room is what the veins
 * hold unstretched. The arterial gains give the loop an open gain near 2 (textbook: 2-7 within the first minute); the atrial ones answer
 * blood loss that hardly lowers arterial pressure, mostly by the veins (Rothe 1983). Chosen on Leonetti 2004, judged on Johnson 2014.
 */
const ARTERIAL: ByArm = { rate: 1, resistance: 1, contractility: 0.6, room: -0.25 };
const ATRIAL: ByArm = { rate: 0.05, resistance: 0.2, contractility: 0, room: -0.4 };
const BOUNDS: Readonly<Record<Arm, readonly [number, number]>> = {
  rate: [0.7, 1.5],
  resistance: [0.6, 1.7],
  contractility: [0.8, 1.35],
  room: [0, 1.08],
};
/** An atrium stretched by this part of its pressure relaxes the veins no further. */
const MAX_STRETCHED = 0.3;
/** s in which each arm does two thirds of its answer (Ursino, Am J Physiol 1998;275:H1733). */
const DELAY: ByArm = { rate: 2, resistance: 6, contractility: 8, room: 20 };
/** Part of the way that one cycle of the search goes, so that it does not swing about its end. */
const SEARCHING = 0.7;
/** What sedation leaves of the reflexes of a person on a ventilator (anaesthetics halve the gain of the baroreflex; textbook). */
const SEDATED = 0.25;

/**
 * @param adapted atrial pressure (Pa) that the person is used to; left out while volume is still given to reach one, since nothing
 *   is lost then
 */
export function reflexOf(request: CirculationRequest, adapted: number | undefined): Reflex {
  const mode = wordSetting(request, "reflex");
  if (mode === "off") return () => {};
  const set = referenceSet(request.stage, request.body.bsa);
  const effort = exertion(request);
  const defended = fromMmHg(set.arterialMean) * effort.arterialMean;
  const awake = mode === "sedated" || wordSetting(request, "breathing") === "ventilator" ? SEDATED : 1;
  // In exertion a full atrium does not slacken the veins.
  const stretched = effort.venousTone > 0 ? 0 : -MAX_STRETCHED;
  const paced = isPaced(request);
  const fastest = Math.max(
    1,
    highestRate(request.body) / (numberSetting(request, "heartRate") * effort.heartRate),
  );
  // Veins that are stiff at rest answer less.
  const veins = mostVenousTone(request.stage) / mostVenousTone("two-ventricle");
  const leastRoom =
    1 -
    Math.max(
      0,
      mostVenousTone(request.stage) - numberSetting(request, "venousTone") / 100 - effort.venousTone,
    );
  return (point, sensed, seconds) => {
    const arterial = awake * (1 - sensed.aorta / defended);
    const atrial = adapted ? awake * Math.min(1, Math.max(stretched, 1 - sensed.atrium / adapted)) : 0;
    const move = (place: (typeof PLACES)[Arm], arm: Arm) => {
      const [least, most] = BOUNDS[arm];
      const gain = arm === "room" ? veins : 1;
      const wanted = 1 + gain * (ARTERIAL[arm] * arterial + ATRIAL[arm] * atrial);
      const bounded = Math.min(
        arm === "rate" ? Math.min(most, fastest) : most,
        Math.max(arm === "room" ? leastRoom : least, wanted),
      );
      const part = seconds === undefined ? SEARCHING : 1 - Math.exp(-seconds / DELAY[arm]);
      point[place] += part * (bounded - point[place]);
    };
    for (const arm of ARMS) if (!(paced && arm === "rate")) move(PLACES[arm], arm);
  };
}

const PLACES = {
  rate: RATE,
  resistance: RESISTANCE,
  contractility: CONTRACTILITY,
  room: VENOUS_ROOM,
} as const;
const ARMS = Object.keys(PLACES) as Arm[];
