/**
 * A valve's cusp as a sheet cut along its middle. It springs from the vessel's wall along a line that is lowest at the cut and rises to where
 * it meets the other cusp's at the back; what is seen behind the cut lies between that line and the cusp's free edge. Places are
 * given by the distance from the vessel's middle and by how far downstream of the cusp's hinge they are.
 */
import type { Spot } from "./curve-drawing.ts";

export interface CutCusp {
  /** along the cut, from the hinge (0) to the free edge (1) */
  readonly cut: (t: number) => Spot;
  /** half the vessel's width so far downstream */
  readonly wall: (along: number) => number;
  /** how far downstream the two cusps meet on the back wall */
  readonly meets: number;
}

/** How late the line on the wall rises. */
const RISES = 1.4;

/** Slices through the sheet, the cut one first; the last is where both cusps meet. @param steps along each slice */
export function slicesOf(
  { cut, wall, meets }: CutCusp,
  slices: number,
  steps: number,
): readonly (readonly Spot[])[] {
  const [[hingeX, hingeY], [tipX, tipY]] = [cut(0), cut(1)];
  return Array.from({ length: slices + 1 }, (_, k) => {
    const turn = (Math.PI / 2) * (k / slices);
    const [near, deep] = [Math.cos(turn), Math.sin(turn) ** 2];
    const rise = meets * (1 - near) ** RISES;
    const from: Spot = k === 0 ? [hingeX, hingeY] : [near * wall(rise), hingeY * near + rise];
    const to: Spot = [tipX * near, tipY + (meets - tipY) * deep];
    return Array.from({ length: steps + 1 }, (_, i): Spot => {
      const [x, y] = cut(i / steps);
      const [across, along] = [(x - hingeX) / (tipX - hingeX), (y - hingeY) / (tipY - hingeY)];
      return [from[0] + (to[0] - from[0]) * across, from[1] + (to[1] - from[1]) * along];
    });
  });
}
