/** Loose bodies: clots carried by the field. */
export { type Clot, ClotWorld } from "./clot-world.ts";
export type { Blood, Surroundings } from "./forces.ts";
