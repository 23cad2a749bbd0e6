// The package's own types are sources that our strict compiler refuses; this is the part that the test uses.
type Derivative = (x: number, y: number[]) => number[];
export class Solver {
  constructor(dimension: number);
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(derivative: Derivative, x0: number, y0: number[], xEnd: number): { y: number[]; outcome: number };
}
