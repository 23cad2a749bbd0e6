/**
 * Tracers that come in with the blood: through each opening by the flow on its cut now, so that what enters is as full of them as the rest
 * and no gap is carried on. What leaves has no part in it.
 */
import type { RandomSource } from "../random.ts";
import { sample, sampled } from "./blended-flow.ts";
import { insert, PULSES, place, remove, type TracerCloud } from "./tracer-cloud.ts";
import { depthAt, distanceAt, MARGIN, PLACES, type TracerPlane } from "./tracer-plane.ts";
import { ORIGINS, type Origin } from "./tracers.ts";

/** Where blood comes from, in the mean: it gives origins, not how much enters now. */
export interface Supply {
  /** mL/s into the blood, mean, by opening; 0 or less counts as none */
  readonly inflow: Readonly<Record<string, number>>;
  /** fraction of the lower vein's blood that comes from the liver */
  readonly hepaticShare: number;
}

const UPPER = ORIGINS.indexOf("upper") as Origin;
const LIVER = ORIGINS.indexOf("liver") as Origin;
const LEGS = ORIGINS.indexOf("legs") as Origin;

/** Cells inside the cut at which the flow through it is read. */
const INSIDE = 0.5;
/** Cells inside the cut at which a tracer begins. */
const BEGIN = 0.02;
/** By how much more or less may enter so that the number of all comes back to the usual one. */
const MAX_CATCH_UP = 1.5;

interface Entering {
  /** s of blood time */
  readonly seconds: number;
  readonly supply: Supply;
  readonly random: RandomSource;
}

/**
 * Lets in what the step brings; the flow must have been mixed.
 * @param entered called with the number of each new tracer
 */
export function admit(
  cloud: TracerCloud,
  plane: TracerPlane,
  { seconds, supply, random }: Entering,
  entered: (n: number) => void,
): void {
  const { openings, owed, volume } = plane;
  const density = (cloud.usual / volume) * Math.min(MAX_CATCH_UP, cloud.usual / Math.max(1, cloud.count));
  for (let opening = 0; opening < openings.length; opening++) {
    owed[opening]! += density * seconds * readInflow(plane, opening);
    for (; owed[opening]! >= 1; owed[opening]!--) {
      if (cloud.count >= cloud.capacity) makeRoom(cloud, random);
      const n = insert(cloud, random);
      enter(cloud, plane, opening, n, { supply, random });
      entered(n);
    }
  }
}

/** Where blood leaves without tracers and enters with them there would be too many: any one goes, but not the dye. */
function makeRoom(cloud: TracerCloud, random: RandomSource): void {
  let n = 0;
  for (let tries = 0; tries < 8; tries++) {
    n = Math.floor(random() * cloud.count);
    if (cloud.pulse[n] === 0) break;
  }
  remove(cloud, n);
}

/** Point (mm) on a cut, `side` mm across it and `inward` mm before it. */
const spot = new Float64Array(2);

function spotOn({ cuts }: TracerPlane, opening: number, side: number, inward: number): void {
  const c = 5 * opening;
  spot[0] = cuts[c]! - side * cuts[c + 3]! - inward * cuts[c + 2]!;
  spot[1] = cuts[c + 1]! + side * cuts[c + 2]! - inward * cuts[c + 3]!;
}

/** Half of a cut's width within which tracers enter, mm. */
const halfOf = ({ cuts, shape }: TracerPlane, opening: number): number =>
  Math.max(0, cuts[5 * opening + 4]! - MARGIN * shape.dx);

/** mm3/s that enter through an opening now; the sums across it are left in `plane.across`. */
function readInflow(plane: TracerPlane, opening: number): number {
  const { shape, cuts, velocity, across } = plane;
  const { nx, dx, originX, originY } = shape;
  const half = halfOf(plane, opening);
  const [outX, outY] = [cuts[5 * opening + 2]!, cuts[5 * opening + 3]!];
  let sum = 0;
  for (let m = 0; m < PLACES; m++) {
    spotOn(plane, opening, (2 * (m + 0.5) * half) / PLACES - half, INSIDE * dx);
    const [x, y] = [spot[0]!, spot[1]!];
    if (distanceAt(shape, x, y) < 0) {
      sample(velocity, nx, (x - originX) / dx, (y - originY) / dx);
      const into = -(sampled[0]! * outX + sampled[1]! * outY) * dx;
      sum += Math.max(0, into) * depthAt(shape, x, y) * ((2 * half) / PLACES);
    }
    across[m] = sum;
  }
  return sum;
}

/** Puts tracer `n` on the cut whose inflow was read last, distributed as that carries blood through it, and counts its dye. */
function enter(
  cloud: TracerCloud,
  plane: TracerPlane,
  opening: number,
  n: number,
  { supply, random }: Omit<Entering, "seconds">,
): void {
  const { across, openings, shape } = plane;
  const part = random();
  const reached = part * across[PLACES - 1]!;
  let m = 0;
  while (m < PLACES - 1 && across[m]! < reached) m++;
  const half = halfOf(plane, opening);
  spotOn(plane, opening, (2 * (m + random()) * half) / PLACES - half, BEGIN * shape.dx);
  place(cloud, n, spot[0]!, spot[1]!);
  const { name } = openings[opening]!;
  const isVein = name === "ivc" || name === "svc";
  cloud.origin[n] = isVein
    ? originAt(name, 2 * part - 1, supply.hepaticShare)
    : drawnOrigin(plane, supply, random);
  cloud.age[n] = 0;
  const pulse = isVein ? pulseNow(cloud) : 0;
  cloud.inside[pulse]!++;
  cloud.entered[pulse]!++;
  cloud.pulse[n] = pulse;
  cloud.dyed[n] = pulse === 1 ? 1 : 0;
}

/** The origin (index into ORIGINS) of blood that is in the plane already, drawn by the mean flows (mL/s). */
export function drawnOrigin(plane: TracerPlane, supply: Supply, random: RandomSource): Origin {
  const from = entrance(plane, supply, random);
  return originAt(from < 0 ? "" : plane.openings[from]!.name, 2 * random() - 1, supply.hepaticShare);
}

/** Index of the opening through which a tracer has come, drawn in proportion to the mean flows; -1 when nothing enters. */
export function entrance({ openings }: TracerPlane, { inflow }: Supply, random: RandomSource): number {
  let total = 0;
  for (let n = 0; n < openings.length; n++) total += Math.max(0, inflow[openings[n]!.name] ?? 0);
  if (total <= 0) return -1;
  let left = random() * total;
  let last = -1;
  for (let n = 0; n < openings.length; n++) {
    const flow = Math.max(0, inflow[openings[n]!.name] ?? 0);
    if (flow === 0) continue;
    last = n;
    left -= flow;
    if (left < 0) break;
  }
  return last;
}

/**
 * Blood enters the lower vein in layers, as its veins join it: liver blood at the sides, blood from the legs in the middle.
 * @param across fraction of the flow on one side minus that on the other, -1 to 1
 */
function originAt(opening: string, across: number, hepaticShare: number): Origin {
  if (opening === "svc") return UPPER;
  if (opening === "ivc") return Math.abs(across) > 1 - hepaticShare ? LIVER : LEGS;
  return UPPER;
}

/** The pulse of what enters now; 0 before the first and after the last. */
function pulseNow({ sincePulse, pulseSeconds }: TracerCloud): number {
  const pulse = 1 + Math.floor(sincePulse / pulseSeconds);
  return pulse <= PULSES ? pulse : 0;
}
