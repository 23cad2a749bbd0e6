/** What the two ways of drawing tracers have in common: by shaders, and by the processor. */
import type { Container } from "pixi.js";
import type { Tracers } from "../../sim/tracers/tracers.ts";
import { RING } from "../drawing/comets.ts";

interface Brush {
  /** packed 0xSSBBGGRR, one each; SS is what it has of its full size */
  readonly colours: Uint32Array;
  /** mm, half a head's width */
  readonly half: number;
  /** mm, of a drawn tail */
  readonly longest: number;
  /** of the tracers that are drawn, 0..1 */
  readonly share: number;
  readonly alpha: number;
  /** CSS px of the plane's origin, and of one of its millimetres */
  readonly at: { readonly x: number; readonly y: number; readonly scale: number };
  /** CSS px that can be seen */
  readonly seen: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** device pixels in a CSS pixel */
  readonly dense: number;
}

export interface TracerLayer {
  /** in mm of the plane */
  readonly view: Container;
  draw(tracers: Tracers, brush: Brush): void;
  release(): void;
}

/** What a tracer has of its full size, 0..1, and under what it is too small to be seen. */
export const sizeOf = (colour: number): number => (colour >>> 24) / 255;
export const MIN_SIZE = 0.04;

/** A comet's corners in mm: head, the joint in its tail, the tail's end. */
export interface Comet {
  x: number;
  y: number;
  /** unit vectors of head and tail */
  hx: number;
  hy: number;
  tx: number;
  ty: number;
  /** mm from the head to the joint, and from there to the end */
  back: number;
  reach: number;
  /** mm, half the head's width: a ring is larger, for what it leaves out */
  half: number;
}

/** Where tracer `i` has been, as two straight stretches no longer than `longest` together. Writes into `out`. */
export function comet(tracers: Tracers, i: number, half: number, longest: number, out: Comet): void {
  const { position, trail, trailLength, origin } = tracers;
  const x = position[2 * i]!;
  const y = position[2 * i + 1]!;
  const t = 2 * trailLength * i;
  const middle = t + 2 * ((trailLength >> 1) - 1);
  const end = t + 2 * (trailLength - 1);
  const mx = trail[middle]!;
  const my = trail[middle + 1]!;
  const ex = trail[end]!;
  const ey = trail[end + 1]!;
  const near = Math.hypot(x - mx, y - my);
  const far = Math.hypot(mx - ex, my - ey);
  const shown = Math.min(longest, near + far);
  out.x = x;
  out.y = y;
  out.half = origin[i] === RING ? 1.25 * half : half;
  // A tracer at rest points up.
  out.hx = near > 1e-4 ? (x - mx) / near : 0;
  out.hy = near > 1e-4 ? (y - my) / near : 1;
  out.tx = far > 1e-4 ? (mx - ex) / far : out.hx;
  out.ty = far > 1e-4 ? (my - ey) / far : out.hy;
  out.back = Math.max(out.half, Math.min(near, shown));
  out.reach = Math.max(0.5 * out.half, Math.min(far, shown - out.back));
}

export const noComet = (): Comet => ({ x: 0, y: 0, hx: 0, hy: 1, tx: 0, ty: 1, back: 0, reach: 0, half: 0 });
