/** Workers that the built page starts before its own code has come (`scripts/early-workers.ts`): each serves whoever asks first. */

const NAMES = ["circulation", "field"] as const;
type Name = (typeof NAMES)[number];

declare global {
  var lungwardWorkers: Partial<Record<Name, Worker>> | undefined;
}

/** Undefined where none was started, or another one has it. */
export function earlyWorker(name: Name): Worker | undefined {
  const worker = globalThis.lungwardWorkers?.[name];
  delete globalThis.lungwardWorkers?.[name];
  return worker;
}
