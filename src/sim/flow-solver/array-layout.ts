/** Order of the arrays in a solver's one block of memory; shared with kernels in any language. */

/**
 * All of [ny*nx] numbers, row-major from the bottom row. Staggered: `u` on west faces, `v` on south faces, `p` in cell centres.
 * Velocities m/s; pressure over density m2/s2; widths in cells, depth in mm.
 */
export const ARRAYS = [
  "u",
  "v",
  "p",
  /** velocities extrapolated half a step ahead: read by this step, written for the next, exchanged after each step */
  "uAhead",
  "vAhead",
  "uNext",
  "vNext",
  /** pressure extrapolated by a part of its last change: damps sound only */
  "pAhead",
  /** open width times depth of the west and south faces */
  "westArea",
  "southArea",
  /** 1 / (area times depth) of the volume that a face's momentum belongs to; 0 where the velocity is given */
  "uInverse",
  "vInverse",
  /** 1 / (area times depth) of a cell; 0 where the pressure is given */
  "pInverse",
  /** viscous links times depth: u through the cell and through the corner below its face; v through the cell and through its west corner */
  "uThroughCell",
  "uThroughCorner",
  "vThroughCell",
  "vThroughCorner",
  /** wall friction and front-and-back drag, over (viscosity / cell) */
  "uFriction",
  "vFriction",
  /** loss where the depth steps up, over |velocity|; its sign is the flow direction that loses */
  "uStep",
  "vStep",
  /** damping of unresolved waves on each link: 1 by third differences, 0 (a wall too near for those) by first */
  "uSmoothCell",
  "uSmoothCorner",
  "vSmoothCell",
  "vSmoothCorner",
  /** how many of the two cells beside a face are beyond an opening, where nothing keeps the flow free of divergence */
  "uBeyond",
  "vBeyond",
  /** what rounding to single precision leaves of the velocities; 0 in double precision */
  "uLow",
  "vLow",
  /** what advection and shear push, kept over the steps of sound that share it */
  "uPush",
  "vPush",
] as const;
type ArrayName = (typeof ARRAYS)[number];

/** Settings of one call, the same for all cells. */
export interface StepSettings {
  /** s/m: step of sound over cell width */
  readonly dtOverDx: number;
  /** m/s: kinematic viscosity over cell width */
  readonly viscosityOverDx: number;
  /** m2/s2: square of the sound speed */
  readonly soundSpeedSquared: number;
  /** count of sound's steps that share one push of advection and shear */
  readonly soundSteps: number;
  /** part of the pressure's last change that is added ahead */
  readonly soundDamping: number;
  /** coefficient of the damping: 1/16 is that of quadratic upstream interpolation (Leonard 1979) */
  readonly upstream: number;
}

/** Single or double precision, the same in all arrays. */
export type Reals = Float32Array | Float64Array;

/** Views of one memory block. */
export type SolverArrays = Record<ArrayName, Reals>;

/** Count of cells in a row, and of rows. */
export interface GridSize {
  readonly nx: number;
  readonly ny: number;
}

/** First and last+1 cell that any stencil must visit, for each row: [2*ny]. */
export type RowSpans = Int32Array;

/** Views made by `view`, which is given each array's place in {@link ARRAYS}. */
export function viewArrays(view: (place: number) => Reals): SolverArrays {
  const views = {} as SolverArrays;
  ARRAYS.forEach((name, place) => {
    views[name] = view(place);
  });
  return views;
}
