/** Planes that several tests share: invented shapes, no patient's. */
import type { FlowGeometry } from "../../../src/sim/geometry/geometry.ts";

/** Two unequal inlets that don't face each other, two outlets. */
export const crossing = (shift = 3): FlowGeometry => ({
  open: [
    {
      tube: {
        points: [
          [0, -40],
          [0, 0],
        ],
        width: 18,
      },
    },
    {
      tube: {
        points: [
          [shift, 40],
          [shift, 0],
        ],
        width: 12,
      },
    },
    {
      tube: {
        points: [
          [-40, 0],
          [40, 0],
        ],
        width: 14,
      },
    },
  ],
  solid: [],
  openings: [
    { name: "lower", centre: [0, -40], normal: [0, -1], width: 18, velocity: 0.1 },
    { name: "upper", centre: [shift, 40], normal: [0, 1], width: 12, velocity: 0.1 },
    { name: "left", centre: [-40, 0], normal: [-1, 0], width: 14, pressure: 0 },
    { name: "right", centre: [40, 0], normal: [1, 0], width: 14, pressure: 0 },
  ],
});

/** A straight tube, tilted by `degrees`. */
export function tube(degrees: number, width: number, length: number, velocity: number): FlowGeometry {
  const c = Math.cos((degrees * Math.PI) / 180);
  const s = Math.sin((degrees * Math.PI) / 180);
  const end = [(c * length) / 2, (s * length) / 2] as const;
  const start = [-end[0], -end[1]] as const;
  return {
    open: [{ tube: { points: [start, end], width } }],
    solid: [],
    openings: [
      { name: "in", centre: start, normal: [-c, -s], width, velocity },
      { name: "out", centre: end, normal: [c, s], width, pressure: 0 },
    ],
  };
}
