/** The state vector: volumes (m3), then the flows (m3/s) of the five vessels whose blood has inertia. */

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

export const AORTA_FLOW = 14;
export const SVC_FLOW = 15;
export const IVC_FLOW = 16;
export const LEFT_FLOW = 17;
export const RIGHT_FLOW = 18;
export const STATES = 19;

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
] as const;
export type FlowName = (typeof FLOWS)[number];
export const FLOW_INDEX = Object.fromEntries(FLOWS.map((name, index) => [name, index])) as Readonly<
  Record<FlowName, number>
>;
