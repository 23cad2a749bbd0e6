/** Invented planes on which the field is compared with itself on finer grids: rounded and sharp corners, unequal inlets, off-axis tubes, a chamber, a side hole, an obstacle. */
import type { FlowGeometry, Opening, Point, Shape } from "../../sim/geometry/geometry.ts";

export interface ValidationPlane {
  readonly name: string;
  /** mm: the width across which cells are counted */
  readonly narrowest: number;
  readonly geometry: FlowGeometry;
}

const tube = (width: number | readonly number[], ...points: Point[]): Shape => ({ tube: { points, width } });
const polygon = (...points: Point[]): Shape => ({ polygon: { points } });
const opening = (
  name: string,
  centre: Point,
  normal: Point,
  width: number,
  given: { velocity: number } | { pressure: number },
): Opening => ({ name, centre, normal, width, ...given });

const LEFT: Point = [-1, 0];
const RIGHT: Point = [1, 0];
const DOWN: Point = [0, -1];
const UP: Point = [0, 1];

export const VALIDATION_PLANES: readonly ValidationPlane[] = [
  {
    name: "sharp step, one side (8 to 16 mm), polygon",
    narrowest: 8,
    geometry: {
      open: [polygon([-20, 0], [0, 0], [0, -8], [50, -8], [50, 8], [-20, 8])],
      solid: [],
      openings: [
        opening("in", [-20, 4], LEFT, 8, { velocity: 0.08 }),
        opening("out", [50, 0], RIGHT, 16, { pressure: 0 }),
      ],
    },
  },
  {
    name: "sharp narrowing (16 to 8 mm), polygon",
    narrowest: 8,
    geometry: {
      open: [polygon([-25, -8], [0, -8], [0, -4], [35, -4], [35, 4], [0, 4], [0, 8], [-25, 8])],
      solid: [],
      openings: [
        opening("in", [-25, 0], LEFT, 16, { velocity: 0.03 }),
        opening("out", [35, 0], RIGHT, 8, { pressure: 0 }),
      ],
    },
  },
  {
    name: "sharp right angle, polygon",
    narrowest: 10,
    geometry: {
      open: [polygon([-30, -5], [5, -5], [5, 40], [-5, 40], [-5, 5], [-30, 5])],
      solid: [],
      openings: [
        opening("in", [-30, 0], LEFT, 10, { velocity: 0.06 }),
        opening("out", [0, 40], UP, 10, { pressure: 0 }),
      ],
    },
  },
  {
    name: "right angle rounded by a disc",
    narrowest: 10,
    geometry: {
      open: [tube(10, [-30, 0], [0, 0], [0, 35]), { disc: { centre: [-1, 1], radius: 7 } }],
      solid: [],
      openings: [
        opening("in", [-30, 0], LEFT, 10, { velocity: 0.08 }),
        opening("out", [0, 35], UP, 10, { pressure: 0 }),
      ],
    },
  },
  {
    name: "unequal inlets (14 and 10 mm), off axis, into 12 mm",
    narrowest: 10,
    geometry: {
      open: [tube(14, [0, -35], [0, 0]), tube(10, [4, 35], [4, 0]), tube(12, [-35, 0], [40, 0])],
      solid: [],
      openings: [
        opening("lower", [0, -35], DOWN, 14, { velocity: 0.04 }),
        opening("upper", [4, 35], UP, 10, { velocity: 0.04 }),
        opening("left", [-35, 0], LEFT, 12, { pressure: 0 }),
        opening("right", [40, 0], RIGHT, 12, { pressure: 0 }),
      ],
    },
  },
  {
    name: "slanting branch, unequal outlet pressures",
    narrowest: 10,
    geometry: {
      open: [tube(12, [-30, 0], [40, 0]), tube(10, [0, 0], [21, 28])],
      solid: [],
      openings: [
        opening("in", [-30, 0], LEFT, 12, { velocity: 0.06 }),
        opening("straight", [40, 0], RIGHT, 12, { pressure: 0 }),
        opening("branch", [21, 28], [0.6, 0.8], 10, { pressure: -0.02 }),
      ],
    },
  },
  {
    name: "disc chamber of 36 mm between unequal tubes, off axis",
    narrowest: 10,
    geometry: {
      open: [
        tube(10, [-45, -6], [0, -6]),
        tube(14, [0, 4], [45, 4]),
        { disc: { centre: [0, 0], radius: 18 } },
      ],
      solid: [],
      openings: [
        opening("in", [-45, -6], LEFT, 10, { velocity: 0.05 }),
        opening("out", [45, 4], RIGHT, 14, { pressure: 0 }),
      ],
    },
  },
  {
    name: "side hole of 5 mm held at another pressure",
    narrowest: 5,
    geometry: {
      open: [tube(12, [-25, 0], [35, 0]), tube(5, [0, 0], [0, 14])],
      solid: [],
      openings: [
        opening("in", [-25, 0], LEFT, 12, { velocity: 0.05 }),
        opening("out", [35, 0], RIGHT, 12, { pressure: 0 }),
        opening("hole", [0, 14], UP, 5, { pressure: -0.05 }),
      ],
    },
  },
  {
    name: "tube narrowed from 12 to 7 mm",
    narrowest: 7,
    geometry: {
      open: [tube([12, 12, 7, 12, 12], [-25, 0], [-10, 0], [0, 0], [10, 0], [45, 0])],
      solid: [],
      openings: [
        opening("in", [-25, 0], LEFT, 12, { velocity: 0.05 }),
        opening("out", [45, 0], RIGHT, 12, { pressure: 0 }),
      ],
    },
  },
  {
    name: "ellipse with an obstacle between off-axis tubes",
    narrowest: 10,
    geometry: {
      open: [
        tube(10, [-40, 3], [0, 3]),
        tube(10, [0, -2], [45, -2]),
        { ellipse: { centre: [0, 0], radii: [20, 14], angle: 20 } },
      ],
      solid: [{ disc: { centre: [2, 2], radius: 4 } }],
      openings: [
        opening("in", [-40, 3], LEFT, 10, { velocity: 0.05 }),
        opening("out", [45, -2], RIGHT, 10, { pressure: 0 }),
      ],
    },
  },
];
