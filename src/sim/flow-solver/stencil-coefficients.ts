/** Fills a solver's constant arrays from the cut-cell mesh: face areas, inverse volumes, viscous links, friction, step losses. */
import type { RowSpans, SolverArrays } from "./array-layout.ts";
import type { CutCellMesh } from "./cut-cell-mesh.ts";

/**
 * Drag of front and back walls, over nu u / D2. With the walls of the plane (cosh profile) it makes the developed friction that of a
 * round tube, 32: tanh(sqrt(K)/2)/(sqrt(K)/2) = 1 - K/32.
 */
export const ROUND_DRAG = 16.96;

/** Whether an opening's velocity or its pressure is given. */
export type OpeningRule = "velocity" | "pressure";

const dimension = (mesh: CutCellMesh, k: number): number => (4 / Math.PI) * mesh.depth[k]!;

/**
 * Fills all constant arrays of `a` in the units of array-layout.ts (cells, mm of depth); velocities and pressure are kept.
 * @param rules one for each opening
 * @param round the depth is that of round lumens: adds drag of the front and back walls, and step losses
 */
export function fillCoefficients(
  mesh: CutCellMesh,
  rules: readonly OpeningRule[],
  round: boolean,
  a: SolverArrays,
): void {
  for (const name of Object.keys(a) as (keyof SolverArrays)[])
    if (!["u", "v", "p", "uAhead", "vAhead", "uNext", "vNext", "pAhead"].includes(name)) a[name].fill(0);
  faceAreas(mesh, a);
  links(mesh, a);
  friction(mesh, round, a);
  if (round) stepLoss(mesh, a);
  inverses(mesh, rules, a);
  smoothLinks(mesh, a);
}

const INNER = 2;

function faceAreas({ nx, ny, west, south, depth }: CutCellMesh, a: SolverArrays): void {
  for (let j = 1; j < ny; j++)
    for (let i = 1; i < nx; i++) {
      const k = j * nx + i;
      a.westArea[k] = west[k]! * meanDepth(depth[k]!, depth[k - 1]!);
      a.southArea[k] = south[k]! * meanDepth(depth[k]!, depth[k - nx]!);
    }
}

/** Cells outside the blood have no depth and do not count. */
const meanDepth = (a: number, b: number): number => (a === 0 ? b : b === 0 ? a : 0.5 * (a + b));

/** Cells from the middle of a face's open part to the wall; 0 when closed. */
function reach(mesh: CutCellMesh, k: number, step: number, open: number): number {
  if (open === 0) return 0;
  const from = mesh.corner[k]!;
  const to = mesh.corner[k + step]!;
  if (open < 1) return Math.max(1e-3, (0.5 * Math.max(-from, -to)) / mesh.dx);
  return Math.max(1e-3, (-0.5 * (from + to)) / mesh.dx);
}

function links(mesh: CutCellMesh, a: SolverArrays): void {
  const { nx, ny, west, south, depth, corner } = mesh;
  for (let j = INNER; j < ny - INNER; j++)
    for (let i = INNER; i < nx - INNER; i++) {
      const k = j * nx + i;
      const deltaX = west[k + 1]! - west[k]!;
      const deltaY = south[k + nx]! - south[k]!;
      const size = Math.hypot(deltaX, deltaY);
      a.uThroughCell[k] =
        depth[k]! *
        0.5 *
        (west[k]! + west[k + 1]!) *
        slant(
          reach(mesh, k + 1, nx, west[k + 1]!) - reach(mesh, k, nx, west[k]!),
          size === 0 ? 0 : deltaX / size,
        );
      a.vThroughCell[k] =
        depth[k]! *
        0.5 *
        (south[k]! + south[k + nx]!) *
        slant(
          reach(mesh, k + nx, 1, south[k + nx]!) - reach(mesh, k, 1, south[k]!),
          size === 0 ? 0 : deltaY / size,
        );
      const h = meanAround(depth, nx, k);
      // A closed face represents the wall; two open parts separated by the wall have no link.
      const apart = corner[k]! > 0;
      if (linked(west[k]!, west[k - nx]!, apart))
        a.uThroughCorner[k] =
          (h * 0.5 * (south[k]! + south[k - 1]!)) / Math.max(0.25, 0.5 * (west[k]! + west[k - nx]!));
      if (linked(south[k]!, south[k - 1]!, apart))
        a.vThroughCorner[k] =
          (h * 0.5 * (west[k]! + west[k - nx]!)) / Math.max(0.25, 0.5 * (south[k]! + south[k - 1]!));
    }
}

/** Mean depth of the cells around a corner that have any. */
function meanAround(depth: Float64Array, nx: number, k: number): number {
  const [a, b, c, d] = [depth[k]!, depth[k - 1]!, depth[k - nx]!, depth[k - nx - 1]!];
  const count = (a > 0 ? 1 : 0) + (b > 0 ? 1 : 0) + (c > 0 ? 1 : 0) + (d > 0 ? 1 : 0);
  return (a + b + c + d) / Math.max(1, count);
}

const linked = (a: number, b: number, apart: boolean): boolean => (apart ? a > 0 !== b > 0 : a > 0 || b > 0);

/**
 * The middles of two open face parts beside a slanting wall lie on different lines; the link is scaled so that a velocity that grows
 * linearly from the wall feels its true slope. `change`: how much farther from the wall the second is; `along`: what it should be.
 */
function slant(change: number, along: number): number {
  if (along === 0 || Math.abs(change) < 0.05) return 1;
  return Math.min(2.5, Math.max(0.2, along / change));
}

function wallLength({ nx, west, south }: CutCellMesh, k: number): number {
  return Math.hypot(west[k + 1]! - west[k]!, south[k + nx]! - south[k]!);
}

function friction(mesh: CutCellMesh, round: boolean, a: SolverArrays): void {
  const { nx, ny, west, south, depth, dx } = mesh;
  for (let j = INNER; j < ny - INNER; j++)
    for (let i = INNER; i < nx - INNER; i++) {
      const k = j * nx + i;
      const own = wallLength(mesh, k);
      if (west[k]! > 0) {
        const length = 0.5 * (own + wallLength(mesh, k - 1));
        const h = meanDepth(depth[k]!, depth[k - 1]!);
        a.uFriction[k] = (h * length) / reach(mesh, k, nx, west[k]!);
        if (round) a.uFriction[k]! += drag(mesh, k, k - 1, dx, west[k]!);
      }
      if (south[k]! > 0) {
        const length = 0.5 * (own + wallLength(mesh, k - nx));
        const h = meanDepth(depth[k]!, depth[k - nx]!);
        a.vFriction[k] = (h * length) / reach(mesh, k, 1, south[k]!);
        if (round) a.vFriction[k]! += drag(mesh, k, k - nx, dx, south[k]!);
      }
    }
}

function drag(mesh: CutCellMesh, k: number, other: number, dx: number, open: number): number {
  const h = meanDepth(mesh.depth[k]!, mesh.depth[other]!);
  const volume = h * Math.max(open, 0.5 * (mesh.area[k]! + mesh.area[other]!));
  const d = mesh.depth[k]! > 0 ? dimension(mesh, k) : dimension(mesh, other);
  return ROUND_DRAG * volume * (dx / d) ** 2;
}

/**
 * Where the lumen widens in a step, blood loses what a sudden round expansion does (Borda-Carnot: (1 - A1/A2)2 of the dynamic pressure),
 * less what the plane's own widening loses. With x = h / narrow h: dL = 3 u2 (x - 1) / x2 dx, over however many cells the step is spread.
 */
function stepLoss(mesh: CutCellMesh, a: SolverArrays): void {
  const { nx, ny, depth, narrow } = mesh;
  const loss = (k: number, other: number): number => {
    if (depth[k] === 0 || depth[other] === 0) return 0;
    const base = Math.min(narrow[k]!, narrow[other]!);
    const from = depth[other]! / base;
    const to = depth[k]! / base;
    const middle = Math.max(1, 0.5 * (from + to));
    if (narrow[k] === depth[k] && narrow[other] === depth[other]) return 0;
    return (3 * (middle - 1) * (to - from)) / middle ** 2;
  };
  for (let j = INNER; j < ny - INNER; j++)
    for (let i = INNER; i < nx - INNER; i++) {
      const k = j * nx + i;
      a.uStep[k] = a.westArea[k]! * loss(k, k - 1);
      a.vStep[k] = a.southArea[k]! * loss(k, k - nx);
    }
}

function inverses(mesh: CutCellMesh, rules: readonly OpeningRule[], a: SolverArrays): void {
  const { nx, ny, west, south, depth, area, beyond } = mesh;
  const given = (k: number, other: number): boolean => {
    const here = beyond[k]!;
    const there = beyond[other]!;
    if (here < 0 && there < 0) return false;
    if (here >= 0 && there >= 0) return true;
    return rules[Math.max(here, there)] === "velocity";
  };
  for (let j = INNER; j < ny - INNER; j++)
    for (let i = INNER; i < nx - INNER; i++) {
      const k = j * nx + i;
      const uLinks =
        a.uThroughCell[k]! + a.uThroughCell[k - 1]! + a.uThroughCorner[k]! + a.uThroughCorner[k + nx]!;
      const vLinks =
        a.vThroughCell[k]! + a.vThroughCell[k - nx]! + a.vThroughCorner[k]! + a.vThroughCorner[k + 1]!;
      const uh = meanDepth(depth[k]!, depth[k - 1]!);
      const vh = meanDepth(depth[k]!, depth[k - nx]!);
      // A thin sliver gets more volume than it has: it reacts more slowly and reaches the same steady state.
      const uVolume = Math.max(a.westArea[k]!, 0.5 * uh * (area[k]! + area[k - 1]!), 0.25 * uLinks);
      const vVolume = Math.max(a.southArea[k]!, 0.5 * vh * (area[k]! + area[k - nx]!), 0.25 * vLinks);
      const closedU = west[k] === 0;
      const closedV = south[k] === 0;
      a.uInverse[k] = closedU || given(k, k - 1) ? 0 : 1 / uVolume;
      a.vInverse[k] = closedV || given(k, k - nx) ? 0 : 1 / vVolume;
      // From here on friction and loss are rates.
      if (!closedU) {
        a.uFriction[k]! *= a.uInverse[k]!;
        a.uStep[k]! *= a.uInverse[k]!;
      }
      if (!closedV) {
        a.vFriction[k]! *= a.vInverse[k]!;
        a.vStep[k]! *= a.vInverse[k]!;
      }
      const widest = Math.max(a.westArea[k]!, a.westArea[k + 1]!, a.southArea[k]!, a.southArea[k + nx]!);
      if (widest > 0 && beyond[k]! < 0) a.pInverse[k] = 1 / Math.max(depth[k]!, widest);
    }
}

/** Third differences need four velocities in a row, each of a face at least half open. */
function smoothLinks({ nx, ny, west, south, beyond }: CutCellMesh, a: SolverArrays): void {
  const whole = (open: Float64Array, k: number, step: number) =>
    open[k - step]! >= 0.5 && open[k]! >= 0.5 && open[k + step]! >= 0.5 && open[k + 2 * step]! >= 0.5 ? 1 : 0;
  const outside = (k: number) => (beyond[k]! >= 0 ? 1 : 0);
  for (let j = INNER; j < ny - INNER; j++)
    for (let i = INNER; i < nx - INNER; i++) {
      const k = j * nx + i;
      a.uBeyond[k] = outside(k) + outside(k - 1);
      a.vBeyond[k] = outside(k) + outside(k - nx);
      a.uSmoothCell[k] = whole(west, k, 1);
      a.vSmoothCell[k] = whole(south, k, nx);
      a.uSmoothCorner[k] = whole(west, k - nx, nx);
      a.vSmoothCorner[k] = whole(south, k - 1, 1);
    }
}

/** For each row the cells from the first to the last that touch blood, rounded out to even indices: [2*ny] first, last + 1. */
export function rowSpans({ nx, ny }: CutCellMesh, a: SolverArrays): RowSpans {
  const spans = new Int32Array(2 * ny);
  for (let j = INNER; j < ny - INNER; j++) {
    let first = nx;
    let last = 0;
    for (let i = INNER; i < nx - INNER; i++) {
      const k = j * nx + i;
      if (a.uInverse[k] === 0 && a.vInverse[k] === 0 && a.pInverse[k] === 0) continue;
      first = Math.min(first, i);
      last = i + 1;
    }
    if (first >= last) continue;
    spans[2 * j] = first - (first % 2);
    spans[2 * j + 1] = last + (last % 2);
  }
  return spans;
}
