/** Massless tracers as flat arrays, allocated once. */

/** Where blood came from: superior vena cava, liver, legs. */
export const ORIGINS = ["upper", "liver", "legs"] as const;
/** index into ORIGINS */
export type Origin = 0 | 1 | 2;

/** What a picture reads of the tracers. */
export interface Tracers {
  /** count of slots in use */
  readonly count: number;
  /** mm [2*capacity] interleaved x, y */
  readonly position: Float32Array;
  /** mm [2*capacity*trail] earlier positions, newest first, interleaved, for short trails; a fresh tracer's trail is collapsed on itself */
  readonly trail: Float32Array;
  /** count of points in a trail */
  readonly trailLength: number;
  /** [capacity] index into ORIGINS */
  readonly origin: Uint8Array;
  /** s since entering [capacity] */
  readonly age: Float32Array;
  /** m/s [capacity] */
  readonly speed: Float32Array;
  /** dimensionless, 1 for dyed [capacity] */
  readonly dyed: Uint8Array;
}
