/** What passes between the page and its workers. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { FieldChoice } from "../sim/flow-field/field-session.ts";
import type { BoundaryConditions, FieldShape, FlowField } from "../sim/flow-field/flow-field.ts";
import type { FieldMeans } from "../sim/flow-field/means.ts";
import type { PathwayGeometry } from "../sim/geometry/geometry.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";

interface SolveQuestion {
  readonly kind: "solve";
  readonly id: number;
  readonly request: CirculationRequest;
  /** state vector of a neighbouring answer, to start from */
  readonly from?: readonly number[];
}

/** Asks a waiting worker whether it lives; it says "alive". */
interface Ping {
  readonly kind: "ping";
}

export type ToCirculation = SolveQuestion | Ping;

export type FromCirculation =
  | { readonly kind: "alive" }
  | { readonly kind: "solved"; readonly id: number; readonly circulation: Circulation }
  | { readonly kind: "failed"; readonly id: number; readonly reason: string };

export interface Fluid {
  /** kg/m3 */
  readonly density: number;
  /** mPa.s */
  readonly viscosity: number;
}

/** How finely a pane's field is solved; with a lead it flows on that coarse grid first, which has been run up; `finest`: cells across to which speed may take it. */
export type GridChoice = Omit<FieldChoice, "depth" | "runUp"> & {
  readonly finest?: number;
  readonly lead?: Required<Pick<FieldChoice, "cellsAcross" | "runUp">>;
};

export type ToField =
  /** Builds the flow solver; the field then starts from rest or from what the old one held. */
  | ({
      readonly kind: "build";
      readonly shapeId: number;
      readonly geometry: PathwayGeometry;
      readonly fluid: Fluid;
    } & GridChoice)
  | { readonly kind: "boundary"; readonly boundary: BoundaryConditions }
  /** From now on one wall-clock second is `rate` blood seconds; 0 holds. `seen`: the rate asked for where the flow is seen to move; 0, as left out, where not. */
  | { readonly kind: "run"; readonly rate: number; readonly seen?: number }
  /** Arrays of a field that the page has done with. */
  | { readonly kind: "return"; readonly arrays: readonly Float32Array[] };

/** What became of a GPU: it computes, was lost, or was slower than blood. */
export type GpuStatus = "computes" | "lost" | "slow";

export type FromField =
  /** Said only where a GPU was found; unsaid, the processor computes. */
  | { readonly kind: "gpu"; readonly status: GpuStatus }
  | { readonly kind: "alive" }
  /** `coarse`: a finer grid for the same order is laid once blood flows in this one. */
  | {
      readonly kind: "built";
      readonly shapeId: number;
      readonly shape: FieldShape;
      readonly coarse?: boolean;
    }
  /**
   * `capable`: blood seconds that this worker could compute in one wall-clock second; `cellsAcross`: count across the narrowest opening, not a coarse grid's but that of the one to come;
   * `shape`: the grid of this moment and the next, where it is another one.
   */
  | {
      readonly kind: "field";
      readonly field: FlowField;
      readonly capable: number;
      readonly cellsAcross: number;
      readonly shape?: FieldShape;
    }
  | { readonly kind: "means"; readonly means: FieldMeans }
  | { readonly kind: "refused"; readonly shapeId: number; readonly reason: string };
