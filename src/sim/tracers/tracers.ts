/** Massless tracers as flat arrays, allocated once. */

export const ORIGINS = ["upper", "liver", "legs"] as const;
/** index into ORIGINS */
export type Origin = 0 | 1 | 2;

export interface Tracers {
  /** how many of the slots are in use */
  readonly count: number;
  /** mm [2*capacity] interleaved x, y */
  readonly position: Float32Array;
  /** mm [2*capacity*trail] earlier positions, newest first, interleaved, for short trails; a fresh tracer's trail is collapsed on itself */
  readonly trail: Float32Array;
  readonly trailLength: number;
  /** [capacity] index into ORIGINS */
  readonly origin: Uint8Array;
  /** s since entering [capacity] */
  readonly age: Float32Array;
  /** m/s [capacity] */
  readonly speed: Float32Array;
  /** 1 for dyed [capacity] */
  readonly dyed: Uint8Array;
}
