/** The plane's lines beside three dimensions, as rows of a table in Markdown. */
import type { SetCase } from "../three-d/fit-set.ts";
import { fittedCases, isHeldOut } from "./cases.ts";
import { type Closure, OFF } from "./closure.ts";
import { type LeftParts, type Miss, missOf } from "./judge.ts";
import type { Mixing } from "./origin.ts";
import type { PlaneLine } from "./run-case.ts";

/** Bars: of power a part, of a share of a vein's blood itself. */
const POWER = 0.25;
const SHARE = 0.08;
/** A part that misses by more than this was sent to the other lung. */
const OTHER_SIDE = 0.3;

const part = (misses: readonly Miss[], holds: (miss: Miss) => boolean): string =>
  `${Math.round((100 * misses.filter(holds).length) / misses.length)} %`;

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

interface Judged {
  readonly one: SetCase;
  readonly place: number;
  readonly line: PlaneLine;
}

function row(
  title: string,
  judged: readonly Judged[],
  partsOf: (line: PlaneLine) => LeftParts | undefined,
): string[] {
  const misses = judged.flatMap(({ one, line }) => {
    const parts = partsOf(line);
    return parts ? [missOf(one, line, parts)] : [];
  });
  if (misses.length === 0) return [];
  const cells = [
    title,
    `${misses.length}`,
    part(misses, ({ power }) => Math.abs(Math.exp(power) - 1) <= POWER),
    Math.exp(median(misses.map(({ power }) => power))).toFixed(2),
    part(misses, ({ share }) => share <= SHARE),
    median(misses.map(({ share }) => share)).toFixed(2),
    part(misses, ({ share }) => share > OTHER_SIDE),
    part(misses, ({ upper }) => upper <= SHARE),
  ];
  return [`| ${cells.join(" | ")} |`];
}

const HEAD = [
  `| closure, cases | number | power within ${100 * POWER} % | median of power over 3D's | shares within ${SHARE} | median miss | over ${OTHER_SIDE} off | upper vein's within ${SHARE} |`,
  "|---|---|---|---|---|---|---|---|",
];

const titleOf = (closure: Closure): string =>
  (Object.keys(OFF) as (keyof Closure)[])
    .filter((key) => closure[key] !== OFF[key])
    .map((key) => `${key} ${closure[key]}`)
    .join(", ") || "none";

const titleOfMixing = ({ by, part: amount }: Mixing): string => `mixed by ${by} ${amount}`;

/** Fewest cases that a closure was run with to be judged. */
const MIN_CASES = 30;

const isSameSide = ({ one, line }: Judged): boolean => missOf(one, line).share <= OTHER_SIDE;

/** The cases that were mixed, without and with it; and those of them that the plane alone sends to the right side. */
function mixedRows(kind: string, judged: readonly Judged[]): string[] {
  const those = judged.filter(({ line }) => line.mixed.length > 0);
  const mixings = new Set(those.flatMap(({ line }) => line.mixed.map(titleOfMixing)));
  const sets: [string, readonly Judged[]][] = [
    [kind, those],
    [`${kind}, those within ${OTHER_SIDE} unmixed`, those.filter(isSameSide)],
  ];
  return sets.flatMap(([which, some]) => [
    ...row(`- to be mixed, not yet: ${which}`, some, ({ parcels }) => parcels),
    ...[...mixings].flatMap((mixing) =>
      row(`- ${mixing}: ${which}`, some, ({ mixed }) => mixed.find((each) => titleOfMixing(each) === mixing)),
    ),
  ]);
}

/** Rows for one closure; of the plane as it is also for the chambers alone. */
function closureRows(closure: Closure, judged: readonly Judged[]): string[] {
  const title = titleOf(closure);
  const kinds: [string, readonly Judged[]][] = [
    ["calibration", judged.filter(({ place }) => !isHeldOut(place))],
    ["held out", judged.filter(({ place }) => isHeldOut(place))],
  ];
  const chambers = judged.filter(({ one }) => one.stored.stage === "atriopulmonary");
  return [
    ...kinds.flatMap(([kind, those]) => [
      ...row(`**${title}**: ${kind}`, those, ({ parcels }) => parcels),
      ...mixedRows(kind, those),
    ]),
    ...(title === "none" ? row("none: chambers", chambers, ({ parcels }) => parcels) : []),
  ];
}

/** The plane as it is first, then closures in the order of their constants. */
export function tableOf(lines: readonly PlaneLine[]): string {
  const cases = fittedCases();
  const keys = new Set(lines.map((line) => JSON.stringify(line.closure)));
  const rows = [...keys].sort().flatMap((key) => {
    const own = new Map(
      lines.filter((line) => JSON.stringify(line.closure) === key).map((line) => [line.name, line]),
    );
    if (own.size < MIN_CASES) return [];
    const judged = cases.flatMap((one, place) => {
      const line = own.get(one.stored.name);
      return line ? [{ one, place, line }] : [];
    });
    return closureRows(JSON.parse(key) as Closure, judged);
  });
  return [...HEAD, ...rows].join("\n");
}
