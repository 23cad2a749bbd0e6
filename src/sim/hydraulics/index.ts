/** Handbook hydraulics of the pathway: its law, where the pressure is spent, and the grade line. */
export { type GradePressures, gradeLine } from "./grade-line.ts";
export { ledger, type PathwayLoss, pathwayLoss } from "./ledger.ts";
export { type FlowSplit, pathwayLaw } from "./network.ts";
