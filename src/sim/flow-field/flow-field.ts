/** The flow field as other folders see it: plain arrays that are transferred between threads. */

/** Size and position of the grid. */
export interface FieldGrid {
  /** cells */
  readonly nx: number;
  readonly ny: number;
  /** mm: cell width, and the centre of cell (0,0) (bottom left; y up) */
  readonly dx: number;
  readonly originX: number;
  readonly originY: number;
}

/** What changes only with the geometry. All arrays [ny*nx], row-major from the bottom row. */
export interface FieldShape extends FieldGrid {
  /** mm, signed distance to the wall, negative in the blood; openings are not walls */
  readonly distance: Float32Array;
  /** mm, local depth pi D/4 ("round") or 1 ("uniform") */
  readonly depth: Float32Array;
}

/** The flow at one moment. Arrays [ny*nx], row-major from the bottom row. */
export interface FlowField {
  /** count of shapes so far: which FieldShape it belongs to */
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

/** Means at one opening over the readings' window. */
export interface OpeningReading {
  readonly name: string;
  /** mL/s INTO the blood positive ("round"); m2/s with uniform depth */
  readonly flow: number;
  /** mmHg, mean static */
  readonly pressure: number;
  /** mmHg, flow-weighted over the opening, the static part a mean over time */
  readonly totalPressure: number;
  /** dimensionless, from mean speed and the opening's width */
  readonly reynolds: number;
}

/** Means over whole periods; see docs/model-field.md. */
export interface FieldReadings {
  readonly openings: readonly OpeningReading[];
  /** mW ("round"), mW/m with uniform depth: total-pressure power in minus out, and viscous dissipation with drag */
  readonly powerLoss: number;
  readonly dissipation: number;
  /** %: (power in - power out - dissipation) over the loss */
  readonly auditPercent: number;
  /** % of inflow */
  readonly massBalancePercent: number;
  /** from opening -> to opening -> fraction of its flow */
  readonly shares: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** fraction of the blood's area that moves against or around, not along (definition in docs/model.md) */
  readonly recirculatingArea: number;
  /** s until 90 % of a dye pulse has left, mean of pulses over a breath or more, and the shortest and longest; undefined until measured */
  readonly washOutSeconds?: number;
  readonly washOutBand?: readonly [least: number, most: number];
  /** settled: kinetic energy averaged over a period changes by less than the tolerance */
  readonly settled: boolean;
  /** ratio of blood time to wall-clock time, measured */
  readonly pace: number;
  /** 1/s of wall-clock time, measured */
  readonly cellUpdatesPerSecond: number;
}

/** Boundary conditions over one cycle of breath and beat; evenly spaced samples from 0 to the period, end excluded. */
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
