/** What the circulation answers: plain data, cloneable to a worker. Keys follow the compute contract. */
import type { GradePoint, LedgerRow } from "../../hydraulics/law.ts";
import type { LossBand, Outside, PathwayShares } from "../../hydraulics/pathway-estimate.ts";
import type { CirculationRequest } from "../../parameters/request.ts";

/** The periodic state of one request. */
export interface Circulation {
  readonly request: CirculationRequest;
  /** mmHg, time means over whole breaths */
  readonly pressures: {
    readonly svc: number;
    readonly ivc: number;
    readonly hepaticVein: number;
    readonly pathway: number;
    readonly pulmonaryArteryLeft: number;
    readonly pulmonaryArteryRight: number;
    readonly pulmonaryVein: number;
    readonly atrium: number;
    readonly ventricleEndDiastolic: number;
    readonly aortaMean: number;
    readonly aortaSystolic: number;
    readonly aortaDiastolic: number;
  };
  /** L/min; collaterals and the two-ventricle extras stand in `extras` */
  readonly flows: {
    readonly systemic: number;
    readonly pulmonary: number;
    readonly svc: number;
    readonly ivc: number;
    readonly left: number;
    readonly right: number;
    /** pathway to atrium positive */
    readonly fenestration: number;
  };
  /** percent */
  readonly saturations: {
    readonly arterial: number;
    readonly svc: number;
    readonly ivc: number;
    readonly pulmonaryVein: number;
  };
  readonly pathway: {
    /** mmHg, from the IVC's entry to the pulmonary arteries */
    readonly pressureDrop: number;
    /** mW, all four branches */
    readonly powerLoss: number;
    /** what the loss law's error leaves open; null in a stage whose veins do not meet the pulmonary arteries in one pathway */
    readonly band: LossBand | null;
    /** what lies outside the set of 3D cases that the law was fitted to, by feature: there the band is wider */
    readonly outsideSet: readonly Outside[];
    /** WU */
    readonly resistance: number;
    readonly ledger: readonly LedgerRow[];
    readonly gradeLine: readonly GradePoint[];
    /** from the upper vein through the lungs, where the lower one's blood does not go to them; else empty */
    readonly upperGradeLine: readonly GradePoint[];
  };
  /** parts of each vein's blood to either lung; null as for `band` */
  readonly shares: PathwayShares | null;
  readonly energy: {
    /** mW */
    readonly in: number;
    /** mW */
    readonly lost: number;
    readonly residualPercent: number;
    /** mW by source ("ventricle", "breathing", "muscle") and by element */
    readonly sources: Readonly<Record<string, number>>;
    readonly losses: Readonly<Record<string, number>>;
  };
  /** mL/h */
  readonly exchange: { readonly filtration: number; readonly lymph: number; readonly overflow: number };
  readonly run: {
    /** number of beats and s that were run in search of the state */
    readonly beats: number;
    readonly seconds: number;
    /** mmHg, the greatest pressure by which the last cycle failed to return */
    readonly residual: number;
    readonly converged: boolean;
    /** What was held while these numbers were found, in a sentence. */
    readonly held: string;
    /** Why it did not converge, in a sentence. */
    readonly reason?: string;
  };
  /** Further named outputs, unit in the name's entry of `outputs.ts` (heart rate, cardiac index, ejection fraction, collateral flow, Qp:Qs, oxygen delivery, "pulmonaryArterySaturation" in percent: the mixture that the lungs receive ...). */
  readonly extras: Readonly<Record<string, number>>;
  /** The last breath (or beat when breath is held), evenly sampled. */
  readonly traces: Traces;
  /** State vector in SI, to start the next solve from. */
  readonly state: readonly number[];
}

/** One cycle as curves, [samples] each. */
export interface Traces {
  /** s, from 0 to the period, ends included */
  readonly time: Float64Array;
  /** s: length of one cycle (a whole number of beats and one breath, or one beat) */
  readonly period: number;
  readonly heartPeriod: number;
  /** mmHg by name: the keys of `Circulation.pressures` where they vary, and "ventricle", "aorta", "pleural" and "alveolar" (in the lungs; lungs stretch by alveolar minus pleural), "abdominal", "calf" */
  readonly pressures: Readonly<Record<string, Float64Array>>;
  /** L/min by name: the keys of `Circulation.flows`, "aorta", "pulmonaryVein", "collaterals", "legs" (through the last valve), "legBed" (into the leg veins), "workingMuscle" (the part of it within muscle that squeezes), "splanchnic", "upper", with two ventricles "tricuspidValve" and "pulmonaryValve" */
  readonly flows: Readonly<Record<string, Float64Array>>;
  /** mL by name: "ventricle", "atrium", "lungLeft", "lungRight" and the veins */
  readonly volumes: Readonly<Record<string, Float64Array>>;
}
