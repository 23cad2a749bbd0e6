/** Finds the closure's constants on a few calibration cases, then runs the best of them on all cases, and mixing on some. */
import type { SetCase } from "../three-d/fit-set.ts";
import { fittedCases } from "./cases.ts";
import { type Closure, OFF } from "./closure.ts";
import { missOf, scoreOf } from "./judge.ts";
import type { Mixing } from "./origin.ts";
import type { PlaneLine } from "./run-case.ts";
import { type PlaneJob, sweep } from "./sweep.ts";

/** The search takes every third of the cases that aren't held out. */
const SEARCH = 6;

/** Cells across the narrowest opening: as the live field of several panes. */
const ACROSS = 12;
const MIXINGS: readonly Mixing[] = [
  { by: "bending", part: 0.1 },
  { by: "bending", part: 0.2 },
];
/** Parts of the time for the search, its first look around included, and for that look. */
const SEARCHING = 0.22;

const FIRST: readonly Partial<Closure>[] = [
  { turn: 0.45, eddy: 0.08 },
  { turn: 0.6, eddy: 0.08 },
  { turn: 0.45, eddy: 0.15 },
  { turn: 0.6 },
];

type Step = { readonly [K in keyof Closure]: number };
const WIDE: Step = { momentum: 0.15, turn: 0.1, slow: 0.15, eddy: 0.02 };

/** Both ways along each constant. */
const around = (best: Closure, part: number): Closure[] =>
  (Object.keys(WIDE) as (keyof Closure)[]).flatMap((key) =>
    [-1, 1].map((sign) => ({
      ...best,
      [key]: Math.max(OFF[key], Number((best[key] + sign * part * WIDE[key]).toFixed(4))),
    })),
  );

const keyOf = (closure: Closure): string => JSON.stringify(closure);

interface Asked {
  readonly processes: number;
  /** one case in so many */
  readonly every: number;
  /** mixing is slow, and changes shares alone */
  readonly mixed: boolean;
}

/** @param closures constants that differ from none */
export async function runAll(
  file: string,
  { processes, every, mixed }: Asked,
  closures: readonly Partial<Closure>[],
): Promise<void> {
  const mixings = mixed ? MIXINGS : [];
  const names = fittedCases()
    .filter((_, place) => place % every === 0)
    .map(({ stored }) => stored.name);
  const jobs = closures.flatMap((closure) =>
    names.map((name) => ({ name, closure: { ...OFF, ...closure }, mixings, across: ACROSS })),
  );
  await sweep(jobs, file, processes, Number.POSITIVE_INFINITY);
}

/** @param seconds of wall-clock time in all */
export async function calibrate(file: string, processes: number, seconds: number): Promise<void> {
  const began = Date.now();
  const all = fittedCases();
  const few = all.filter((_, place) => place % SEARCH === 0);
  const scores = new Map<string, number>();
  const at = (part: number) => began + 1000 * seconds * part;
  const run = async (
    cases: readonly SetCase[],
    closures: readonly Closure[],
    mixings: readonly Mixing[],
    until: number,
  ) => {
    const jobs: PlaneJob[] = closures.flatMap((closure) =>
      cases.map(({ stored }) => ({ name: stored.name, closure, mixings, across: ACROSS })),
    );
    return sweep(jobs, file, processes, until);
  };
  const look = async (closures: readonly Closure[]) => {
    const fresh = closures.filter((closure) => !scores.has(keyOf(closure)));
    const lines = await run(few, fresh, [], at(SEARCHING));
    for (const closure of fresh) {
      const own = lines.filter((line) => keyOf(line.closure) === keyOf(closure));
      if (own.length === few.length) scores.set(keyOf(closure), scoreFor(few, own));
    }
  };
  const ranked = () => [...scores].sort((a, b) => a[1] - b[1]).map(([key]) => JSON.parse(key) as Closure);
  await look(FIRST.map((closure) => ({ ...OFF, ...closure })));
  for (let part = 1; Date.now() < at(SEARCHING) && part > 0.2; part *= 0.6) {
    const before = keyOf(ranked()[0] ?? OFF);
    await look(around(ranked()[0] ?? OFF, part));
    // as long as it goes on getting better, steps stay long
    if (keyOf(ranked()[0] ?? OFF) !== before) part /= 0.6;
  }
  for (const [score, closure] of ranked().slice(0, 5).entries())
    console.log(`${score + 1}. ${keyOf(closure)} ${scores.get(keyOf(closure))?.toFixed(3)}`);
  const best = ranked()[0] ?? OFF;
  await run(all, [best], [], at(1));
  await run(
    all.filter((_, place) => place % SEARCH === 1),
    [OFF, best],
    MIXINGS,
    at(1),
  );
}

function scoreFor(cases: readonly SetCase[], lines: readonly PlaneLine[]): number {
  const found = new Map(lines.map((line) => [line.name, line]));
  return scoreOf(cases.map((one) => missOf(one, found.get(one.stored.name)!)));
}
