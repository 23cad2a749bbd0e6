/**
 * The deep leg vein's shape at a moment: how far muscle narrows it, how far each valve stands open. Places are given by
 * the way along it from the thigh to the sole, and by the distance from its middle, positive towards the shin.
 */

import { entryAt } from "../../sim/checked/present.ts";
import type { Traces } from "../../sim/circulation/answer/answer.ts";
import { curve, placeOn, type Spot, spots } from "../drawing/curve-drawing.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import { turned } from "./foot.ts";

/** Behind the condyles, in front of soleus, behind the inner malleolus and along the sole; plane units as in leg-parts.ts. */
const AXIS = curve(
  spots(
    "250 0, 246 60, 243 120, 246 190, 250 260, 250 340, 250 420, 251 500, 254 580, 260 660, 267 730, 275 790, 284 838, 304 884, 344 916, 400 932, 462 934, 524 944, 584 962, 630 970",
  ),
);
export const LENGTH = AXIS.length;
/** By which veins are drawn wider than life, so that their valves can be seen. */
export const WIDER = 2.5;
/**
 * mm across, from the thigh down: popliteal vein (6 to 9; lying down 6.4 to 6.8 in the mean, Hertzberg, AJR 168:1253, 1997), the larger posterior
 * tibial vein at the ankle (2 to 4, from memory), and the sole's. Plane units are half a millimetre.
 */
const WIDTHS = [
  { at: 230, mm: 7 },
  { at: 728, mm: 4 },
  { at: LENGTH, mm: 0.6 },
] as const;
/** The share of its width that pressing takes away at most. */
const GREATEST_NARROWING = 0.62;
/** Where muscle lies around the vein. */
export const CALF = { top: 306, bottom: 670 } as const;
/**
 * Valves: where their cusps spring from the wall; the flow that opens them is that of the vein above (the way out) or below (the way in).
 * First the two next to the squeezed stretch. A popliteal vein has none to four (Moore, J Anat 2011;219:439), a posterior tibial one 8 to
 * 19 (from memory): those that stand within the squeezed stretch, and most at the ankle, are left out.
 */
export const VALVES = [
  { at: 316, flow: "out" },
  { at: 656, flow: "in" },
  { at: 246, flow: "out" },
  { at: 742, flow: "in" },
] as const;

/** How far a valve stands open (0..1) under which it counts as shut. */
const SHUT = 0.05;
/** L/min under which blood stands still. */
export const STANDS = 0.02;
/** Cusps take a twentieth of a second to be pushed open, and a quarter of one to fall shut, in which blood stands still between them. */
export type ValveStands = "opening" | "open" | "closing" | "shut";
/** @param flow through it, L/min */
export const standsOf = (open: number, flow: number): ValveStands =>
  flow < STANDS ? (open < SHUT ? "shut" : "closing") : open < SHUT ? "opening" : "open";

/** Half the vein's width between its valves' bulges when nothing presses on it, plane units. */
export function freeHalf(at: number): number {
  const next = WIDTHS.findIndex((each) => at < each.at);
  const { at: to, mm } = entryAt(WIDTHS, next < 0 ? WIDTHS.length - 1 : next);
  const before = next > 0 ? entryAt(WIDTHS, next - 1) : { at: to - 1, mm };
  const part = next < 0 ? 1 : Math.max(0, (at - before.at) / (to - before.at));
  return WIDER * (before.mm + (mm - before.mm) * part);
}
export const HALF = freeHalf(0);

const out = new Float64Array(4);

/** The place on the leg's plane, and the direction of the blood there (a unit vector). @param turn of the foot, radians */
export function placeInLeg(at: number, across: number, turn = 0): { readonly spot: Spot; readonly up: Spot } {
  placeOn(AXIS, at / LENGTH, out);
  const [x, y, dx, dy] = [entryAt(out, 0), entryAt(out, 1), entryAt(out, 2), entryAt(out, 3)];
  const spot: Spot = [x + dy * across, y - dx * across];
  return { spot: turn === 0 ? spot : turned(spot, turn), up: [-dx, -dy] };
}

/** mmHg under which a muscle rests. */
const RESTS = 0.05;
/** mmHg: the muscle's hardest squeeze of the cycle; 0 when it rests all the time. */
export function hardestOf({ pressures: { calf } }: Traces): number {
  const most = calf?.reduce((a, b) => Math.max(a, b), 0) ?? 0;
  return most < RESTS ? 0 : most;
}

/** 0..1: how hard the muscle squeezes now, against its hardest squeeze. */
export function squeezeAt(traces: Traces, seconds: number): number {
  const [most, { calf }] = [hardestOf(traces), traces.pressures];
  return most === 0 || !calf ? 0 : Math.max(0, valueAt(traces, calf, seconds)) / most;
}

/** mmHg outside a vein that take away 63 % of the greatest narrowing (1 - 1/e); veins collapse within some tens of mmHg, from memory. */
const FLATTENS = 30;
/** 0..1: how far the muscle's pressure flattens the vein now. */
export function pressedAt(traces: Traces, seconds: number): number {
  const { calf } = traces.pressures;
  return calf ? 1 - Math.exp(-Math.max(0, valueAt(traces, calf, seconds)) / FLATTENS) : 0;
}

/** mmHg that flatten the vein so far. */
export const pressing = (pressed: number): number => -FLATTENS * Math.log(1 - pressed);

/** Half the vein's width, plane units. */
export function halfWidth(at: number, pressed: number): number {
  return freeHalf(at) - narrowing(at, pressed) + VALVES.reduce((sum, valve) => sum + sinus(valve, at), 0);
}

/** Plane units by which muscle presses the wall in. */
export function narrowing(at: number, pressed: number): number {
  const along = (at - CALF.top) / (CALF.bottom - CALF.top);
  return along > 0 && along < 1
    ? freeHalf(at) * GREATEST_NARROWING * pressed * Math.sin(Math.PI * along) ** 1.4
    : 0;
}

/** The wall bulges behind the cusps: at once above where they spring from it, and gently back beyond their edges. */
function sinus(valve: (typeof VALVES)[number], at: number): number {
  const half = freeHalf(valve.at);
  const above = ((valve.at - at) * HALF) / half;
  return (3.6 + 0.5 * half) * Math.exp(-(Math.abs((above - 21) / (above < 21 ? 16 : 29)) ** 2.6));
}

/** A cusp in section: where it springs from the wall, what draws its root and its belly, and its free edge. */
export type Cusp = readonly [wall: Spot, root: Spot, belly: Spot, edge: Spot];
/** How far downstream of its hinge a cusp's free edge lies, shut and open, over half the vein: of one length, two that are shut lean on each other; and how far both meet on the wall. */
const [SHUT_RISE, OPEN_RISE] = [1.33, 1.87];
export const MEET = 1.1;

/** Part of half the vein's width at which an open cusp's edge floats in the stream: cusps never lie against the wall (Lurie et al., J Vasc Surg 2003, from memory). */
const FLOATS = 0.64;

/** One of a valve's two cusps, the other its mirror image: [distance from the middle, way along]. Shut, it sags into a pocket and leans on the other one; open, it leaves the wall in a curve and runs with the stream, the sinus behind it. */
export function cuspOf(at: number, open: number): Cusp {
  const half = freeHalf(at);
  const reach = half * FLOATS * open;
  const rise = half * (OPEN_RISE - (OPEN_RISE - SHUT_RISE) * (1 - open) ** 2.2);
  const mix = (shut: number, wide: number) => shut + (wide - shut) * open;
  return [
    [half, at + 0.115 * half * open],
    [mix(0.74, 0.98) * half, at + mix(0.2 * half, -0.3 * rise)],
    [mix(0, 0.58) * half, at + mix(0.1 * half, -0.5 * rise)],
    [reach, at - rise],
  ];
}

/** A place on the cusp, from its wall (0) to its edge (1). */
export function onCusp([wall, root, belly, edge]: Cusp, t: number): Spot {
  const s = 1 - t;
  const along = (i: 0 | 1) =>
    wall[i] * s ** 3 + 3 * root[i] * t * s * s + 3 * belly[i] * t * t * s + edge[i] * t ** 3;
  return [along(0), along(1)];
}

const HALVINGS = 12;

/** Half the width that blood can use, between the cusps where there are any. */
export function freeHalfWidth(at: number, pressed: number, open: readonly number[]): number {
  const wall = halfWidth(at, pressed);
  return VALVES.reduce((free, valve, i) => {
    const cusp = cuspOf(valve.at, entryAt(open, i));
    if (at > valve.at || at < cusp[3][1]) return free;
    let [low, high] = [0, 1];
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (low + high) / 2;
      if (onCusp(cusp, middle)[1] > at) low = middle;
      else high = middle;
    }
    return Math.min(free, Math.max(3, onCusp(cusp, low)[0]));
  }, wall);
}
