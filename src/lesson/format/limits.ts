/** Limits of a lesson's text: far more than any lesson needs, and little enough that no text makes a page wait. */
export const LIMITS = {
  /** characters and lines of a file */
  file: 200_000,
  lines: 5_000,
  steps: 60,
  /** characters of a part or block of a step */
  part: 8_000,
  /** characters of a step's title */
  title: 200,
  /** characters of an expression or a claim */
  expression: 400,
  /** characters of an equation; levels of its brackets; cells of its matrices, all together */
  formula: { characters: 1_000, depth: 20, cells: 100 },
  /** faults reported for one file */
  faults: 100,
} as const;

/** Limits of YAML: characters, keys, and levels opened in one line or bracket. */
export interface RecordLimits {
  readonly characters: number;
  readonly keys: number;
  readonly depth: number;
}

export const RECORD_LIMITS: RecordLimits = { characters: 8_000, keys: 200, depth: 20 };
/** Of the files that all lessons share. */
export const SHARED_LIMITS: RecordLimits = { characters: 200_000, keys: 5_000, depth: 20 };
