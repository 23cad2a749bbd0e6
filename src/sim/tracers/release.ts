/** Where tracers come from: an even filling at first, then the openings through which blood enters. */
import type { RandomSource } from "../random.ts";
import { PULSES, place, type TracerCloud } from "./tracer-cloud.ts";
import { distanceAt, type TracerPlane } from "./tracer-plane.ts";
import { ORIGINS, type Origin } from "./tracers.ts";

/** What enters at present. */
export interface Supply {
  /** mL/s into the blood, by opening; nothing enters where it is 0 or less */
  readonly inflow: Readonly<Record<string, number>>;
  /** fraction of the lower vein's blood that comes from the liver */
  readonly hepaticShare: number;
}

const UPPER = ORIGINS.indexOf("upper") as Origin;
const LIVER = ORIGINS.indexOf("liver") as Origin;
const LEGS = ORIGINS.indexOf("legs") as Origin;

/** Cells from the wall within which no tracer is set. */
const MARGIN = 0.25;

/**
 * Fills the cloud with `count` tracers (at most its capacity), evenly by volume: denser where the plane is deeper. Their origins are drawn in
 * proportion to the flows until tracers that entered replace them. A pulse of dye that was asked for waits for the blood that enters next.
 */
export function fill(
  cloud: TracerCloud,
  plane: TracerPlane,
  count: number,
  supply: Supply,
  random: RandomSource,
): void {
  cloud.count = Math.min(count, cloud.capacity);
  for (let n = 0; n < cloud.count; n++) {
    scatter(cloud, plane, n, random);
    const from = entrance(plane, supply, random);
    cloud.origin[n] = originAt(
      from < 0 ? "" : plane.openings[from]!.name,
      2 * random() - 1,
      supply.hepaticShare,
      UPPER,
    );
    cloud.age[n] = 0;
    cloud.speed[n] = 0;
    cloud.dyed[n] = cloud.pulse[n] = 0;
  }
}

/** After the walls have moved: tracers that would be in a wall are placed again at random, the rest stay where they are. */
export function resettle(cloud: TracerCloud, plane: TracerPlane, random: RandomSource): void {
  for (let n = 0; n < cloud.count; n++) {
    const x = cloud.position[2 * n]!;
    const y = cloud.position[2 * n + 1]!;
    if (distanceAt(plane.shape, x, y) > -MARGIN * plane.shape.dx || beyondCut(plane, x, y)) {
      scatter(cloud, plane, n, random);
    }
  }
}

function beyondCut({ shape, near, cuts }: TracerPlane, x: number, y: number): boolean {
  const i = Math.round((x - shape.originX) / shape.dx);
  const j = Math.round((y - shape.originY) / shape.dx);
  const c = 5 * (near[j * shape.nx + i]! - 1);
  return c >= 0 && (x - cuts[c]!) * cuts[c + 2]! + (y - cuts[c + 1]!) * cuts[c + 3]! > 0;
}

/** Tries before a tracer stays where it is, so that a plane without blood does not hang. */
const TRIES = 2000;

function scatter(cloud: TracerCloud, plane: TracerPlane, n: number, random: RandomSource): void {
  const { nx, ny, dx, originX, originY, depth, distance } = plane.shape;
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const gx = random() * (nx - 1);
    const gy = random() * (ny - 1);
    const k = Math.round(gy) * nx + Math.round(gx);
    if (distance[k]! > -MARGIN * dx) continue;
    const x = originX + gx * dx;
    const y = originY + gy * dx;
    if (distanceAt(plane.shape, x, y) > -MARGIN * dx || beyondCut(plane, x, y)) continue;
    place(cloud, n, x, y);
    if (random() * plane.deepest <= depth[k]!) return;
  }
}

/** Index of the opening through which the next tracer enters, drawn in proportion to flow; -1 when nothing enters. */
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
 * @param before origin of the tracer that left, kept when blood comes back through an outlet
 */
function originAt(opening: string, across: number, hepaticShare: number, before: number): number {
  if (opening === "svc") return UPPER;
  if (opening === "ivc") return Math.abs(across) > 1 - hepaticShare ? LIVER : LEGS;
  return before;
}

/**
 * Puts tracer `n` on the cut of an opening, distributed as a parabolic profile carries blood through it, and counts its dye.
 * @param from index of the opening
 * @param options.hepaticShare fraction of the lower vein's blood that comes from the liver
 */
export function enter(
  cloud: TracerCloud,
  plane: TracerPlane,
  n: number,
  from: number,
  { hepaticShare, random }: { readonly hepaticShare: number; readonly random: RandomSource },
): void {
  const { cuts, openings, shape } = plane;
  const c = 5 * from;
  const part = 2 * random() - 1;
  // Where half the flow of a parabola plus `part` of the rest has passed.
  const side = 2 * Math.sin(Math.asin(part) / 3) * Math.max(0, cuts[c + 4]! - MARGIN * shape.dx);
  const inward = 0.02 * shape.dx;
  const x = cuts[c]! - side * cuts[c + 3]! - inward * cuts[c + 2]!;
  const y = cuts[c + 1]! + side * cuts[c + 2]! - inward * cuts[c + 3]!;
  place(cloud, n, x, y);
  const name = openings[from]!.name;
  cloud.origin[n] = originAt(name, part, hepaticShare, cloud.origin[n]!);
  cloud.age[n] = 0;
  const pulse = name === "ivc" || name === "svc" ? pulseNow(cloud) : 0;
  cloud.inside[cloud.pulse[n]!]!--;
  cloud.inside[pulse]!++;
  cloud.entered[pulse]!++;
  cloud.pulse[n] = pulse;
  cloud.dyed[n] = pulse === 1 ? 1 : 0;
}

/** The pulse of what enters now; 0 before the first and after the last. */
function pulseNow({ sincePulse, pulseSeconds }: TracerCloud): number {
  const pulse = 1 + Math.floor(sincePulse / pulseSeconds);
  return pulse <= PULSES ? pulse : 0;
}
