/** One line of the solver's output, and its statistics. */

export interface RunLine {
  readonly name: string;
  /** mm */
  readonly dx: number;
  readonly cells: number;
  /** flow solver speed of the fastest opening's peak */
  readonly peak: number;
  /** s: a step, the flush time, the averaged stretch */
  readonly dt: number;
  readonly flush: number;
  readonly averaged: number;
  /** mW, mmHg, mW */
  readonly power: number;
  readonly drop: number;
  readonly dissipated: number;
  /** mL/s outwards; Pa, flux-weighted total and mean static; kinetic energy flux over that of the mean speed */
  readonly openings: Readonly<
    Record<
      string,
      { readonly flow: number; readonly total: number; readonly still: number; readonly kinetic: number }
    >
  >;
  readonly windows: {
    readonly power: readonly number[];
    readonly drop: readonly number[];
    /** counted up: from the lower vein to left, right, fenestration, then from the upper */
    readonly exits: readonly (readonly number[])[];
  };
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Standard deviation of one value, as the sample shows it; 0 of a single one. */
export function deviation(values: readonly number[]): number {
  const middle = mean(values);
  const sum = values.reduce((all, value) => all + (value - middle) ** 2, 0);
  return values.length > 1 ? Math.sqrt(sum / (values.length - 1)) : 0;
}

/** Windows in one flush time. */
const perFlush = ({ flush, averaged, windows }: RunLine): number =>
  Math.max(1, Math.round((flush * windows.power.length) / averaged));

/** Standard error of the mean, from batches of `size`; the larger of that and of twice the size where there are enough. */
function standardError(values: readonly number[], size: number): number {
  const error = (length: number): number => {
    const count = Math.floor(values.length / length);
    if (count < 3) return 0;
    const batches = Array.from({ length: count }, (_, k) => mean(values.slice(k * length, (k + 1) * length)));
    const middle = mean(batches);
    return Math.sqrt(batches.reduce((sum, each) => sum + (each - middle) ** 2, 0) / (count - 1) / count);
  };
  return Math.max(error(size), error(2 * size));
}

/** Fraction of the mean: uncertainty due to the flow's unsteadiness. */
export const scatterOf = (line: RunLine, key: "power" | "drop"): number =>
  standardError(line.windows[key], perFlush(line)) / Math.abs(line[key]);

export interface Share {
  readonly value: number;
  readonly scatter: number;
  readonly count: number;
}

/** Parts of a vein's blood that leave to left, right and fenestration; null when no blood entered there. */
export function sharesOf(
  line: RunLine,
  vein: "ivc" | "svc",
): Record<"left" | "right" | "fenestration", Share> | null {
  const at = vein === "ivc" ? 0 : 3;
  const size = perFlush(line);
  const { exits } = line.windows;
  const total = exits[exits.length - 1]!.slice(at, at + 3);
  const count = total.reduce((sum, each) => sum + each, 0);
  if (count === 0) return null;
  const share = (k: number): Share => {
    const flushes: number[] = [];
    for (let end = size; end < exits.length; end += size) {
      const passed = [0, 1, 2].map((e) => exits[end]![at + e]! - exits[end - size]![at + e]!);
      flushes.push(passed[k]! / Math.max(1, passed[0]! + passed[1]! + passed[2]!));
    }
    return { value: total[k]! / count, scatter: standardError(flushes, 1), count };
  };
  return { left: share(0), right: share(1), fenestration: share(2) };
}
