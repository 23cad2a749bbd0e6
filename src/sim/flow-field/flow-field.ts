/** The flow field as the rest of the house sees it: plain arrays that move between threads by transfer. */

export interface FieldGrid {
  /** cells */
  readonly nx: number;
  readonly ny: number;
  /** mm: cell width, and the centre of cell (0,0) (bottom left; y up) */
  readonly dx: number;
  readonly originX: number;
  readonly originY: number;
}

/** What does not change until the geometry does. All arrays [ny*nx], row-major from the bottom row. */
export interface FieldShape extends FieldGrid {
  /** mm, signed distance to the wall, negative in the blood; openings are not walls */
  readonly distance: Float32Array;
  /** mm, local depth pi D/4 ("round") or 1 ("uniform") */
  readonly depth: Float32Array;
}

/** One moment of the flow. */
export interface FlowField {
  /** identifies the FieldShape it belongs to */
  readonly shapeId: number;
  /** s of blood time since the field was built */
  readonly time: number;
  /** m/s [ny*nx] */
  readonly u: Float32Array;
  readonly v: Float32Array;
  /** mmHg static [ny*nx], relative to the mean of the lung-side openings */
  readonly pressure: Float32Array;
  readonly readings: FieldReadings;
}

export interface OpeningReading {
  readonly name: string;
  /** mL/s INTO the blood positive ("round"); m2/s with uniform depth */
  readonly flow: number;
  /** mmHg, mean static */
  readonly pressure: number;
  /** mmHg, flow-weighted over the opening, the static part a mean over time */
  readonly totalPressure: number;
  readonly reynolds: number;
}

export interface FieldReadings {
  readonly openings: readonly OpeningReading[];
  /** mW ("round"), mW/m with uniform depth: total-pressure power in minus out, and viscous dissipation with drag */
  readonly powerLoss: number;
  readonly dissipation: number;
  /** (in - out - dissipation) as % of loss */
  readonly auditPercent: number;
  /** % of inflow */
  readonly massBalancePercent: number;
  /** from opening -> to opening -> fraction of its flow */
  readonly shares: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** fraction of the blood's area that moves against or around, not along (definition in docs/model.md) */
  readonly recirculatingArea: number;
  /** s until 90 % of a dye pulse has left; undefined until measured */
  readonly washOutSeconds?: number;
  /** settled: kinetic energy averaged over a period changes by less than the tolerance */
  readonly settled: boolean;
  /** blood seconds advanced in one wall-clock second, measured */
  readonly pace: number;
  readonly cellUpdatesPerSecond: number;
}

/** Opening conditions over one cycle of breath and beat; evenly spaced samples from 0 to the period, end excluded. */
export interface BoundaryConditions {
  /** s */
  readonly period: number;
  /** mL/s INTO the blood, by opening that is driven by flow ("ivc", "svc") */
  readonly inflow: Readonly<Record<string, Float32Array>>;
  /** fraction of what leaves, by outlet ("left", "right"); the fenestration's flow is in `outflow` */
  readonly split: Readonly<Record<string, number>>;
  /** mL/s OUT of the blood, by opening whose leak the circulation gives ("fenestration") */
  readonly outflow: Readonly<Record<string, Float32Array>>;
}
