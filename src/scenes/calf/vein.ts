/**
 * The leg vein's shape at a moment: how far muscle narrows it, how far each valve stands open.
 * A plane of its own, y down; the heart lies upward. Below `height` the vein turns into the foot.
 */

import { entryAt } from "../../sim/checked/present.ts";
import type { Traces } from "../../sim/circulation/answer.ts";
import { valueAt } from "../drawing/trace-clock.ts";

export const PLANE = { height: 820, middle: 300 } as const;
/** Half the vein's width when nothing presses on it, wider than life so that its valves can be seen, and the share of it that full squeeze takes away. */
export const HALF = 30;
const GREATEST_NARROWING = 0.62;
/** Where muscle lies around the vein. */
export const CALF = { top: 300, bottom: 640 } as const;
/** Valves: their hinges' heights; the flow that opens them is that of the vein above (the way out) or below (the way in). */
export const VALVES = [
  { name: "upper", y: 250, flow: "out" },
  { name: "lower", y: 720, flow: "in" },
] as const;

/** 0..1: how hard the muscle squeezes now, against the hardest of the repeat; 0 when it rests all the time. */
export function squeezeAt(traces: Traces, seconds: number): number {
  const { calf } = traces.pressures;
  if (!calf) return 0;
  const most = calf.reduce((a, b) => Math.max(a, b), 0);
  return most < 0.05 ? 0 : Math.max(0, valueAt(traces, calf, seconds)) / most;
}

/** Half the vein's width at height `y`, plane units. */
export function halfWidth(y: number, squeeze: number): number {
  const along = (y - CALF.top) / (CALF.bottom - CALF.top);
  const pressed = along > 0 && along < 1 ? Math.sin(Math.PI * along) ** 0.7 : 0;
  const pocket = VALVES.reduce((sum, valve) => sum + Math.exp(-(((y - valve.y + 22) / 20) ** 2)), 0);
  return HALF * (1 - GREATEST_NARROWING * squeeze * pressed) + 10 * pocket;
}

export interface Leaflet {
  readonly hinge: readonly [number, number];
  readonly tip: readonly [number, number];
}

/** The two leaflets of a valve at height `y`: stiff, hinged at the wall, meeting in the middle when shut. */
export function leaflets(y: number, open: number): readonly [Leaflet, Leaflet] {
  const half = HALF;
  const length = half * 1.35;
  const reach = half * 0.8 * open;
  const rise = Math.sqrt(length ** 2 - (half - reach) ** 2);
  const side = (way: number): Leaflet => ({
    hinge: [PLANE.middle + way * half, y],
    tip: [PLANE.middle + way * reach, y - rise],
  });
  return [side(-1), side(1)];
}

/** Where a leaflet grows out of the wall: its lower and its upper end. @param side -1 left, 1 right */
export const leafletBase = (y: number, side: -1 | 1): readonly [Leaflet["hinge"], Leaflet["hinge"]] => {
  const onWall = (at: number) => [PLANE.middle + side * halfWidth(at, 0), at] as const;
  return [onWall(y + 10), onWall(y - 8)];
};

/** Half the width that blood can use at height `y`, between leaflets where there are any. */
export function freeHalfWidth(y: number, squeeze: number, open: readonly number[]): number {
  const wall = halfWidth(y, squeeze);
  return VALVES.reduce((free, valve, i) => {
    const [, right] = leaflets(valve.y, entryAt(open, i));
    const along = (valve.y - y) / (valve.y - right.tip[1]);
    if (along < 0 || along > 1) return free;
    const gap = right.hinge[0] + (right.tip[0] - right.hinge[0]) * along - PLANE.middle;
    return Math.min(free, Math.max(3, gap));
  }, wall);
}
