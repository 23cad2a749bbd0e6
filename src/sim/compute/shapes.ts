/** Shapes of a request: tubes, discs, ellipses, polygons, in mm. */

import type { Fault } from "../faults.ts";
import type { Point, Shape } from "../geometry/geometry.ts";
import { isRecord, numberWithin, recordIn, refuseUnknownKeys, shown } from "../input-checks.ts";

/** mm: lengths beyond this are taken for a typing error. */
export const FAR = 1e4;
export const LENGTH = { min: 1e-3, max: FAR, unit: "mm" } as const;
const ANGLE = { min: -360, max: 360, unit: "degrees" } as const;

/** True for [x, y] in mm, neither beyond {@link FAR}. */
export const isPoint = (value: unknown): value is Point =>
  Array.isArray(value) &&
  value.length === 2 &&
  value.every((part) => typeof part === "number" && Math.abs(part) <= FAR);

const KEYS = {
  tube: ["points", "width"],
  disc: ["centre", "radius"],
  ellipse: ["centre", "radii", "angle"],
  polygon: ["points"],
} as const;

/** The shapes (mm) that are valid; adds a fault for everything else. `path` is where `input` is in the request. */
export function checkShapes(input: unknown, path: string, faults: Fault[]): Shape[] {
  if (!Array.isArray(input)) {
    faults.push({ path, found: shown(input), allowed: "a list of shapes" });
    return [];
  }
  return input.flatMap((each: unknown, n) => checkShape(each, `${path}[${n}]`, faults) ?? []);
}

function checkShape(input: unknown, path: string, faults: Fault[]): Shape | undefined {
  const before = faults.length;
  const kinds = isRecord(input) ? Object.keys(input) : [];
  const kind = kinds[0] as keyof typeof KEYS | undefined;
  if (!isRecord(input) || kinds.length !== 1 || !kind || !Object.hasOwn(KEYS, kind)) {
    faults.push({ path, found: shown(input), allowed: "one of tube, disc, ellipse, polygon" });
    return undefined;
  }
  const at = `${path}.${kind}`;
  const shape = recordIn(input[kind], at, faults);
  if (!shape) return undefined;
  refuseUnknownKeys(shape, KEYS[kind], `${at}.`, faults);
  if (kind === "tube") checkTube(shape, at, faults);
  else if (kind === "polygon") checkPoints(shape.points, 3, `${at}.points`, faults);
  else {
    if (!isPoint(shape.centre))
      faults.push({ path: `${at}.centre`, found: shown(shape.centre), allowed: "[x, y] mm" });
    if (kind === "disc") numberWithin(shape.radius, LENGTH, `${at}.radius`, faults);
    else checkEllipse(shape, at, faults);
  }
  if (faults.length > before) return undefined;
  if (kind === "ellipse") return { ellipse: { angle: 0, ...shape } } as unknown as Shape;
  return input as unknown as Shape;
}

function checkTube(tube: Record<string, unknown>, at: string, faults: Fault[]): void {
  checkPoints(tube.points, 2, `${at}.points`, faults);
  if (!Array.isArray(tube.width)) {
    numberWithin(tube.width, LENGTH, `${at}.width`, faults);
    return;
  }
  tube.width.forEach((width: unknown, n) => {
    numberWithin(width, LENGTH, `${at}.width[${n}]`, faults);
  });
  if (Array.isArray(tube.points) && tube.width.length !== tube.points.length)
    faults.push({
      path: `${at}.width`,
      found: `${tube.width.length} widths`,
      allowed: `${tube.points.length}, one for each point, or one number`,
    });
}

function checkEllipse(ellipse: Record<string, unknown>, at: string, faults: Fault[]): void {
  if (!isPoint(ellipse.radii) || ellipse.radii.some((radius) => radius < 1e-3))
    faults.push({
      path: `${at}.radii`,
      found: shown(ellipse.radii),
      allowed: "two lengths of 0.001 mm or more",
    });
  if (ellipse.angle !== undefined) numberWithin(ellipse.angle, ANGLE, `${at}.angle`, faults);
}

function checkPoints(points: unknown, least: number, path: string, faults: Fault[]): void {
  if (!Array.isArray(points) || points.length < least) {
    faults.push({ path, found: shown(points), allowed: `a list of ${least} points or more` });
    return;
  }
  points.forEach((point: unknown, n) => {
    if (!isPoint(point)) faults.push({ path: `${path}[${n}]`, found: shown(point), allowed: "[x, y] mm" });
  });
}

/** mm: smallest width of any tube; Infinity when there is none. */
export const narrowestTube = (shapes: readonly Shape[]): number =>
  Math.min(
    Infinity,
    ...shapes.flatMap((shape) => {
      if (!("tube" in shape)) return [];
      const { width } = shape.tube;
      return typeof width === "number" ? [width] : width;
    }),
  );
