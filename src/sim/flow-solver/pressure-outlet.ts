/** A pressure outlet from step to step: what is held beyond its plane so that the mean on the plane is the wanted one. */
import type { Reals, SolverArrays } from "./array-layout.ts";
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

/** Beyond a pressure outlet: what leaves continues unchanged; what enters has the developed profile, so that no jet feeds itself. */
function follow(
  [now, ahead, next]: readonly [Reals, Reals, Reals],
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
 * Holds a pressure outlet: its target, plus the impedance of sound times the fast part of its speed, so that waves leave and the mean
 * stays.
 * @param soundSpeed m/s
 * @param forget fraction of the slow mean that is renewed in one step
 * @param pushes this step works out what advection and shear push: for that alone the velocities beyond the outlet are wanted
 */
export function applyPressureOutlet(
  opening: SolverOpening,
  a: SolverArrays,
  soundSpeed: number,
  forget: number,
  pushes: boolean,
): void {
  const { held, heldShape, repeats, cells, cellBeyond } = opening;
  const flow = openingFlow(opening, a);
  if (pushes) {
    const entering = enteringPart(opening, a, flow);
    follow([a.u, a.uAhead, a.uNext], held.u, repeats.u, heldShape.u, { entering, flow });
    follow([a.v, a.vAhead, a.vNext], held.v, repeats.v, heldShape.v, { entering, flow });
  }
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

/** Pressure over density (m2/s2) where face `n` (index) of a pressure outlet meets the plane: between the cells on its two sides. */
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
 * How far the mean pressure on the plane is below what is held there, `pressure` growing by `slope` per cell beyond it: the effect of the
 * pressure gradient in the blood. Corrections for eddies are left out, so that they do not feed themselves.
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
 * An eddy across an opening would keep drawing itself in. Blood that enters faster than the opening's own inflow explains (twice its mean;
 * a parabola has 1.5) loses the pressure that it takes to accelerate it from rest.
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
