/** The drawn plane of a pathway: its signed distance on a grid fine enough for smooth outlines. */

import type { FieldGrid } from "../../sim/flow-field/flow-field.ts";
import { planeDistance } from "../../sim/geometry/distance.ts";
import type { FlowGeometry, Opening, Point } from "../../sim/geometry/geometry.ts";

/** mm between samples: outlines then lie within a few hundredths of a millimetre. */
const CELL = 1;
/** Samples between two that are always exact; those between are read off where the wall is farther than the band (mm). */
const COARSE = 4;
const BAND = 3.2;
/** mm drawn around the blood: room for wall and shadow */
const MARGIN = 14;
/** mm that an opening's channel goes on, so that its outline can be cut open */
const CHANNEL = 1.5;

/** mm before an opening at which its wall ends: the outline turns along the cut within a sample of it */
export const SHY = 1.2;

export interface Plane extends FieldGrid {
  /** mm [ny*nx], negative in the blood */
  readonly distance: Float32Array;
}

export function drawnPlane(
  geometry: FlowGeometry & { readonly bounds: readonly [number, number, number, number] },
): Plane {
  const [left, bottom, right, top] = geometry.bounds;
  const originX = left - MARGIN;
  const originY = bottom - MARGIN;
  const across = Math.ceil((right + MARGIN - originX) / CELL / COARSE);
  const high = Math.ceil((top + MARGIN - originY) / CELL / COARSE);
  const nx = across * COARSE + 1;
  const ny = high * COARSE + 1;
  const exact = planeDistance(geometry, CHANNEL);
  const at = (i: number, j: number) => exact(originX + i * CELL, originY + j * CELL);
  const distance = new Float32Array(nx * ny);
  // One column and row more than there are, of no weight: the last samples lie on its edge.
  const width = across + 2;
  const coarse = new Float32Array(width * (high + 2));
  for (let j = 0; j <= high; j++)
    for (let i = 0; i <= across; i++) coarse[j * width + i] = at(i * COARSE, j * COARSE);
  for (let j = 0; j < ny; j++) {
    const above = Math.floor(j / COARSE) * width;
    const up = (j % COARSE) / COARSE;
    const between = (c: number) => coarse[c]! + up * (coarse[c + width]! - coarse[c]!);
    let from = between(above);
    for (let c = 0, i = 0; i < nx; c++) {
      const to = between(above + c + 1);
      for (let n = 0; n < COARSE && i < nx; n++, i++) {
        const read = from + (n / COARSE) * (to - from);
        const known = n === 0 && up === 0;
        distance[j * nx + i] = known || Math.abs(read) > BAND ? read : at(i, j);
      }
      from = to;
    }
  }
  return { nx, ny, dx: CELL, originX, originY, distance };
}

/** mm beyond an opening, or a window's end before it, in which no other vessel of the pathway lies */
const FAR_SIDE = 26;

/** `reach`: mm to either side of the opening that count; `shy`: mm before its plane. Whether a point of an outline belongs to the far side of an opening: there the vessel goes on and no wall is drawn. */
export function beyondOpening(opening: Opening, x: number, y: number, reach: number, shy = SHY): boolean {
  const [nx, ny] = opening.normal;
  const dx = x - opening.centre[0];
  const dy = y - opening.centre[1];
  const beyond = dx * nx + dy * ny;
  const across = Math.abs(dy * nx - dx * ny);
  // A hole in a wall keeps its rim; a vessel goes on.
  if (opening.name === "fenestration") return beyond > -0.1 && beyond < 12 && across < opening.width / 2 + 3;
  return beyond > -shy && beyond < FAR_SIDE && across < opening.width / 2 + reach;
}

/** Whether a point of the plane (mm) lies in the blood. */
export const inBlood = (plane: Plane | null, x: number, y: number): boolean =>
  plane !== null && distanceAt(plane, x, y) < 0;

/** mm from the blood, as the nearest sample has it; infinite beyond the plane. */
export function distanceAt(plane: Plane, x: number, y: number): number {
  const i = Math.round((x - plane.originX) / plane.dx);
  const j = Math.round((y - plane.originY) / plane.dx);
  const within = i >= 0 && i < plane.nx && j >= 0 && j < plane.ny;
  return within ? plane.distance[j * plane.nx + i]! : Number.POSITIVE_INFINITY;
}

/** mm of the stream beyond a fenestration that no plate may cover, and how it widens to either side. */
const STREAM = { reach: 22, widens: 0.17 } as const;

/** Where blood is seen to leave through the fenestration. */
export function streamOutline({ centre: [x, y], normal: [nx, ny], width }: Opening): readonly Point[] {
  const corner = (along: number, across: number): Point => [
    x + nx * along - ny * across,
    y + ny * along + nx * across,
  ];
  const [near, far] = [width / 2, width / 2 + STREAM.widens * STREAM.reach];
  return [corner(0, near), corner(STREAM.reach, far), corner(STREAM.reach, -far), corner(0, -near)];
}
