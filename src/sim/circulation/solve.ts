/** solve(CirculationRequest) -> Circulation: from what is asked to the periodic answer. */
import { pathwayLaw } from "../hydraulics/network.ts";
import { numberSetting, wordSetting } from "../parameters.ts";
import type { CirculationRequest } from "../request.ts";
import type { Circulation } from "./answer.ts";
import { answerOf } from "./answer-of.ts";
import { STRAIN_SECONDS } from "./breathing.ts";
import { networkOf } from "./network.ts";
import { findPeriodic, type Periodic, passThrough, SEARCHED, TOO_FAST } from "./periodic.ts";
import { record } from "./record.ts";
import { fixedVolume, totalVolume, volumeControl } from "./volume-rule.ts";

export interface SolveOptions {
  /** `state` of an earlier answer, near or far; a start that does not fit is left aside */
  readonly start?: readonly number[];
  /** divides the time step (1 = the house's step) */
  readonly fineness?: number;
}

/**
 * The periodic state of a checked request. Never throws, never NaN: where nothing periodic is found, `run.converged` is false,
 * `run.reason` says why, and the figures are those of the last breath that was still finite.
 *
 * Under the two holding rules volume is given at rest: in quiet spontaneous breathing at 1 MET. A strain, a held or deep breath,
 * a ventilator, exertion, calf work and belly pressure then act at that volume, as they do before anyone can give more.
 * A strain is no periodic state: it is run from rest for STRAIN_SECONDS and the beat reached is reported.
 */
export function solve(request: CirculationRequest, options: SolveOptions = {}): Circulation {
  const fineness = options.fineness ?? 1;
  const law = pathwayLaw(request);
  const rest = atRest(request);
  const starts = splitStart(options.start);
  const find = (
    asked: CirculationRequest,
    volume: number | undefined,
    start: readonly number[] | undefined,
  ) => {
    const network = networkOf(asked, law);
    const control = volume === undefined ? volumeControl(asked, network) : fixedVolume(volume);
    // Where the steps prove too coarse, finer ones are tried before giving up.
    for (let finer = fineness; ; finer *= 2) {
      const found = findPeriodic(asked, network, control, start, finer);
      if (found.reason !== TOO_FAST || finer >= FINEST * fineness) return found;
    }
  };
  const strains = wordSetting(request, "breathing") === "strain";
  if (rest === request || (request.volumeRule === "fixed-volume" && !strains)) {
    const found = find(request, undefined, starts.acting);
    return answerOf(request, law, found, record(found), [...found.point]);
  }
  const resting = find(rest, undefined, starts.resting);
  if (resting.reason) return answerOf(request, law, resting, record(resting), [...resting.point]);
  if (strains) {
    const strained = passThrough(request, networkOf(request, law), resting.point, STRAIN_SECONDS, fineness);
    return answerOf(request, law, strained, record(strained), [...resting.point]);
  }
  const acting = find(request, totalVolume(resting.point), starts.acting ?? [...resting.point]);
  const counted: Periodic = { ...acting, repeats: acting.repeats + resting.repeats };
  return answerOf(request, law, counted, record(acting), [...resting.point, ...acting.point]);
}

/** Greatest refinement of the step that is tried. */
const FINEST = 4;

/** The same person at rest, or the very same record when nothing acts. */
function atRest(request: CirculationRequest): CirculationRequest {
  const acts =
    wordSetting(request, "breathing") !== "spontaneous" ||
    numberSetting(request, "metabolicEquivalents") > 1 ||
    numberSetting(request, "calfPumpPressure") > 0 ||
    numberSetting(request, "abdominalPressure") !== 0;
  if (!acts) return request;
  const set = {
    ...request.set,
    breathing: "spontaneous",
    metabolicEquivalents: 1,
    calfPumpPressure: 0,
    abdominalPressure: 0,
  };
  return { ...request, set };
}

function splitStart(start: readonly number[] | undefined) {
  if (!start) return { resting: undefined, acting: undefined };
  const resting = start.slice(0, SEARCHED);
  return { resting, acting: start.length > SEARCHED ? start.slice(SEARCHED) : resting };
}
