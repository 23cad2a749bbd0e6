/**
 * The state vector: volumes (m3), then the flows (m3/s) of the five vessels whose blood has inertia; behind it, where a state is
 * searched for, the factors of what regulates it. Each place has a name of a literal type, so that an array read by name is a number.
 */

/** An array that is read at named places. */
export type Vector<Place extends number> = Float64Array & { [At in Place]: number };

/** A new array of zeros as one of named places; `length`, the number of places, is the caller's word. */
export const vector = <Place extends number>(length: number): Vector<Place> =>
  new Float64Array(length) as Vector<Place>;

export const COMPARTMENTS = [
  "ventricle",
  "atrium",
  "aorta",
  "arteries",
  "upperVeins",
  "splanchnicVeins",
  "legVeins",
  "ivc",
  "junction",
  "pulmonaryArteryLeft",
  "pulmonaryArteryRight",
  "pulmonaryVeins",
  "rightAtrium",
  "rightVentricle",
] as const;

export const VENTRICLE = 0;
export const ATRIUM = 1;
export const AORTA = 2;
export const ARTERIES = 3;
export const UPPER = 4;
export const SPLANCHNIC = 5;
export const LEGS = 6;
export const IVC = 7;
export const JUNCTION = 8;
export const LUNG_LEFT = 9;
export const LUNG_RIGHT = 10;
export const PULMONARY_VEINS = 11;
export const RIGHT_ATRIUM = 12;
export const RIGHT_VENTRICLE = 13;
export const VOLUMES = 14;
export type Compartment = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 13;

export const AORTA_FLOW = 14;
export const SVC_FLOW = 15;
export const IVC_FLOW = 16;
export const LEFT_FLOW = 17;
export const RIGHT_FLOW = 18;
export const STATES = 19;
export type InertFlow = 14 | 15 | 16 | 17 | 18;

/** Factors on the values without reflex, held over one cycle. */
export const RATE = 19;
export const RESISTANCE = 20;
export const CONTRACTILITY = 21;
/** on the unstressed volume of the systemic veins: below 1 they are constricted */
export const VENOUS_ROOM = 22;
/** on the conductance of the heart's own vessels */
export const CORONARY_FLOW = 23;
/** on the conductance of the upper body's bed */
export const UPPER_FLOW = 24;
/** m3/s: mean flows that the pathway's law is taken at, one for each of BRANCHES */
export const LAW_FLOWS = 25;
export const SEARCHED = 29;
type Regulated = 19 | 20 | 21 | 22 | 23 | 24;

/** [VOLUMES] */
export type ByCompartment = Vector<Compartment>;
/** [STATES] or [SEARCHED] */
export type State = Vector<Compartment | InertFlow>;
export type Point = Vector<Compartment | InertFlow | Regulated>;

/** Flows that follow from the pressures of the moment, by place in the scratch array. */
export const FLOWS = [
  "atrioventricularValve",
  "semilunarValve",
  "upperBed",
  "splanchnicBed",
  "legBed",
  "coronary",
  "collateralLeft",
  "collateralRight",
  "hepatic",
  "legVeins",
  "fenestration",
  "lungLeft",
  "lungRight",
  "pulmonaryVeins",
  "rightAtrioventricularValve",
  "rightSemilunarValve",
  "venoVenous",
  "workingMuscle",
] as const;

export const ATRIOVENTRICULAR_VALVE = 0;
export const SEMILUNAR_VALVE = 1;
export const UPPER_BED = 2;
export const SPLANCHNIC_BED = 3;
export const LEG_BED = 4;
export const CORONARY = 5;
export const COLLATERAL_LEFT = 6;
export const COLLATERAL_RIGHT = 7;
export const LIVER = 8;
export const LEG_VEINS = 9;
export const FENESTRATION = 10;
export const LUNG_BED_LEFT = 11;
export const LUNG_BED_RIGHT = 12;
export const PULMONARY_VEINS_OUT = 13;
export const RIGHT_ATRIOVENTRICULAR_VALVE = 14;
export const RIGHT_SEMILUNAR_VALVE = 15;
export const VENO_VENOUS = 16;
/** the part of the leg bed's flow that passes muscle which squeezes */
export const WORKING_MUSCLE = 17;
export type Flow = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 13 | 14 | 15 | 16 | 17;
/** [FLOWS.length] */
export type Flows = Vector<Flow>;

/** Factors (>= 1) on the resistance out of collapsing veins. */
export const UPPER_COLLAPSE = 0;
export const SPLANCHNIC_COLLAPSE = 1;
export const LEG_COLLAPSE = 2;
export const IVC_COLLAPSE = 3;
type Collapse = Vector<0 | 1 | 2 | 3>;

/** How far open the lungs' vessels are, on their two arterial sides and the venous one, and the pulmonary veins' mouths (of 1). */
export const LEFT_OPENING = 0;
export const RIGHT_OPENING = 1;
export const VEIN_OPENING = 2;
export const MOUTH_OPENING = 3;
type Openings = Vector<0 | 1 | 2 | 3>;

/** Pa: what the flow into the leg veins runs against, within muscle that squeezes and elsewhere. */
export const AGAINST_MUSCLE = 0;
export const AGAINST_VEINS = 1;
type Against = Vector<0 | 1>;

/** What one evaluation leaves behind: Pa, m3/s, and the rates of change of each state. */
export interface Scratch {
  /** against atmosphere */
  readonly pressures: ByCompartment;
  readonly flows: Flows;
  readonly collapse: Collapse;
  readonly openings: Openings;
  readonly against: Against;
  /** d(state)/dt: m3/s, then m3/s2 */
  readonly rates: State;
}

/** New memory for one evaluation. */
export const scratch = (): Scratch => ({
  pressures: vector(VOLUMES),
  flows: vector(FLOWS.length),
  collapse: vector(4),
  openings: vector(4),
  against: vector(2),
  rates: vector(STATES),
});
