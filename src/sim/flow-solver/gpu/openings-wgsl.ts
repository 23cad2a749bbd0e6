/**
 * Openings before each step on a GPU: ../pressure-outlet.ts and the held flows of ../openings.ts, one group of threads for
 * each opening. How they lie in memory: pack-openings.ts.
 */
import { CELL, FACE, HEAD, HELD, INPUT_WIDTH, STATE_WIDTH } from "./pack-openings.ts";
import { SHARED_WGSL } from "./step-wgsl.ts";

const THREADS = 64;

export const OPENINGS_WGSL = `${SHARED_WGSL}
@group(0) @binding(0) var<uniform> settings: Settings;
@group(0) @binding(1) var<storage, read> laid: array<u32>;
@group(0) @binding(2) var<storage, read> inputs: array<f32>;
@group(0) @binding(3) var<storage, read_write> state: array<f32>;
@group(0) @binding(4) var<storage, read_write> flowing: array<f32>;

var<workgroup> parts: array<vec2f, ${THREADS}>;
var<workgroup> pressure: f32;
var<workgroup> slope: f32;
var<workgroup> outward: f32;
var<workgroup> wanted: f32;

fn real(place: u32) -> f32 { return bitcast<f32>(laid[place]); }
fn now(which: u32, k: u32) -> f32 { return flowing[which * settings.count + k]; }
fn put(which: u32, k: u32, value: f32) { flowing[which * settings.count + k] = value; }

/** Sum over the group's threads, known to all of them. */
fn sum(part: vec2f, thread: u32) -> vec2f {
  workgroupBarrier();
  parts[thread] = part;
  for (var reach = ${THREADS / 2}u; reach > 0u; reach /= 2u) {
    workgroupBarrier();
    if (thread < reach) { parts[thread] += parts[thread + reach]; }
  }
  workgroupBarrier();
  return parts[0];
}

/** Adds to a number of the state, with what rounding left over; answers the new value. */
fn gather(place: u32, more: f32) -> f32 {
  let old = state[place];
  let whole = state[place + 1u] + more;
  let fresh = rounded(old + whole, settings.nothing);
  state[place + 1u] = whole - rounded(fresh - old, settings.nothing);
  state[place] = fresh;
  return fresh;
}

/** Velocity into the blood through a face. */
fn entering(face: u32) -> f32 {
  let which = select(f_u, f_v, laid[face + ${FACE.vertical}u] == 1u);
  return real(face + ${FACE.into}u) * now(which, laid[face + ${FACE.face}u]);
}

/** Where the face meets the opening's plane, the pressure beyond given. */
fn onPlane(face: u32, outside: f32) -> f32 {
  let here = real(face + ${FACE.insideBeyond}u);
  let there = real(face + ${FACE.outsideBeyond}u);
  if (here > 0.0) { return outside; }
  let inside = now(f_p, laid[face + ${FACE.inside}u]);
  return inside + (outside - inside) * -here / (there - here);
}

@compute @workgroup_size(${THREADS})
fn openings(@builtin(workgroup_id) group: vec3u, @builtin(local_invocation_index) thread: u32) {
  let head = group.x * ${HEAD.width}u;
  let own = group.x * ${STATE_WIDTH}u;
  let faces = laid[head + ${HEAD.faces}u];
  let facesEnd = faces + laid[head + ${HEAD.faceCount}u] * ${FACE.width}u;
  let helds = laid[head + ${HEAD.held}u];
  let heldEnd = helds + laid[head + ${HEAD.heldCount}u] * ${HELD.width}u;
  let cells = laid[head + ${HEAD.cells}u];
  let cellsEnd = cells + laid[head + ${HEAD.cellCount}u] * ${CELL.width}u;
  let isPressure = laid[head + ${HEAD.pressure}u] == 1u;

  var mine = vec2f(0.0);
  for (var face = faces + thread * ${FACE.width}u; face < facesEnd; face += ${THREADS * FACE.width}u) {
    let enters = real(face + ${FACE.area}u) * entering(face);
    mine += vec2f(enters, max(0.0, enters));
  }
  let through = sum(mine, thread);
  if (thread == 0u) {
    let turn = u32(state[own + 7u]);
    state[own + 7u] = f32(turn + 1u);
    wanted = inputs[(turn * settings.openings + group.x) * ${INPUT_WIDTH}u];
  }
  workgroupBarrier();

  // A given velocity: the whole flow has the developed profile. Beyond a pressure outlet what leaves continues, what enters has the profile.
  let flow = select(wanted, through.x, isPressure);
  let enter = select(1.0, select(through.x / through.y, 0.0, through.x <= 0.0), isPressure);
  for (var held = helds + thread * ${HELD.width}u; held < heldEnd; held += ${THREADS * HELD.width}u) {
    let k = laid[held + ${HELD.face}u];
    let source = laid[held + ${HELD.from}u];
    let given = enter * flow * real(held + ${HELD.shape}u);
    let isUp = laid[held + ${HELD.vertical}u] == 1u;
    let speed = select(f_u, f_v, isUp);
    let ahead = select(f_uAhead, f_vAhead, isUp);
    var value = given;
    var later = given;
    if (enter < 1.0) {
      value += (1.0 - enter) * now(speed, source);
      later += (1.0 - enter) * now(ahead, source);
    }
    put(speed, k, value);
    put(ahead, k, later);
  }
  if (!isPressure) { return; }

  if (thread == 0u) {
    outward = -through.x / real(head + ${HEAD.area}u);
    var slow = wanted;
    var aim = state[own];
    if (state[own + 6u] == 0.0) {
      slow = gather(own + 2u, settings.forget * (outward - (state[own + 2u] + state[own + 3u])));
    } else {
      state[own + 2u] = wanted;
      state[own + 3u] = 0.0;
      aim = gather(own, settings.forget * settings.sound * (outward - wanted));
    }
    pressure = aim + state[own + 4u] + settings.sound * (outward - slow);
    slope = real(head + ${HEAD.slope}u) * outward;
  }
  workgroupBarrier();
  var weighed = 0.0;
  for (var face = faces + thread * ${FACE.width}u; face < facesEnd; face += ${THREADS * FACE.width}u) {
    let beyond = pressure + real(face + ${FACE.outsideBeyond}u) * slope;
    weighed += real(face + ${FACE.area}u) * onPlane(face, beyond);
  }
  let onIt = sum(vec2f(weighed, 0.0), thread).x;
  let open = real(head + ${HEAD.open}u);
  if (thread == 0u && state[own + 6u] == 0.0 && open > 0.0) {
    let shortfall = pressure - onIt / open;
    gather(own + 4u, settings.forget * (shortfall - (state[own + 4u] + state[own + 5u])));
  }
  let inward = 2.0 * max(0.0, -outward);
  for (var cell = cells + thread * ${CELL.width}u; cell < cellsEnd; cell += ${THREADS * CELL.width}u) {
    let k = laid[cell + ${CELL.cell}u];
    var value = pressure + real(cell + ${CELL.beyond}u) * slope;
    // An eddy loses the pressure that what it draws in takes to accelerate.
    for (var side = 0u; side < 4u; side++) {
      let face = laid[cell + ${CELL.faces}u + side];
      if (face == 0u) { continue; }
      let drawn = max(0.0, entering(face) - inward);
      value -= 0.5 * drawn * drawn;
    }
    put(f_p, k, value);
    put(f_pAhead, k, value);
  }
}
`;
