/** How fields are computed here: by the vector kernel, or in plain steps. */
export { hasVectors } from "../sim/flow-solver/vector-probe.ts";
