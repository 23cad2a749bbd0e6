/** Lessons beside the kit's own. A page sets where they come from when it starts; the command line has none. */

export interface OwnFile {
  /** As faults name it. */
  readonly file: string;
  readonly text: string;
}

export type OwnSource = () => Promise<readonly OwnFile[]>;

let source: OwnSource = async () => [];

export function setOwnSource(read: OwnSource): void {
  source = read;
}

/** Never rejects: own lessons that cannot be had must not keep the kit's from opening. */
export const ownFiles: OwnSource = () => source().catch(() => []);
