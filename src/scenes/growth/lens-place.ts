/** What of a chest a lens shows, and where the blood of a pathway rises in it. */
import { entryAt, present } from "../../sim/checked/present.ts";
import { line, spotAt } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import { lungsOf } from "../anatomy/chest-anatomy.ts";
import { boundsOf } from "../anatomy/painted-sheet.ts";

/** CSS px: the middle of the lens, and px for each mm. */
export interface LensPlace {
  readonly x: number;
  readonly y: number;
  readonly perMillimetre: number;
}

/** mm of a 5-year-old: how far a lens shows around its middle, which lies so far towards the heart from that of the lungs: heart and great vessels lie in it. */
const REACH = 76;
const TO_HEART = 8;

/** mm: the middle of what is seen, and how far that reaches. */
export function lensOf(frame: ChestFrame): { readonly middle: Point; readonly reach: number } {
  const [left, bottom, right, top] = boundsOf(
    lungsOf(frame).map(({ outline }) => outline),
    0,
  );
  return {
    middle: [(left + right) / 2 + TO_HEART * frame.scale, (bottom + top) / 2],
    reach: REACH * frame.scale,
  };
}

/** mm: the way of the blood through tube, tunnel or chamber, upwards, and its width at each point. @throws where nothing leads it */
export function trunkOf({ graft, chamber }: ChestFrame): {
  readonly line: readonly Point[];
  readonly widths: readonly number[];
} {
  if (graft) return graft;
  if (!chamber) throw new Error("a frame without a pathway");
  const [across, up] = chamber;
  const parts = [-0.8, -0.4, 0, 0.4, 0.8];
  return {
    line: parts.map((part): Point => [0, part * up]),
    widths: parts.map((part) => 2 * across * Math.sqrt(1 - part * part)),
  };
}

/** CSS px */
interface Rising {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  /** radians of the way on the screen */
  readonly angle: number;
}

const known = new WeakMap<CirculationRequest, ReturnType<typeof wayIn>>();

function wayIn(request: CirculationRequest) {
  const { chest } = present(pathwayGeometry(request));
  const { line: points, widths } = trunkOf(chest);
  return { way: line(points), widths, ...lensOf(chest), vein: chest.ivc };
}

/** @param request of a stage with a pathway */
export function chestOf(request: CirculationRequest) {
  const made = known.get(request) ?? wayIn(request);
  known.set(request, made);
  return made;
}

/** Where a spot of the chest (mm) lies in the picture. */
export const seenAt = (request: CirculationRequest, { x, y, perMillimetre }: LensPlace) => {
  const { middle } = chestOf(request);
  return ([px, py]: Point): Point => [
    x + (px - middle[0]) * perMillimetre,
    y - (py - middle[1]) * perMillimetre,
  ];
};

/** Where a part of the way through tube or chamber lies in the picture of the chest. */
export function risingIn(request: CirculationRequest, place: LensPlace) {
  const { way, widths } = chestOf(request);
  const seen = seenAt(request, place);
  return (part: number): Rising => {
    const { at, along } = spotAt(way, part);
    const [x, y] = seen(at);
    return {
      x,
      y,
      wide: entryAt(widths, Math.round(part * (widths.length - 1))) * place.perMillimetre,
      angle: -Math.atan2(along[1], along[0]),
    };
  };
}
