/** What of the chest lies before the pathway and hides its blood: the ascending aorta, and the vein that crosses the right artery. */
import { lastOf } from "../../sim/checked/present.ts";
import { band } from "../../sim/geometry/centreline.ts";
import { type Distance, outlineDistance } from "../../sim/geometry/distance.ts";
import type { ChestFrame } from "../../sim/geometry/geometry.ts";
import type { Plane } from "../layers/drawn-plane.ts";
import { anatomyOf } from "./chest-anatomy.ts";
import { FAR } from "./hidden-marks.ts";
import { beforeArtery } from "./hilum.ts";

/** Of a limb's lumen, to its outside. */
const WALLED = 0.72;
/** mm beside it over which marks come out from behind it */
const SOFT = 1.6;

/** Whether a place lies in an atrium that is the pathway. */
export const inChamber = ({ chamber }: ChestFrame, x: number, y: number): boolean =>
  chamber !== undefined && Math.hypot(x / chamber[0], y / chamber[1]) < 1;

const known = new WeakMap<Plane, Distance>();

/** At a place (mm) of the pathway's blood: the part of a mark that is seen, 0..1. */
export function seenUnder(frame: ChestFrame, plane: Plane): Distance {
  const before = known.get(plane);
  if (before) return before;
  const anatomy = anatomyOf(frame);
  const { line, from, to } = lastOf(anatomy.before);
  const aorta = outlineDistance(band(line, from, to));
  const vein = beforeArtery(anatomy);
  // Before a chamber it is seen through.
  const cover: Distance = (x, y) =>
    Math.min(
      inChamber(frame, x, y) ? FAR : aorta(x, y),
      ...vein.map(({ at, width }) => Math.hypot(x - at[0], y - at[1]) - WALLED * width),
    );
  const { nx, ny, dx, originX, originY, distance } = plane;
  const seen = Float32Array.from(distance, (from, i) =>
    from < dx
      ? Math.min(1, Math.max(0, cover(originX + (i % nx) * dx, originY + Math.floor(i / nx) * dx) / SOFT))
      : 1,
  );
  const made: Distance = (x, y) => {
    const [i, j] = [Math.round((x - originX) / dx), Math.round((y - originY) / dx)];
    return i >= 0 && i < nx && j >= 0 && j < ny ? (seen[j * nx + i] ?? 1) : 1;
  };
  known.set(plane, made);
  return made;
}
