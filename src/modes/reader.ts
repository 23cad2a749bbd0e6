/** A number for whoever reads, drawn once and known to nobody: it decides where a question's answers stand. */
export const drawReader = (): number => crypto.getRandomValues(new Uint32Array(1))[0]!;
