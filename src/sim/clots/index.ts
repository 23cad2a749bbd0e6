/** Clots moved by the flow field. */
export { type Clot, ClotWorld } from "./clot-world.ts";
export type { Blood, Surroundings } from "./forces.ts";
