/** solve(CirculationRequest) -> Circulation: from what is asked to the periodic answer. */
import type { PathwayLaw } from "../hydraulics/law.ts";
import { pathwayLaw } from "../hydraulics/pathway-network.ts";
import { numberSetting, wordSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { fromMmHg } from "../units.ts";
import type { Circulation } from "./answer/answer.ts";
import { answerOf } from "./answer/answer-of.ts";
import { record } from "./answer/recording.ts";
import { VALSALVA_SECONDS } from "./equations/breathing.ts";
import { branchesOf, networkOf } from "./network/circuit-network.ts";
import { ATRIUM, type Point } from "./network/compartments.ts";
import { fixedVolume, totalVolume, volumeControl } from "./regulation/volume-rule.ts";
import type { Run } from "./search/cycle.ts";
import { findPeriodic, type Periodic, passThrough, TOO_FAST } from "./search/periodic.ts";
import { lawFlowsOf } from "./search/start-point.ts";
import { BLOCK, pack, unpack, type WarmStart } from "./search/warm-start.ts";

/** How to search. */
export interface SolveOptions {
  /** `state` of an earlier answer (SI, packed by {@link pack}) or its point, near or far; a start that does not fit is left aside */
  readonly start?: readonly number[];
  /** ratio of the usual time step to the one taken, a whole number, default 1 */
  readonly fineness?: number;
}

/**
 * The periodic state of a checked request. Never throws, never NaN: where nothing periodic is found, `run.converged` is false,
 * `run.reason` says why, and the figures are those of the last breath that was still finite.
 *
 * Under the two holding rules volume is given at rest: lying, in quiet spontaneous breathing at 1 MET. A Valsalva manoeuvre, a held or deep breath,
 * a ventilator, exertion, calf work, abdominal pressure and standing up then act at that volume, as they do before anyone can give more.
 * A Valsalva manoeuvre is no periodic state: it is run from rest for VALSALVA_SECONDS and the beat reached is reported.
 */
export function solve(request: CirculationRequest, options: SolveOptions = {}): Circulation {
  const fineness = options.fineness ?? 1;
  const rest = atRest(request);
  const starts = splitStart(options.start);
  const inValsalva = wordSetting(request, "breathing") === "valsalva";
  if (rest === request || (request.volumeRule === "fixed-volume" && !inValsalva)) {
    const { found, law, kept } = search(request, undefined, starts.acting, fineness, usedTo(request));
    return answerOf(request, law, found, pack(kept));
  }
  const resting = search(rest, undefined, starts.resting, fineness, usedTo(rest));
  if (resting.found.reason) return answerOf(request, resting.law, resting.found, pack(resting.kept));
  if (inValsalva) {
    const network = networkOf(request, resting.law);
    const run = { request, network, fineness, adapted: restingAtrium(rest, resting.found) };
    const passed = strain(run, resting.found.point);
    return answerOf(request, resting.law, passed, pack(resting.kept), resting.found);
  }
  const volume = totalVolume(resting.found.point);
  const adapted = restingAtrium(rest, resting.found);
  // How a body at rest answers tells nothing of how one that acts does.
  const start = starts.acting ?? { ...resting.kept, secants: [] };
  const acting = search(request, volume, start, fineness, adapted);
  const counted: Periodic = { ...acting.found, cycles: acting.found.cycles + resting.found.cycles };
  const state = [...pack(resting.kept), ...pack(acting.kept)];
  return answerOf(request, acting.law, counted, state);
}

/** From rest into a Valsalva manoeuvre; finer steps are tried where they prove too coarse. */
function strain(run: Run, rest: Point): Periodic {
  const passed = passThrough(run, rest, VALSALVA_SECONDS);
  const finer = 2 * run.fineness;
  return passed.reason && finer <= FINEST ? strain({ ...run, fineness: finer }, rest) : passed;
}

/** Where a person is at rest, and the atrial pressure (Pa) that their reflexes count as usual there. */
export function restingState(request: CirculationRequest): Found & { readonly adapted: number } {
  const rest = atRest(request);
  const resting = search(rest, undefined, undefined, 1, usedTo(rest));
  return { ...resting, adapted: restingAtrium(rest, resting.found) };
}

interface Found {
  readonly found: Periodic;
  /** the pathway's law at the state's flows */
  readonly law: PathwayLaw;
  readonly kept: WarmStart;
}

function search(
  request: CirculationRequest,
  volume: number | undefined,
  start: WarmStart | undefined,
  fineness: number,
  adapted: number | undefined,
): Found {
  // Where the steps prove too coarse, finer ones are tried before giving up.
  for (let finer = fineness; ; finer *= 2) {
    let law = pathwayLaw(request, start && lawFlowsOf(start.point));
    const network = networkOf(request, law);
    const control = volume === undefined ? volumeControl(request, network) : fixedVolume(volume);
    const run = { request, network, fineness: finer, adapted };
    const found = findPeriodic(run, control, start, (flows) => {
      law = pathwayLaw(request, flows);
      network.branches = branchesOf(law);
    });
    // A far start may mislead: whatever fails is tried once more from nothing.
    if (found.reason && start) return search(request, volume, undefined, fineness, adapted);
    if (found.reason !== TOO_FAST || finer >= FINEST * fineness) {
      const { point, secants } = found;
      return { found, law, kept: { point, secants } };
    }
  }
}

/**
 * Pa: the atrial pressure that a person's reflexes count as usual. Where volume is given to reach a mark there is none yet: whatever is
 * reached is what they are used to.
 */
const usedTo = (request: CirculationRequest): number | undefined =>
  request.volumeRule === "fixed-volume" ? fromMmHg(numberSetting(request, "heldAtrialPressure")) : undefined;

const restingAtrium = (rest: CirculationRequest, found: Periodic): number =>
  rest.volumeRule === "hold-atrial-pressure"
    ? fromMmHg(numberSetting(rest, "heldAtrialPressure"))
    : record(found).pressures[ATRIUM];

/** Greatest refinement of the step that is tried. */
const FINEST = 4;

/** The same person at rest, or the very same record when nothing acts. */
export function atRest(request: CirculationRequest): CirculationRequest {
  const acts =
    wordSetting(request, "breathing") !== "spontaneous" ||
    numberSetting(request, "metabolicEquivalents") > 1 ||
    numberSetting(request, "calfPumpPressure") > 0 ||
    numberSetting(request, "abdominalPressure") !== 0 ||
    wordSetting(request, "posture") !== "lying";
  if (!acts) return request;
  const set = {
    ...request.set,
    breathing: "spontaneous",
    metabolicEquivalents: 1,
    calfPumpPressure: 0,
    abdominalPressure: 0,
    posture: "lying",
  };
  return { ...request, set };
}

/** At rest and acting; where nothing acted, the same for both. */
function splitStart(start: readonly number[] = []) {
  const resting = unpack(start.slice(0, BLOCK));
  return { resting, acting: start.length > BLOCK ? unpack(start.slice(BLOCK)) : resting };
}
