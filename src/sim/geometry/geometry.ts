/** ONE description of a pathway's plane, in mm with y up: cut-cell mesh, drawn wall, walls for clots and handles all come from it. */

/** mm, y up; a unit vector where it is a direction. */
export type Point = readonly [x: number, y: number];

/** The shapes of a `compute` request, in mm. A tube's width may be one number or one for each point (linear in between). */
export type Shape =
  | { readonly tube: { readonly points: readonly Point[]; readonly width: number | readonly number[] } }
  | { readonly disc: { readonly centre: Point; readonly radius: number } }
  | {
      readonly ellipse: {
        readonly centre: Point;
        readonly radii: Point /** degrees, anticlockwise */;
        readonly angle: number;
      };
    }
  | { readonly polygon: { readonly points: readonly Point[] } };

/** A straight cut where blood enters or leaves; `centre` in mm. */
export interface Opening {
  readonly name: string;
  readonly centre: Point;
  /** unit vector pointing out of the blood */
  readonly normal: Point;
  /** mm */
  readonly width: number;
  /** m/s mean, INTO the blood positive, parabolic across the opening */
  readonly velocity?: number;
  /** mmHg; an opening has a velocity or a pressure */
  readonly pressure?: number;
}

/** What a flow solver can be built from; it knows nothing of pathways. */
export interface FlowGeometry {
  /** union of these ... */
  readonly open: readonly Shape[];
  /** ... minus these */
  readonly solid: readonly Shape[];
  readonly openings: readonly Opening[];
}

/** A point of the picture (mm) that edits one parameter of the request: dragged, keyed or typed. */
export interface Handle {
  /** parameter name */
  readonly edits: string;
  readonly at: Point;
  /** unit vector in which the value grows */
  readonly along: Point;
  /** parameter units per mm of movement along `along` */
  readonly perMillimetre: number;
}

/** A named place with space for its label, mm. */
export interface Place {
  /** word key: "svc", "ivc", "atrium", "leftPulmonaryArtery", an element of the ledger ... */
  readonly name: string;
  readonly at: Point;
  /** where the label should be, outside the lumen */
  readonly label: Point;
  /** mm around it to highlight, where it is more than a point */
  readonly radius?: number;
}

/** One station of the path that the grade line and the picture share. */
export interface Station {
  readonly element: string;
  /** fractions from the hepatic vein to the atrium: start and end */
  readonly from: number;
  readonly to: number;
  /** where in the plane (mm), for lighting up the element; absent for places beyond the plane such as the lung bed */
  readonly area?: { readonly centre: Point; readonly radius: number };
}

/** A complete pathway (or another scene's plane). Openings of a pathway are named "ivc", "svc", "left", "right" and, when open, "fenestration". */
export interface PathwayGeometry extends FlowGeometry {
  readonly name: string;
  /** mm: [left, bottom, right, top] of the blood */
  readonly bounds: readonly [number, number, number, number];
  readonly handles: readonly Handle[];
  readonly places: readonly Place[];
  readonly path: readonly Station[];
  /** where the chest around the pathway is to be drawn; what lies there has no computed flow */
  readonly chest: ChestFrame;
}

/** What the drawing of heart, lungs, great vessels and liver holds on to, mm; seen from the front. */
export interface ChestFrame {
  /** the body's lengths over a 5-year-old's, dimensionless */
  readonly scale: number;
  /** height of the atrium's middle */
  readonly level: number;
  /** where the heart begins beside the pathway, and its lengths over a 5-year-old's (dimensionless) */
  readonly heart: number;
  readonly heartScale: number;
  /** the atrium's closed outline */
  readonly atrium: readonly Point[];
  /** where the pathway's vessels go on into the body */
  readonly svc: Opening;
  readonly ivc: Opening;
  readonly left: Opening;
  readonly right: Opening;
  /** the last stretch of each pulmonary artery's axis, to its opening's centre */
  readonly arteries?: Readonly<Record<"left" | "right", readonly Point[]>>;
  /** inner diameter of the hepatic veins together */
  readonly hepaticVein: number;
  /** the inferior vena cava's course into the atrium where the pathway leaves it out, upwards */
  readonly lowerVein?: readonly Point[];
  /** where the superior vena cava is sewn to the pulmonary arteries, and its width there */
  readonly junction?: { readonly at: Point; readonly width: number };
  /** through the pathway's wall to the atrium, where it is open */
  readonly hole?: Opening;
  /** half the width and half the height of an atrium that is part of the pathway, about the origin */
  readonly chamber?: Point;
  /** a tube of woven graft, or a patch that is the side of a tunnel towards the patient's left; upwards, with its width at each point */
  readonly graft?: {
    readonly kind: "conduit" | "patch";
    readonly line: readonly Point[];
    readonly widths: readonly number[];
  };
}
