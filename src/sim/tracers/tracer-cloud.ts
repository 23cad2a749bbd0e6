import type { RandomSource } from "../random.ts";
import type { Tracers } from "./tracers.ts";

/** Pulses that follow one another: at half a second each they pass through more than one breath at rest. */
export const PULSES = 10;

/** Owns the memory of a pane's tracers; nothing in it is allocated again. */
export class TracerCloud implements Tracers {
  count = 0;
  /** how many there are when the plane is as full as it was filled */
  usual = 0;
  readonly capacity: number;
  readonly trailLength: number;
  /** s of blood time between two points of a trail */
  readonly trailSpacing: number;
  /** [2*capacity] x, y in mm */
  readonly position: Float32Array;
  /** [capacity][trailLength][2] newest first, mm */
  readonly trail: Float32Array;
  /** [capacity], units as in Tracers */
  readonly origin: Uint8Array;
  readonly age: Float32Array;
  readonly speed: Float32Array;
  readonly dyed: Uint8Array;
  /** s since the last point of the trails */
  sinceTrail = 0;
  /** [capacity] the pulse that a tracer entered with, from 1: the first is dyed, the others are followed unseen; 0 for blood of none */
  readonly pulse: Uint8Array;
  /** s since the first pulse began, and the length of each; none was asked for while infinite */
  sincePulse = Number.POSITIVE_INFINITY;
  pulseSeconds = 1;
  /** [PULSES + 1] count of tracers that entered with each pulse, and of those still inside */
  readonly entered = new Uint32Array(PULSES + 1);
  readonly inside = new Uint32Array(PULSES + 1);

  /**
   * @param capacity most tracers at once, up to 50,000
   * @param trailSeconds blood time that a whole trail spans
   */
  constructor(capacity: number, trailLength = 8, trailSeconds = 0.12) {
    this.capacity = capacity;
    this.trailLength = trailLength;
    this.trailSpacing = trailSeconds / trailLength;
    this.position = new Float32Array(2 * capacity);
    this.trail = new Float32Array(2 * capacity * trailLength);
    this.origin = new Uint8Array(capacity);
    this.age = new Float32Array(capacity);
    this.speed = new Float32Array(capacity);
    this.dyed = new Uint8Array(capacity);
    this.pulse = new Uint8Array(capacity);
  }
}

/** Puts tracer `n` at (x, y), mm, its trail collapsed there. */
export function place(cloud: TracerCloud, n: number, x: number, y: number): void {
  const { position, trail, trailLength } = cloud;
  position[2 * n] = x;
  position[2 * n + 1] = y;
  const end = 2 * (n + 1) * trailLength;
  for (let k = 2 * n * trailLength; k < end; k += 2) {
    trail[k] = x;
    trail[k + 1] = y;
  }
}

/** Adds a point to every trail when its time has come; `seconds` (s) of blood time have passed since the last call. */
export function layTrails(cloud: TracerCloud, seconds: number): void {
  cloud.sinceTrail += seconds;
  if (cloud.sinceTrail < cloud.trailSpacing) return;
  cloud.sinceTrail = 0;
  const { count, position, trail, trailLength } = cloud;
  for (let n = 0; n < count; n++) {
    const begin = 2 * n * trailLength;
    for (let k = begin + 2 * trailLength - 1; k > begin + 1; k--) trail[k] = trail[k - 2]!;
    trail[begin] = position[2 * n]!;
    trail[begin + 1] = position[2 * n + 1]!;
  }
}

/** Drops tracer number `n` (index): the last one takes its place. */
export function remove(cloud: TracerCloud, n: number): void {
  cloud.inside[cloud.pulse[n]!]!--;
  const last = --cloud.count;
  if (n !== last) copy(cloud, last, n);
}

/** Room for one more: its number (index), at random, so that the first of all are as good a sample of them as any. */
export function insert(cloud: TracerCloud, random: RandomSource): number {
  const last = cloud.count++;
  const n = Math.floor(random() * cloud.count);
  if (n !== last) copy(cloud, n, last);
  return n;
}

function copy(cloud: TracerCloud, from: number, to: number): void {
  const { position, trail, trailLength, origin, age, speed, dyed, pulse } = cloud;
  const length = 2 * trailLength;
  position.copyWithin(2 * to, 2 * from, 2 * from + 2);
  trail.copyWithin(length * to, length * from, length * (from + 1));
  for (const array of [origin, age, speed, dyed, pulse]) array[to] = array[from]!;
}
