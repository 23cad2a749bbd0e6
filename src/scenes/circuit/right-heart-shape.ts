/**
 * The right side of a heart with two ventricles, opened from the front like the left one: right atrium with both caval orifices,
 * tricuspid valve, right ventricle from its inflow by the apex to its outflow, pulmonary valve. Plane of `anatomy.ts`, drawn by hand
 * after normal four-chamber sections.
 */
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { type Vessel, vessel } from "./vessel.ts";

export interface RightChamber {
  /** name of the volume trace */
  readonly volume: "rightAtrium" | "rightVentricle";
  /** closed: its cavity */
  readonly cavity: readonly Spot[];
  /** what it swells about: near its valves, so that these keep their place */
  readonly pivot: Spot;
  /** of its wall, plane units */
  readonly wall: number;
}

export const RIGHT_CHAMBERS: readonly RightChamber[] = [
  {
    volume: "rightAtrium",
    cavity: spots(
      "446 344, 424 358, 411 384, 412 412, 426 434, 446 446, 466 446, 486 426, 504 398, 512 374, 504 354, 486 348, 472 342, 446 344",
    ),
    pivot: [470, 400],
    wall: 6,
  },
  {
    volume: "rightVentricle",
    cavity: spots(
      "510 402, 515 380, 524 360, 536 342, 562 356, 550 378, 543 402, 543 428, 553 458, 574 484, 604 506, 640 522, 658 532, 640 540, 604 541, 562 534, 522 516, 492 488, 474 456, 490 430, 510 402",
    ),
    pivot: [514, 420],
    wall: 10,
  },
];

/** Two hinges, and the way that its blood takes. */
export interface RightValve {
  readonly hinges: readonly [Spot, Spot];
  /** unit vector */
  readonly way: Spot;
  /** length of a leaflet over half its ring */
  readonly leaflet: number;
}

export const TRICUSPID: RightValve = {
  hinges: [
    [507, 407],
    [475, 452],
  ],
  way: [0.815, 0.58],
  leaflet: 1.12,
};
export const PULMONARY: RightValve = {
  hinges: [
    [537, 341],
    [561, 355],
  ],
  way: [0.504, -0.864],
  leaflet: 1.05,
};

/** Openings through walls, from one lip to the other. */
export const MOUTHS: readonly (readonly [Spot, Spot])[] = [
  TRICUSPID.hinges,
  PULMONARY.hinges,
  [
    [449, 345],
    [469, 344],
  ],
  [
    [437, 441],
    [457, 446],
  ],
];

/** Heads of the papillary muscles, and where they grow out of the wall. */
export const RIGHT_PAPILLARY: readonly (readonly [head: Spot, root: Spot])[] = [
  [
    [548, 490],
    [572, 524],
  ],
  [
    [534, 462],
    [556, 466],
  ],
];

/** Blood on its way through the right heart and on to the lungs. */
export const RIGHT_HEART_VESSELS: readonly Vessel[] = [
  vessel(
    "rightPulmonaryArtery",
    ["right", "pulmonaryArtery"],
    26,
    "588 290, 556 272, 470 274, 408 282, 350 304",
    {
      behind: true,
    },
  ),
  vessel("svc", ["svc", "svc"], 28, "468 182, 464 250, 459 352", { joins: "upperCava" }),
  vessel("ivc", ["ivc", "ivc"], 30, "468 524, 462 488, 447 434", { joins: "lowerCava" }),
  vessel("fromUpperVein", ["svc", "svc"], 30, "459 346, 456 376, 468 402, 486 420", { painted: true }),
  vessel("fromLowerVein", ["ivc", "ivc"], 30, "446 440, 444 416, 460 408, 486 424", { painted: true }),
  vessel("throughRightVentricle", ["svc+ivc", "pulmonaryArtery"], 44, "484 422, 512 448, 548 498, 606 526", {
    painted: true,
  }),
  vessel(
    "throughOutflow",
    ["pulmonary", "pulmonaryArtery"],
    36,
    "596 524, 548 488, 524 446, 530 392, 549 350",
    {
      painted: true,
    },
  ),
  vessel("lungTrunk", ["pulmonary", "pulmonaryArtery"], 30, "546 352, 560 326, 580 298, 598 282", {
    joins: "pulmonaryTrunk",
  }),
  vessel("leftPulmonaryArtery", ["left", "pulmonaryArtery"], 26, "598 282, 610 276, 622 277, 636 287", {
    joins: "pulmonaryTrunk",
  }),
];
