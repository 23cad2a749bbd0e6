/** What of the schematic is pointed at, and how far all else draws back from it. */
export interface Emphasis {
  /** names of vessels, outlines and chambers' volumes */
  readonly lit: ReadonlySet<string>;
  /** 0..1 */
  readonly dim: number;
}

export const NO_EMPHASIS: Emphasis = { lit: new Set(), dim: 0 };

/** How far what bears this name draws back. */
export const dimOf = ({ lit, dim }: Emphasis, name: string): number => (lit.has(name) ? 0 : dim);
