import { entryAt } from "../sim/checked/present.ts";

/** A number for whoever reads, drawn once and known to nobody: it decides where a question's answers stand. */
export const drawReader = (): number => entryAt(crypto.getRandomValues(new Uint32Array(1)), 0);
