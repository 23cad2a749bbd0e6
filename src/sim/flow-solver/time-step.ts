/**
 * One time step in plain code and double precision: the reference for the vector kernel, and used where that cannot run.
 * Explicit, staggered: central advection in the form that conserves energy (Verstappen & Veldman 2003) with damping of waves too short for
 * the grid, viscous links, pressure, implicit friction; then the pressure follows the divergence at a finite sound speed (Chorin 1967). The
 * divergence vanishes when the flow is steady.
 */
import type { GridSize, Reals, RowSpans, SolverArrays, StepSettings } from "./array-layout.ts";

/**
 * Advances all rows by one step of sound, in the units of array-layout.ts (m/s, m2/s2, cells). The first of `settings.soundSteps` works out
 * from uAhead and vAhead what advection and shear push; all of them move blood by that and by the pressure; after the last, uNext and vNext
 * hold the velocities extrapolated over half of the next such round, and the caller exchanges them.
 * @param part which of them, from 0
 */
export function timeStep(
  { nx, ny }: GridSize,
  spans: RowSpans,
  a: SolverArrays,
  settings: StepSettings,
  part: number,
): void {
  if (part === 0)
    for (let j = 2; j < ny - 2; j++) {
      const first = j * nx + spans[2 * j]!;
      const last = j * nx + spans[2 * j + 1]!;
      pushAcross(nx, first, last, a, settings);
      pushUp(nx, first, last, a, settings);
    }
  const [eastward, northward] = [across(a), up(a)];
  for (let j = 2; j < ny - 2; j++) {
    const first = j * nx + spans[2 * j]!;
    const last = j * nx + spans[2 * j + 1]!;
    moveRow(eastward, 1, [first, last], settings, part);
    moveRow(northward, nx, [first, last], settings, part);
    // A row's pressure may change once the faces above it are done: its old value is no longer needed.
    const below = j - 1;
    const from = below * nx + spans[2 * below]!;
    const to = below * nx + spans[2 * below + 1]!;
    pressureRow(nx, from, to, a, settings);
  }
}

function pushAcross(nx: number, first: number, last: number, a: SolverArrays, settings: StepSettings): void {
  const { uAhead, vAhead, uPush, westArea, southArea } = a;
  const { uThroughCell, uThroughCorner, uBeyond, uSmoothCell, uSmoothCorner } = a;
  const { viscosityOverDx: nu, upstream: eps } = settings;
  for (let k = first; k < last; k++) {
    const n = k + nx;
    const b = k - nx;
    const uk = uAhead[k]!;
    const uE = uAhead[k + 1]!;
    const uW = uAhead[k - 1]!;
    const uN = uAhead[n]!;
    const uS = uAhead[b]!;
    // Flow through the cell's middle and through its lower left corner, each the mean of two faces.
    const west = westArea[k]! * uk;
    const flowEast = 0.5 * (west + westArea[k + 1]! * uE);
    const flowWest = 0.5 * (west + westArea[k - 1]! * uW);
    const upCorner = 0.5 * (southArea[k - 1]! * vAhead[k - 1]! + southArea[k]! * vAhead[k]!);
    const upCornerNorth = 0.5 * (southArea[n - 1]! * vAhead[n - 1]! + southArea[n]! * vAhead[n]!);
    let advection =
      0.5 *
      (flowEast * uE -
        flowWest * uW +
        upCornerNorth * uN -
        upCorner * uS -
        uBeyond[k]! * uk * (flowEast - flowWest + upCornerNorth - upCorner));
    advection +=
      eps *
      (Math.abs(flowEast) * (uSmoothCell[k]! * (uAhead[k + 2]! - uW - 2.75 * (uE - uk)) - 0.25 * (uE - uk)) -
        Math.abs(flowWest) *
          (uSmoothCell[k - 1]! * (uE - uAhead[k - 2]! - 2.75 * (uk - uW)) - 0.25 * (uk - uW)) +
        Math.abs(upCornerNorth) *
          (uSmoothCorner[n]! * (uAhead[n + nx]! - uS - 2.75 * (uN - uk)) - 0.25 * (uN - uk)) -
        Math.abs(upCorner) *
          (uSmoothCorner[k]! * (uN - uAhead[b - nx]! - 2.75 * (uk - uS)) - 0.25 * (uk - uS)));
    const diffusion =
      uThroughCell[k]! * (uE - uk) -
      uThroughCell[k - 1]! * (uk - uW) +
      uThroughCorner[n]! * (uN - uk) -
      uThroughCorner[k]! * (uk - uS);
    uPush[k] = nu * diffusion - advection;
  }
}

function pushUp(nx: number, first: number, last: number, a: SolverArrays, settings: StepSettings): void {
  const { uAhead, vAhead, vPush, westArea, southArea } = a;
  const { vThroughCell, vThroughCorner, vBeyond, vSmoothCell, vSmoothCorner } = a;
  const { viscosityOverDx: nu, upstream: eps } = settings;
  for (let k = first; k < last; k++) {
    const n = k + nx;
    const b = k - nx;
    const vk = vAhead[k]!;
    const vE = vAhead[k + 1]!;
    const vW = vAhead[k - 1]!;
    const vN = vAhead[n]!;
    const vS = vAhead[b]!;
    const south = southArea[k]! * vk;
    const flowNorth = 0.5 * (south + southArea[n]! * vN);
    const flowSouth = 0.5 * (south + southArea[b]! * vS);
    const rightCorner = 0.5 * (westArea[b]! * uAhead[b]! + westArea[k]! * uAhead[k]!);
    const rightCornerEast = 0.5 * (westArea[b + 1]! * uAhead[b + 1]! + westArea[k + 1]! * uAhead[k + 1]!);
    let advection =
      0.5 *
      (rightCornerEast * vE -
        rightCorner * vW +
        flowNorth * vN -
        flowSouth * vS -
        vBeyond[k]! * vk * (rightCornerEast - rightCorner + flowNorth - flowSouth));
    advection +=
      eps *
      (Math.abs(rightCornerEast) *
        (vSmoothCorner[k + 1]! * (vAhead[k + 2]! - vW - 2.75 * (vE - vk)) - 0.25 * (vE - vk)) -
        Math.abs(rightCorner) *
          (vSmoothCorner[k]! * (vE - vAhead[k - 2]! - 2.75 * (vk - vW)) - 0.25 * (vk - vW)) +
        Math.abs(flowNorth) *
          (vSmoothCell[k]! * (vAhead[n + nx]! - vS - 2.75 * (vN - vk)) - 0.25 * (vN - vk)) -
        Math.abs(flowSouth) *
          (vSmoothCell[b]! * (vN - vAhead[b - nx]! - 2.75 * (vk - vS)) - 0.25 * (vk - vS)));
    const diffusion =
      vThroughCorner[k + 1]! * (vE - vk) -
      vThroughCorner[k]! * (vk - vW) +
      vThroughCell[k]! * (vN - vk) -
      vThroughCell[b]! * (vk - vS);
    vPush[k] = nu * diffusion - advection;
  }
}

/** One velocity's arrays. */
interface Moved {
  readonly now: Reals;
  readonly next: Reals;
  readonly push: Reals;
  readonly area: Reals;
  readonly inverse: Reals;
  readonly friction: Reals;
  readonly step: Reals;
  readonly pAhead: Reals;
}

const across = (a: SolverArrays): Moved => ({
  now: a.u,
  next: a.uNext,
  push: a.uPush,
  area: a.westArea,
  inverse: a.uInverse,
  friction: a.uFriction,
  step: a.uStep,
  pAhead: a.pAhead,
});

const up = (a: SolverArrays): Moved => ({
  now: a.v,
  next: a.vNext,
  push: a.vPush,
  area: a.southArea,
  inverse: a.vInverse,
  friction: a.vFriction,
  step: a.vStep,
  pAhead: a.pAhead,
});

/** Moves the faces `first` to `last` - 1, which lie between the cells k - `back` and k. */
function moveRow(
  { now, next, push, area, inverse, friction, step, pAhead }: Moved,
  back: number,
  [first, last]: readonly [number, number],
  { dtOverDx: s, viscosityOverDx: nu, soundSteps }: StepSettings,
  part: number,
): void {
  // After the last step: half a round ahead, at the pace of that step.
  const lead = part === soundSteps - 1 ? 0.5 * soundSteps : undefined;
  for (let k = first; k < last; k++) {
    const old = now[k]!;
    const slope = area[k]! * (pAhead[k]! - pAhead[k - back]!);
    const fresh =
      (old + s * inverse[k]! * (push[k]! - slope)) /
      (1 + s * nu * friction[k]! + s * Math.max(0, step[k]! * old));
    now[k] = fresh;
    if (lead !== undefined) next[k] = fresh + lead * (fresh - old);
  }
}

function pressureRow(nx: number, first: number, last: number, a: SolverArrays, settings: StepSettings): void {
  const { u, v, p, pAhead, westArea, southArea, pInverse } = a;
  const rate = settings.dtOverDx * settings.soundSpeedSquared;
  const ahead = settings.soundDamping;
  for (let k = first; k < last; k++) {
    const leaves =
      westArea[k + 1]! * u[k + 1]! -
      westArea[k]! * u[k]! +
      southArea[k + nx]! * v[k + nx]! -
      southArea[k]! * v[k]!;
    const change = -rate * pInverse[k]! * leaves;
    const pNew = p[k]! + change;
    p[k] = pNew;
    pAhead[k] = pNew + ahead * change;
  }
}
