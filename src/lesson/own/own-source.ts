/** Lessons beside the kit's own. A page sets where they come from when it starts; the command line has none. */
import type { Fault } from "../../sim/faults.ts";

export interface OwnFile {
  /** As faults name it. */
  readonly file: string;
  readonly text: string;
}

export interface OwnLessons {
  readonly files: readonly OwnFile[];
  /** Why some could not be had. */
  readonly faults: readonly Fault[];
}

export type OwnSource = () => Promise<OwnLessons>;

const NONE: OwnLessons = { files: [], faults: [] };
let source: OwnSource = async () => NONE;

export function setOwnSource(read: OwnSource): void {
  source = read;
}

/** Never rejects: own lessons that cannot be had must not keep the kit's from opening. */
export const ownFiles: OwnSource = () => source().catch(() => NONE);
