/**
 * One time step on a GPU: ../time-step.ts in single precision with what rounding leaves of the velocities kept, as the vector
 * kernel does. A group of 8 x 8 threads works out the velocities of its cells and hands them to its 7 x 7 pressures, so that one pass over
 * the cells is enough. Reads one copy of the flow and writes the other.
 */
import { COEFFICIENTS, FLOW } from "./layout.ts";

/** Cells along a side of a group's velocities; one less of its pressures. */
export const TILE = 8;

const places = (names: readonly string[], prefix: string): string =>
  names.map((name, place) => `const ${prefix}${name} = ${place}u;`).join("\n");

/** The same in both passes. */
export const SHARED_WGSL = `
struct Settings {
  nx: u32,
  count: u32,
  openings: u32,
  // Always 0, but the compiler doesn't know.
  nothing: u32,
  step: f32,
  shear: f32,
  rate: f32,
  damping: f32,
  upstream: f32,
  sound: f32,
  forget: f32,
  spare: f32,
}
${places(FLOW, "f_")}

/** Keeps the compiler from simplifying (a + b) - a to b. */
fn rounded(value: f32, nothing: u32) -> f32 {
  return bitcast<f32>(bitcast<u32>(value) ^ nothing);
}
`;

export const STEP_WGSL = `${SHARED_WGSL}
${places(COEFFICIENTS, "c_")}
@group(0) @binding(0) var<uniform> settings: Settings;
@group(0) @binding(1) var<storage, read> tiles: array<u32>;
@group(0) @binding(2) var<storage, read> fixed: array<f32>;
@group(0) @binding(3) var<storage, read> before: array<f32>;
@group(0) @binding(4) var<storage, read_write> after: array<f32>;

var<workgroup> across: array<f32, ${TILE * TILE}>;
var<workgroup> upward: array<f32, ${TILE * TILE}>;

fn c(which: u32, k: u32) -> f32 { return fixed[which * settings.count + k]; }
fn was(which: u32, k: u32) -> f32 { return before[which * settings.count + k]; }
fn put(which: u32, k: u32, value: f32) { after[which * settings.count + k] = value; }
fn flag(k: u32, bit: u32) -> f32 { return f32((u32(c(c_flags, k)) >> bit) & 1u); }
fn two(k: u32, bit: u32) -> f32 { return f32((u32(c(c_flags, k)) >> bit) & 3u); }

/** Between two velocities that differ by d: shear over the link, less damping of waves too short for the grid; flow is twice the flow. */
fn flux(d: f32, wide: f32, link: f32, free: f32, flow: f32) -> f32 {
  let eps = settings.upstream;
  let bent = free * (0.5 * eps * wide - 1.375 * eps * d) - 0.125 * eps * d;
  return settings.shear * link * d - abs(flow) * bent;
}

struct Kept { value: f32, low: f32, ahead: f32 }

/** Adds a change to a velocity, with what earlier changes left over. */
fn keep(old: f32, low: f32, change: f32) -> Kept {
  let whole = low + change;
  let fresh = rounded(old + whole, settings.nothing);
  let taken = rounded(fresh - old, settings.nothing);
  return Kept(fresh, whole - taken, fresh + 0.5 * taken);
}

fn held(friction: f32, loss: f32, old: f32) -> f32 {
  return settings.step * settings.shear * friction + settings.step * max(0.0, loss * old);
}

fn moved(push: f32, inverse: f32, hold: f32, old: f32) -> f32 {
  return (settings.step * inverse * push - hold * old) / (1.0 + hold);
}

fn stepAcross(k: u32) -> Kept {
  let nx = settings.nx;
  let n = k + nx;
  let b = k - nx;
  let here = was(f_uAhead, k);
  let east = was(f_uAhead, k + 1u);
  let west = was(f_uAhead, k - 1u);
  let north = was(f_uAhead, n);
  let south = was(f_uAhead, b);
  let through = c(c_westArea, k) * here;
  let flowEast = through + c(c_westArea, k + 1u) * east;
  let flowWest = through + c(c_westArea, k - 1u) * west;
  let flowNorth = c(c_southArea, n - 1u) * was(f_vAhead, n - 1u) + c(c_southArea, n) * was(f_vAhead, n);
  let flowSouth = c(c_southArea, k - 1u) * was(f_vAhead, k - 1u) + c(c_southArea, k) * was(f_vAhead, k);
  var push = flux(east - here, was(f_uAhead, k + 2u) - west, c(c_uThroughCell, k), flag(k, 0u), flowEast)
    - flux(here - west, east - was(f_uAhead, k - 2u), c(c_uThroughCell, k - 1u), flag(k - 1u, 0u), flowWest)
    + (flux(north - here, was(f_uAhead, n + nx) - south, c(c_uThroughCorner, n), flag(n, 1u), flowNorth)
    - flux(here - south, north - was(f_uAhead, b - nx), c(c_uThroughCorner, k), flag(k, 1u), flowSouth));
  let grows = (flowEast - flowWest) + (flowNorth - flowSouth);
  let carried = (flowEast * east - flowWest * west) + (flowNorth * north - flowSouth * south)
    - two(k, 4u) * here * grows;
  push = push - 0.25 * carried - c(c_westArea, k) * (was(f_pAhead, k) - was(f_pAhead, k - 1u));
  let old = was(f_u, k);
  let hold = held(c(c_uFriction, k), c(c_uStep, k), old);
  return keep(old, was(f_uLow, k), moved(push, c(c_uInverse, k), hold, old));
}

fn stepUp(k: u32) -> Kept {
  let nx = settings.nx;
  let n = k + nx;
  let b = k - nx;
  let here = was(f_vAhead, k);
  let east = was(f_vAhead, k + 1u);
  let west = was(f_vAhead, k - 1u);
  let north = was(f_vAhead, n);
  let south = was(f_vAhead, b);
  let through = c(c_southArea, k) * here;
  let flowNorth = through + c(c_southArea, n) * north;
  let flowSouth = through + c(c_southArea, b) * south;
  let flowWest = c(c_westArea, b) * was(f_uAhead, b) + c(c_westArea, k) * was(f_uAhead, k);
  let flowEast = c(c_westArea, b + 1u) * was(f_uAhead, b + 1u) + c(c_westArea, k + 1u) * was(f_uAhead, k + 1u);
  var push = flux(east - here, was(f_vAhead, k + 2u) - west, c(c_vThroughCorner, k + 1u), flag(k + 1u, 3u), flowEast)
    - flux(here - west, east - was(f_vAhead, k - 2u), c(c_vThroughCorner, k), flag(k, 3u), flowWest)
    + (flux(north - here, was(f_vAhead, n + nx) - south, c(c_vThroughCell, k), flag(k, 2u), flowNorth)
    - flux(here - south, north - was(f_vAhead, b - nx), c(c_vThroughCell, b), flag(b, 2u), flowSouth));
  let grows = (flowEast - flowWest) + (flowNorth - flowSouth);
  let carried = (flowEast * east - flowWest * west) + (flowNorth * north - flowSouth * south)
    - two(k, 6u) * here * grows;
  push = push - 0.25 * carried - c(c_southArea, k) * (was(f_pAhead, k) - was(f_pAhead, b));
  let old = was(f_v, k);
  let hold = held(c(c_vFriction, k), c(c_vStep, k), old);
  return keep(old, was(f_vLow, k), moved(push, c(c_vInverse, k), hold, old));
}

@compute @workgroup_size(${TILE}, ${TILE})
fn step(@builtin(workgroup_id) group: vec3u, @builtin(local_invocation_id) at: vec3u) {
  let k = tiles[group.x] + at.y * settings.nx + at.x;
  let place = at.y * ${TILE}u + at.x;
  let own = at.x < ${TILE - 1}u && at.y < ${TILE - 1}u;
  // A tile that reaches past its rows' ends does the next rows' first cells once more, with the same result.
  let there = k < settings.count;
  var u = Kept(0.0, 0.0, 0.0);
  var v = Kept(0.0, 0.0, 0.0);
  if (there) {
    u = Kept(was(f_u, k), 0.0, was(f_u, k));
    v = Kept(was(f_v, k), 0.0, was(f_v, k));
    if (c(c_uInverse, k) > 0.0) { u = stepAcross(k); }
    if (c(c_vInverse, k) > 0.0) { v = stepUp(k); }
  }
  across[place] = u.value;
  upward[place] = v.value;
  workgroupBarrier();
  if (!there || !own) { return; }
  put(f_u, k, u.value);
  put(f_uLow, k, u.low);
  put(f_uAhead, k, u.ahead);
  put(f_v, k, v.value);
  put(f_vLow, k, v.low);
  put(f_vAhead, k, v.ahead);
  let solved = c(c_pInverse, k);
  let old = was(f_p, k);
  if (solved == 0.0) {
    put(f_p, k, old);
    put(f_pAhead, k, was(f_pAhead, k));
    return;
  }
  let leaves = (c(c_westArea, k + 1u) * across[place + 1u] - c(c_westArea, k) * u.value)
    + (c(c_southArea, k + settings.nx) * upward[place + ${TILE}u] - c(c_southArea, k) * v.value);
  let change = -settings.rate * solved * leaves;
  put(f_p, k, old + change);
  put(f_pAhead, k, old + change + settings.damping * change);
}
`;
