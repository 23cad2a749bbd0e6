/** The outline of a pathway's lumen, for pictures that are lines alone. */
import type { PathwayGeometry } from "../../sim/geometry/geometry.ts";
import { contour } from "./contour.ts";
import { drawnPlane } from "./drawn-plane.ts";
import { cutOpen, type Line } from "./wall.ts";

/** mm to either side of an opening at which the vessel goes on and has no wall */
const GOES_ON = 7;

/** Lines in mm, y up. */
export function outlineOf(geometry: PathwayGeometry): readonly Line[] {
  const plane = drawnPlane(geometry);
  return contour(plane, plane.distance, 0).flatMap((loop) => cutOpen(loop, geometry.openings, GOES_ON));
}

export const sameShape = (a: PathwayGeometry, b: PathwayGeometry): boolean =>
  JSON.stringify([a.open, a.solid]) === JSON.stringify([b.open, b.solid]);

/** The same as the path of an SVG, y down. */
export const svgOutline = (geometry: PathwayGeometry): string =>
  outlineOf(geometry)
    .map(({ line, closed }) => {
      const points = Array.from(
        { length: line.length / 2 },
        (_, i) => `${line[2 * i]?.toFixed(1)} ${(-(line[2 * i + 1] ?? 0)).toFixed(1)}`,
      );
      return `M${points.join("L")}${closed ? "Z" : ""}`;
    })
    .join("");
