/** The pathway as the circulation sees it: four branches that meet at one junction, each a chain of handbook elements. */

import type { Course } from "../geometry/path-order.ts";

/** Branch ends: IVC entry, SVC entry, left and right pulmonary artery; all meet at the junction. */
export const BRANCHES = ["ivc", "svc", "left", "right"] as const;
export type BranchName = (typeof BRANCHES)[number];

/** Total-pressure drop Dp = a Q + b Q|Q| + inertance dQ/dt, all SI; Q positive the way blood usually goes: veins in, pulmonary arteries out. */
export interface ElementLaw {
  /** A key of the ledger's words, such as "conduit", "ivcJoint", "tee", "leftBranchStenosis". */
  readonly element: string;
  readonly branch: BranchName;
  /** Pa.s/m3 */
  readonly a: number;
  /** Pa.s2/m6 */
  readonly b: number;
  /** Pa.s2/m3 */
  readonly inertance: number;
  /** by which the fit to the 3D set has scaled a and b */
  readonly factor: number;
  /** m2, the cross-section whose mean velocity carries the total pressure after this element */
  readonly areaAfter: number;
  /** Handbook or paper, with the relation's name. */
  readonly source: string;
  /** Reynolds numbers for which the relation was measured, and the diameter (m) the number is formed with. */
  readonly validReynolds: readonly [number, number];
  readonly diameter: number;
  /** mm along the branch the way blood usually goes (veins from their opening, pulmonary arteries from the joint); as in the picture. */
  readonly from: number;
  readonly to: number;
}

/** m3/s; each a mean, or evenly spaced samples over one cycle (all of one length). Collaterals are not part of these. */
export interface PathwayFlows {
  readonly ivc: number | ArrayLike<number>;
  readonly svc: number | ArrayLike<number>;
  readonly left: number | ArrayLike<number>;
  readonly right: number | ArrayLike<number>;
  /** pathway to atrium positive; left out when there is none */
  readonly fenestration?: number | ArrayLike<number>;
}

/** Coefficients in SI, valid about the mean flows that they were taken at. */
export interface PathwayLaw {
  /** kg/m3 and Pa.s of the blood that the coefficients hold for */
  readonly fluid: { readonly density: number; readonly viscosity: number };
  /** Whether the lower vein's branch meets the pulmonary arteries, ends in the atrium, or leads to them through a ventricle. */
  readonly course: Course;
  /** The lung that the grade line follows: the more narrowed one, else the right. */
  readonly gradeLung: "left" | "right";
  readonly branches: Readonly<Record<BranchName, readonly ElementLaw[]>>;
  /** Fenestration orifice, SI; undefined when closed or when the stage has none. Dp = a Q + b Q|Q|, from the junction side to the atrium. */
  readonly fenestration?: {
    readonly a: number;
    readonly b: number;
    readonly source: string;
    /** m */
    readonly diameter: number;
    readonly validReynolds: readonly [number, number];
  };
}

/** One element's part of the loss. */
export interface LedgerRow {
  readonly element: string;
  readonly branch: BranchName | "fenestration";
  /** mmHg, total pressure */
  readonly pressureDrop: number;
  /** mW */
  readonly powerLoss: number;
  /** fraction of the power lost in all rows, 0..1 */
  readonly share: number;
  readonly source: string;
  /** ratio by which the fit to the set of 3D cases has scaled the relation; 1 where it has not */
  readonly factor: number;
  /** Reynolds number (dimensionless) at the mean flow */
  readonly reynolds: number;
  /** False when the Reynolds number lies outside the relation's measured range. */
  readonly inRange: boolean;
}

/** A point of the grade line, in the blood's order from a hepatic vein to the atrium. */
export interface GradePoint {
  /** The element that begins here (key of the ledger's words), or the place: "hepaticVein", "ivc", "pulmonaryArtery", "lungBed", "pulmonaryVein", "atrium". */
  readonly at: string;
  /** 0 to 1 along the whole path; equals the station of the same element in the geometry's path order. */
  readonly station: number;
  /** mmHg: hydraulic grade line */
  readonly pressure: number;
  /** mmHg: energy grade line (static + 1/2 rho u2) */
  readonly totalPressure: number;
}
