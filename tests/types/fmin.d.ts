// The package brings no types; this is the part that the fit uses.
declare module "fmin/index.js" {
  interface Found {
    readonly x: number[];
    readonly fx: number;
  }
  interface Limits {
    readonly maxIterations?: number;
  }
  export function nelderMead(value: (x: number[]) => number, start: number[], limits?: Limits): Found;
  /** @param value fills `gradient` and answers the value */
  export function conjugateGradient(
    value: (x: number[], gradient: number[]) => number,
    start: number[],
    limits?: Limits,
  ): Found;
}
