/** A short channel of the hole's own diameter through the pathway's wall to the atrium. */
import type { Handle, Opening, Place, Point, Shape } from "../geometry.ts";
import { type PathwaySizes, WALL_THICKNESS } from "./sizes.ts";

/** What a fenestration adds to a pathway's plane, mm; nothing when closed. */
export interface Fenestration {
  readonly shapes: readonly Shape[];
  readonly openings: readonly Opening[];
  readonly places: readonly Place[];
  readonly handles: readonly Handle[];
}

/** mm around the hole that are highlighted with it, so that its jet is visible */
const JET_SEEN = 18;

/**
 * @param wall where the pathway's inner wall is pierced
 * @param outward unit vector through the wall
 * @param upward unit vector along the wall towards the pulmonary arteries
 * @param travel mm along the wall from place 0 to place 100 %
 */
export function fenestration(
  sizes: PathwaySizes,
  wall: Point,
  outward: Point,
  upward: Point,
  travel: number,
): Fenestration {
  const from = (distance: number, up = 0): Point => [
    wall[0] + distance * outward[0] + up * upward[0],
    wall[1] + distance * outward[1] + up * upward[1],
  ];
  const diameter = sizes.fenestration;
  const handles: Handle[] = [
    {
      edits: "fenestrationDiameter",
      at: from(WALL_THICKNESS / 2, diameter / 2),
      along: upward,
      perMillimetre: 2,
    },
    { edits: "fenestrationPlace", at: from(WALL_THICKNESS + 3), along: upward, perMillimetre: 100 / travel },
  ];
  if (diameter <= 0) return { shapes: [], openings: [], places: [], handles };
  return {
    shapes: [{ tube: { points: [from(-diameter / 2 - 0.5), from(WALL_THICKNESS)], width: diameter } }],
    openings: [
      { name: "fenestration", centre: from(WALL_THICKNESS), normal: outward, width: diameter, velocity: 0 },
    ],
    places: [
      {
        name: "fenestration",
        at: from(WALL_THICKNESS / 2),
        label: from(WALL_THICKNESS + 13, -14),
        radius: JET_SEEN,
      },
    ],
    handles,
  };
}
