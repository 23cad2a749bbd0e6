/** Tracers: massless, from an opening to another, never through a wall. */
export { advance, type Step } from "./advance.ts";
export { entrance, type Supply } from "./inflow.ts";
export { farWall, freeJet, type Hole, type Jet } from "./jet.ts";
export { fill, resettle } from "./release.ts";
export { TracerCloud } from "./tracer-cloud.ts";
export { type TracerPlane, tracerPlane } from "./tracer-plane.ts";
export {
  beginDye,
  recordWashOut,
  type WashOut,
  type WashOutSpread,
  washOutSpread,
} from "./wash-out.ts";
