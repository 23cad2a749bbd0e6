/** Chests of three sizes for tests, and how far points lie apart. */
import type { Point } from "../../src/sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { type Body, CASES, type Stage } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

export const bodies: readonly Body[] = [
  CASES.caseA,
  CASES.caseB,
  { ageYears: 0.5, bsa: 0.35, haemoglobin: 14 },
];

export const geometryOf = (stage: Stage, body: Body = CASES.caseA, set = {}) =>
  pathwayGeometry({ ...START.request, stage, body, set })!;

export const apart = ([ax, ay]: Point, [bx, by]: Point): number => Math.hypot(ax - bx, ay - by);
