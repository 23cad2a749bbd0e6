/** Handbook hydraulics of the pathway: its law, where the pressure is spent, and the grade line. */
export { gradeLine } from "./grade-line.ts";
export { pathwayLaw } from "./pathway-network.ts";
