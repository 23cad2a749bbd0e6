/** What an anatomy is painted around: the outlines of a pathway's vessels and of its blood, from its drawn plane. */
import type { Outlines } from "../anatomy/painted-sheet.ts";
import { contour } from "./contour.ts";
import type { Plane } from "./drawn-plane.ts";
import { WALL } from "./fade.ts";

/** @param density device pixels a millimetre */
export const surfaceOf = (plane: Plane, density: number) =>
  ({
    seen: contour(plane, plane.distance, WALL),
    lumen: contour(plane, plane.distance, 0),
    density,
  }) satisfies Outlines & { density: number };
