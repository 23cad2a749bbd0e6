/** Numbers as a hall gave them, in bars of even width; strays go into the bars at the ends, which say how far they reach. */
import { quantileSorted, tickStep } from "d3-array";
import { barOf } from "../../../audience/bar-of.ts";

export interface Histogram {
  readonly counts: readonly number[];
  /** One more than bars: a bar holds its lower end, the last one its upper end too. */
  readonly edges: readonly number[];
}

/** About: as many as a hall takes in at a glance, and as a low stage holds below a question. */
const BARS = 5;
/** The share at each end that does not decide how wide the bars are. */
const STRAYS = 0.05;

/** @param model a number that must lie within the bars too; null = none */
export function histogramOf(numbers: readonly number[], model: number | null): Histogram {
  const sorted = [...numbers].sort((a, b) => a - b);
  const [low = 0, high = 1] = [STRAYS, 1 - STRAYS].map((share) => quantileSorted(sorted, share));
  const step = high > low ? tickStep(low, high, BARS) : Math.max(1, Math.abs(low) / 10);
  const first = Math.floor(low / step);
  const last = Math.floor(high / step) + 1;
  const edges = Array.from({ length: last - first + 1 }, (_, index) =>
    Number(((first + index) * step).toPrecision(12)),
  );
  const all = model === null ? sorted : [...sorted, model];
  // To the next step beyond: an end such as 43.21 would tell what someone gave.
  const reach = (end: number, to: (value: number) => number) =>
    Number((to(end / step) * step).toPrecision(12));
  for (const value of extremes(all)) {
    edges[0] = Math.min(edges[0] ?? low, value, reach(value, Math.floor));
    const end = edges.at(-1) ?? high;
    if (value > end) edges[edges.length - 1] = Math.max(value, reach(value, Math.ceil));
  }
  const counts = new Array<number>(edges.length - 1).fill(0);
  for (const value of sorted) {
    const bar = barOf(edges, value);
    counts[bar] = (counts[bar] ?? 0) + 1;
  }
  return { counts, edges };
}

const extremes = (values: readonly number[]): readonly number[] =>
  values.length === 0 ? [] : [Math.min(...values), Math.max(...values)];
