/** How much of a chest is seen, and where the blood of a pathway rises in it. */
import { entryAt, present } from "../../sim/checked/present.ts";
import { line, spotAt } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import { torsoOf } from "./growing-trunk.ts";

/** CSS px: the middle of the trunk's room, and px for each mm. */
export interface ChestPlace {
  readonly x: number;
  readonly y: number;
  readonly perMillimetre: number;
}

/** mm: the middle of what is seen. */
export const middleOf = (frame: ChestFrame): Point => {
  const [left, bottom, right, top] = torsoOf(frame).room;
  return [(left + right) / 2, (bottom + top) / 2];
};

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
  const [left, bottom, right, top] = torsoOf(chest).room;
  const size = [right - left, top - bottom] as const;
  return { way: line(points), widths, middle: middleOf(chest), size };
}

/** mm: the trunk's width and height. @param request of a stage with a pathway */
export const trunkSize = (request: CirculationRequest) => ofBody(request).size;

function ofBody(request: CirculationRequest) {
  const made = known.get(request) ?? wayIn(request);
  known.set(request, made);
  return made;
}

/** Where a part of the way through tube or chamber lies in the picture of the chest. */
export function risingIn(request: CirculationRequest, { x, y, perMillimetre }: ChestPlace) {
  const { way, widths, middle } = ofBody(request);
  return (part: number): Rising => {
    const { at, along } = spotAt(way, part);
    return {
      x: x + (at[0] - middle[0]) * perMillimetre,
      y: y - (at[1] - middle[1]) * perMillimetre,
      wide: entryAt(widths, Math.round(part * (widths.length - 1))) * perMillimetre,
      angle: -Math.atan2(along[1], along[0]),
    };
  };
}
