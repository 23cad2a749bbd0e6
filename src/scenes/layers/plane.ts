/** The drawn plane of a pathway: its signed distance on a grid fine enough for smooth outlines. */

import type { FieldGrid } from "../../sim/field/flow-field.ts";
import { planeDistance } from "../../sim/geometry/distance.ts";
import type { FlowGeometry, Opening } from "../../sim/geometry/geometry.ts";

/** mm between samples: outlines then lie within a few hundredths of a millimetre. */
const CELL = 0.7;
/** mm drawn around the blood: room for wall and shadow */
const MARGIN = 14;
/** mm that an opening's channel goes on, so that its outline can be cut open */
const CHANNEL = 1.5;

/** mm before an opening at which its wall ends: the outline turns along the cut within a sample of it */
export const SHY = 0.9;

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
  const nx = Math.ceil((right + MARGIN - originX) / CELL) + 1;
  const ny = Math.ceil((top + MARGIN - originY) / CELL) + 1;
  const at = planeDistance(geometry, CHANNEL);
  const distance = new Float32Array(nx * ny);
  for (let j = 0, k = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++, k++) distance[k] = at(originX + i * CELL, originY + j * CELL);
  }
  return { nx, ny, cell: CELL, originX, originY, distance };
}

/** `reach`: mm to either side of the opening that count; `shy`: mm before its plane. Whether a point of an outline belongs to the far side of an opening: there the vessel goes on and no wall is drawn. */
export function beyondOpening(opening: Opening, x: number, y: number, reach: number, shy = SHY): boolean {
  const [nx, ny] = opening.normal;
  const dx = x - opening.centre[0];
  const dy = y - opening.centre[1];
  const beyond = dx * nx + dy * ny;
  const across = Math.abs(dy * nx - dx * ny);
  // A hole in a wall keeps its rim; a vessel goes on.
  if (opening.name === "fenestration") return beyond > -0.1 && beyond < 12 && across < opening.width / 2 + 3;
  return beyond > -shy && beyond < 12 && across < opening.width / 2 + reach;
}
