/** A pressure opening from step to step: what is held beyond its plane, and the mean that makes of it on the plane. */
import type { SolverArrays } from "./array-layout.ts";
import { type Crossing, openingFlow, type SolverOpening } from "./openings.ts";

/** 1 when blood only enters, 0 when more leaves than enters (an eddy may still draw some in). `flow`: net, into the blood. */
function enteringPart({ crossing }: SolverOpening, a: SolverArrays, flow: number): number {
  if (flow <= 0) return 0;
  const { face, vertical, into } = crossing;
  let enters = 0;
  for (let n = 0; n < face.length; n++) {
    const k = face[n]!;
    enters += Math.max(0, into[n]! * (vertical[n] ? a.southArea[k]! * a.v[k]! : a.westArea[k]! * a.u[k]!));
  }
  return flow / enters;
}

/** Beyond a pressure opening: what leaves goes on as it is; what enters comes with the developed profile, lest a jet feed itself. */
function follow(
  [now, ahead, next]: readonly [Float64Array, Float64Array, Float64Array],
  held: Int32Array,
  repeats: Int32Array,
  shape: Float64Array,
  { entering, flow }: { readonly entering: number; readonly flow: number },
): void {
  for (let n = 0; n < held.length; n++) {
    const k = held[n]!;
    const from = repeats[n]!;
    const given = entering * flow * shape[n]!;
    now[k] = given + (1 - entering) * now[from]!;
    ahead[k] = next[k] = given + (1 - entering) * ahead[from]!;
  }
}

/**
 * Holds a pressure opening: its target, plus the impedance of sound times the quick part of its speed, so that waves leave and the mean
 * stays. `soundSpeed` m/s; `forget`: part of the slow mean renewed in one step.
 */
export function applyPressureOutlet(
  opening: SolverOpening,
  a: SolverArrays,
  soundSpeed: number,
  forget: number,
): void {
  const { held, heldShape, repeats, cells, cellBeyond } = opening;
  const flow = openingFlow(opening, a);
  const entering = enteringPart(opening, a, flow);
  follow([a.u, a.uAhead, a.uNext], held.u, repeats.u, heldShape.u, { entering, flow });
  follow([a.v, a.vAhead, a.vNext], held.v, repeats.v, heldShape.v, { entering, flow });
  const outward = -flow / opening.area;
  if (opening.wanted === undefined) opening.slowSpeed += forget * (outward - opening.slowSpeed);
  else {
    opening.slowSpeed = opening.wanted;
    opening.target += forget * soundSpeed * (outward - opening.wanted);
  }
  const pressure = opening.target + opening.shift + soundSpeed * (outward - opening.slowSpeed);
  const slope = opening.slope * outward;
  if (opening.wanted === undefined)
    opening.shift += forget * (shortfall(opening, a, pressure, slope) - opening.shift);
  for (let n = 0; n < cells.length; n++) {
    const k = cells[n]!;
    a.p[k] = a.pAhead[k] = pressure + cellBeyond[n]! * slope;
  }
  keepEddiesTame(opening, a, Math.max(0, -outward));
}

/** Pressure over density (m2/s2) where face `n` of a pressure opening meets the plane: between the cells on its two sides. */
export function pressureOnPlane(crossing: Crossing, a: SolverArrays, n: number): number {
  return onPlane(crossing, n, a.p[crossing.inside[n]!]!, a.p[crossing.outside[n]!]!);
}

function onPlane(
  { insideBeyond, outsideBeyond }: Crossing,
  n: number,
  inside: number,
  outside: number,
): number {
  const from = insideBeyond[n]!;
  // A lumen that runs past the opening's side is not crossed by its plane.
  if (from > 0) return outside;
  return inside + ((outside - inside) * -from) / (outsideBeyond[n]! - from);
}

/**
 * How far the mean pressure on the plane stays behind what is held there, `pressure` growing by `slope` per cell beyond it: what the flow's
 * own slope in the blood makes of it. Payments of eddies are left out, lest they feed themselves.
 */
function shortfall({ crossing }: SolverOpening, a: SolverArrays, pressure: number, slope: number): number {
  const { face, vertical, inside, outsideBeyond } = crossing;
  let open = 0;
  let sum = 0;
  for (let n = 0; n < face.length; n++) {
    const area = vertical[n] ? a.southArea[face[n]!]! : a.westArea[face[n]!]!;
    open += area;
    sum += area * onPlane(crossing, n, a.p[inside[n]!]!, pressure + outsideBeyond[n]! * slope);
  }
  return open > 0 ? pressure - sum / open : 0;
}

/**
 * An eddy that sits across an opening would draw itself in without end. Blood that enters faster than the opening's own inflow explains
 * (twice its mean; a parabola has 1.5) pays for its speed with its pressure, as if drawn from rest.
 */
function keepEddiesTame({ crossing }: SolverOpening, a: SolverArrays, meanInward: number): void {
  const { face, vertical, into, outside } = crossing;
  for (let n = 0; n < face.length; n++) {
    const k = face[n]!;
    const inward = into[n]! * (vertical[n] ? a.v[k]! : a.u[k]!) - 2 * meanInward;
    if (inward <= 0) continue;
    const cell = outside[n]!;
    a.p[cell]! -= 0.5 * inward * inward;
    a.pAhead[cell] = a.p[cell]!;
  }
}
