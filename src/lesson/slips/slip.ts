/** A slip that many make, known by its look: said in plain words, with what would be right in its place. */
export interface Slip {
  /** counted from 0 in the text that was looked at */
  readonly line: number;
  readonly found: string;
  readonly allowed: string;
  readonly fix: readonly [wrong: string, right: string];
}
