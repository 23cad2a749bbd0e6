/** Fluid exchange over days to weeks: tissues fill, lymph grows, what overflows collects in chest and abdomen and is drained. */
import { usualWeight } from "../body/bsa.ts";
import type { Circulation } from "../circulation/answer/answer.ts";
import { numberSetting } from "../parameters/parameters.ts";
import {
  albuminCarried,
  filtration,
  lymphAtRest,
  lymphCarried,
  overflow,
  REGIONS,
  type Region,
  regionLymph,
  type Tissue,
} from "./filtration.ts";
import { OPERATION, tightness } from "./first-days.ts";
import { ductPressure, venousPressure } from "./region-veins.ts";
import { TISSUE_PRESSURE_USUAL, tissueCompliance } from "./tissue.ts";

/** What happens to the patient during the course. */
export interface ExchangeOptions {
  /** days, 1 to 60, default 21 */
  readonly days?: number;
  /** Whether the course begins with an operation on bypass (leaking capillaries, thinned protein), default true. */
  readonly operation?: boolean;
  /** A drain takes what collects, default true; without one it is slowly taken up again. */
  readonly drain?: boolean;
  /** Water and protein lost through the drain are given back, default true; without, both leave the blood. */
  readonly replaced?: boolean;
  /** The circulation of the first days ({@link firstDaysRequest}), which settles to the one asked about; default the same. */
  readonly firstDays?: Circulation;
}

/** Evenly spaced, four points a day, begin and end included. */
export interface ExchangeCourse {
  /** days since the operation */
  readonly days: readonly number[];
  /** mL/h */
  readonly filtration: readonly number[];
  readonly lymph: readonly number[];
  readonly overflow: readonly number[];
  /** g/h of albumin that lymph carries back */
  readonly albumin: readonly number[];
  readonly drained: readonly number[];
  /** mmHg, the regions weighed by their share */
  readonly interstitialPressure: readonly number[];
  /** mmHg */
  readonly plasmaOncoticPressure: readonly number[];
  /** mmHg where the thoracic duct empties */
  readonly ductPressure: readonly number[];
  /** mL in chest and abdomen */
  readonly collected: readonly number[];
  /** ratio to lymph flow at rest that is carried at most, the regions weighed by their share */
  readonly lymphCarried: readonly number[];
  /** mL that the blood is short of */
  readonly bloodLost: readonly number[];
  /** mL in all, and mL/kg */
  readonly drainedTotal: number;
  readonly drainedPerKilogram: number;
  /** mL/h of lymph in a healthy body of this size at rest */
  readonly lymphHealthy: number;
  /** days until the drain gives less than DRY for good; null when it does not within the course. */
  readonly daysToDry: number | null;
}

/** mL/kg/day under which a drain is taken out (common practice, no source). */
const DRY = 2;

/** days in which walls, plasma and lymph vessels go back or adapt (teaching values) */
const RECOVERY = { leakage: 7, reflection: 20, plasma: 14, lymph: 7 };
/** Lymph vessels that work at their limit grow, to at most this many times their first limit. */
const LYMPH_GROWTH = 2;
/** 1/day: what a drain takes of what has collected, and what is taken up again without one. */
const DRAIN_RATE = 12;
const UPTAKE_RATE = 0.1;
/** Protein of drained fluid over plasma's; volume that the body's protein would fill at plasma's strength, mL/kg (albumin: 45 mL/kg of plasma hold 40 %; textbooks). */
const PROTEIN_SHARE = 0.6;
const PROTEIN_VOLUME = 45 / 0.4;
/** mmHg: plasma protein is given before it falls lower, unless it was lower from the start (teaching value). */
const MIN_ONCOTIC = 20;
/** mL/mmHg/kg of all veins (Rothe 1983: 1.6-2): what lost volume takes off their pressure; and 1/day in which drinking and kidneys restore it (teaching value). */
const VENOUS_COMPLIANCE = 1.8;
const RESTORED = 0.5;
/** days */
const STEP = 1 / 720;
const POINTS_PER_DAY = 4;
const HOURS = 24;

interface RegionState {
  readonly region: Region;
  readonly venous: (day: number) => number;
  /** mmHg in the tissue */
  pressure: number;
  /** lymph flow over that at rest */
  ratio: number;
  /** as {@link Tissue} has it */
  grown: number;
}

/**
 * The course of fluid exchange in the three regions, by explicit steps of 2 minutes. Never throws.
 * @param circulation gives venous pressures (mmHg), body and the fluid parameters of its request
 */
export function solveExchange(circulation: Circulation, options: ExchangeOptions = {}): ExchangeCourse {
  const { days = 21, operation = true, drain = true, replaced = true } = options;
  const { request } = circulation;
  const setting = (name: string) => numberSetting(request, name);
  const weight = usualWeight(request.body.bsa);
  const { firstDays = circulation } = options;
  const settling = (read: (from: Circulation) => number) => (day: number) =>
    read(circulation) + (read(firstDays) - read(circulation)) * tightness(day);
  const ductOf = settling(ductPressure);
  const states: RegionState[] = REGIONS.map((region) => ({
    region,
    venous: settling((from) => venousPressure(region, from)),
    pressure: TISSUE_PRESSURE_USUAL,
    ratio: 1,
    grown: 1,
  }));
  const wound = operation ? 1 : 0;
  const fullOncotic = setting("plasmaOncoticPressure");
  let oncotic = fullOncotic * (operation ? OPERATION.plasmaShare : 1);
  let collected = 0;
  let drainedTotal = 0;
  let bloodLost = 0;
  const course = newCourse();
  const steps = Math.round(days / STEP);
  const every = Math.round(1 / (STEP * POINTS_PER_DAY));

  for (let step = 0; step <= steps; step++) {
    const day = step * STEP;
    const emptied = bloodLost / (VENOUS_COMPLIANCE * weight);
    const duct = Math.max(0, ductOf(day) - emptied);
    const flows = { filtration: 0, lymph: 0, overflow: 0, pressure: 0, most: 0 };
    for (const state of states) {
      const { region } = state;
      const tissue: Tissue = {
        venousPressure: Math.max(0, state.venous(day) - emptied),
        plasmaOncoticPressure: oncotic,
        ...wallsAt(day, setting, wound),
        lymphMaximum: setting("lymphMaximum"),
        lymphGrown: state.grown,
        lymphOutflow: duct,
        weight,
      };
      const { pressure } = state;
      const ratio = regionLymph(region, pressure, tissue);
      const most = lymphCarried(tissue);
      state.ratio = ratio;
      const filtered = filtration(region, tissue, pressure, ratio);
      const carried = ratio * lymphAtRest(region, weight);
      const over = overflow(region, tissue, pressure);
      const compliance = tissueCompliance(pressure, weight * region.share);
      state.pressure += ((filtered - carried - over) * HOURS * STEP) / compliance;
      // Vessels that nothing leaves for the pressure at their end are at their limit.
      const used = most > 0 ? ratio / most : 1;
      state.grown += ((1 + (LYMPH_GROWTH - 1) * used - state.grown) * STEP) / RECOVERY.lymph;
      flows.filtration += filtered;
      flows.lymph += carried;
      flows.overflow += over;
      flows.pressure += region.share * pressure;
      flows.most += region.share * most;
    }
    const drained = drain ? (DRAIN_RATE * collected) / HOURS : 0;
    const uptake = (UPTAKE_RATE * collected) / HOURS;
    collected += (flows.overflow - drained - uptake) * HOURS * STEP;
    drainedTotal += drained * HOURS * STEP;
    const lost = replaced ? 0 : (PROTEIN_SHARE * drained * HOURS) / (PROTEIN_VOLUME * weight);
    oncotic += ((fullOncotic - oncotic) / RECOVERY.plasma - lost * oncotic) * STEP;
    oncotic = Math.max(Math.min(MIN_ONCOTIC, fullOncotic), oncotic);
    if (!replaced) bloodLost += (drained * HOURS - RESTORED * bloodLost) * STEP;
    if (step % every === 0) {
      note(course, {
        days: day,
        filtration: flows.filtration,
        lymph: flows.lymph,
        overflow: flows.overflow,
        albumin: states.reduce((sum, { region, ratio }) => sum + albuminCarried(region, ratio, weight), 0),
        drained,
        interstitialPressure: flows.pressure,
        plasmaOncoticPressure: oncotic,
        ductPressure: duct,
        collected,
        bloodLost,
        lymphCarried: flows.most,
      });
    }
  }
  const lymphHealthy = REGIONS.reduce((sum, region) => sum + lymphAtRest(region, weight), 0);
  const drainedPerKilogram = drainedTotal / weight;
  return { ...course, drainedTotal, drainedPerKilogram, lymphHealthy, daysToDry: dryDay(course, weight) };
}

/** What is set, and what an operation (`wound` 1, none 0) so many days ago has left of its harm. */
function wallsAt(
  day: number,
  setting: (name: string) => number,
  wound: number,
): Pick<Tissue, "reflection" | "leakage"> {
  const left = (days: number) => wound * Math.exp(-day / days);
  return {
    reflection: setting("proteinReflection") * (1 + (OPERATION.reflection - 1) * left(RECOVERY.reflection)),
    leakage: setting("capillaryLeakage") * (1 + (OPERATION.leakage - 1) * left(RECOVERY.leakage)),
  };
}

const newCourse = () => ({
  days: [] as number[],
  filtration: [] as number[],
  lymph: [] as number[],
  overflow: [] as number[],
  albumin: [] as number[],
  drained: [] as number[],
  interstitialPressure: [] as number[],
  plasmaOncoticPressure: [] as number[],
  ductPressure: [] as number[],
  collected: [] as number[],
  bloodLost: [] as number[],
  lymphCarried: [] as number[],
});

type Series = ReturnType<typeof newCourse>;

function note(course: Series, point: Record<keyof Series, number>): void {
  for (const name of Object.keys(course) as (keyof Series)[]) course[name].push(point[name]);
}

/** What runs off, or without a drain still collects, decides. */
function dryDay(course: Series, weight: number): number | null {
  const limit = (DRY * weight) / HOURS;
  for (let i = course.days.length - 1; i >= 0; i--)
    if (Math.max(course.drained[i] ?? 0, course.overflow[i] ?? 0) > limit)
      return i + 1 < course.days.length ? (course.days[i + 1] ?? null) : null;
  return 0;
}
