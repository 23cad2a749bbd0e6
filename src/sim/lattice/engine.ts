/** Chooses how a lattice's steps are done. */
import { type Engine, plainEngine } from "./lattice.ts";

/** Memory and sweep for `count` cells. */
export const chooseEngine = (count: number): Engine => plainEngine(count);
