/** Where the valves' leaflets stand between shut and open: sickles that turn about their hinges, in the ventricle's own lengths. */
import type { Point } from "../../sim/geometry/geometry.ts";
import { ATRIOVENTRICULAR, type Ring, SEMILUNAR } from "./heart-shape.ts";
import type { Standing } from "./standing.ts";

export interface Leaflet {
  readonly valve: "atrioventricular" | "semilunar";
  /** across the base */
  readonly hinge: number;
  readonly length: number;
  /** 1 at the lower hinge, -1 at the upper one */
  readonly side: 1 | -1;
  /** rad from the base's line, towards the apex: shut and open */
  readonly shut: number;
  readonly open: number;
  /** greatest bow towards the apex, of its length */
  readonly belly: number;
  /** shut, its hinge at the origin and its free edge along y */
  readonly sickle: readonly Point[];
}

const pair = (
  valve: Leaflet["valve"],
  { from, to }: Ring,
  [shut, open]: readonly [shut: number, open: number],
  belly: number,
): readonly Leaflet[] =>
  ([1, -1] as const).map((side) => {
    const length = ((to - from) / 2 / Math.cos(shut)) * 1.04;
    return {
      valve,
      hinge: side === 1 ? from : to,
      length,
      side,
      shut,
      open,
      belly,
      sickle: sickleOf(length, belly, side),
    };
  });

/** Thick at the hinge, with a belly towards the apex, thin at the free edge. */
function sickleOf(length: number, belly: number, side: 1 | -1): readonly Point[] {
  const back: Point[] = [];
  const front: Point[] = [];
  for (let k = 0; k <= 12; k++) {
    const t = k / 12;
    const bow = bowAt(length, belly, t);
    const half = 0.6 * (1 - t) + 0.3 + 0.2 * Math.sin(Math.PI * t);
    back.push([bow - half, side * length * t]);
    front.push([bow + half, side * length * t]);
  }
  return [...back, ...front.reverse()];
}

/** The inlet's meet a little below the base; the outflow's bulge back towards the ventricle and open along the aorta. */
export const LEAFLETS: readonly Leaflet[] = [
  ...pair("atrioventricular", ATRIOVENTRICULAR, [0.5, 1.28], 0.16),
  ...pair("semilunar", SEMILUNAR, [-0.3, -1.2], 0.2),
];

/** rad, anticlockwise, by which a leaflet's sickle is turned. */
export const turnOf = (
  { valve, shut, open, side }: Leaflet,
  standing: Pick<Standing, Leaflet["valve"]>,
): number => -side * (shut + (open - shut) * standing[valve]);

/** Where its middle line is at a part of the way from the hinge (0) to the free edge (1). */
export function leafletAt(leaflet: Leaflet, standing: Pick<Standing, Leaflet["valve"]>, part: number): Point {
  const { length, belly, side, hinge } = leaflet;
  const turn = turnOf(leaflet, standing);
  const [x, y] = [bowAt(length, belly, part), side * length * part];
  return [x * Math.cos(turn) - y * Math.sin(turn), hinge + x * Math.sin(turn) + y * Math.cos(turn)];
}

function bowAt(length: number, belly: number, part: number): number {
  return belly * length * 4 * part * (1 - part);
}
