/** The plane's lines beside three dimensions, as rows of a table in Markdown. */
import { existsSync, readFileSync } from "node:fs";
import type { SetCase } from "../three-d/fit-set.ts";
import { fittedCases, isHeldOut } from "./cases.ts";
import type { Closure } from "./closure.ts";
import { type LeftParts, type Miss, missOf } from "./judge.ts";
import type { PlaneLine } from "./run-case.ts";

/** Bars: of power a part, of a share of a vein's blood itself. */
const POWER = 0.25;
const SHARE = 0.08;

export function readLines(file: string): PlaneLine[] {
  if (!existsSync(file))
    throw new Error(`${file}: found nothing; allowed: lines written by calibrate or run`);
  return readFileSync(file, "utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as PlaneLine);
}

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
    part(misses, ({ upper }) => upper <= SHARE),
  ];
  return [`| ${cells.join(" | ")} |`];
}

const HEAD = [
  "| closure, cases | number | power within 25 % | median of power over 3D's | shares within 0.08 | median miss | upper vein's within 0.08 |",
  "|---|---|---|---|---|---|---|",
];

const titleOf = ({ momentum, turn, slow, eddy }: Closure): string =>
  `momentum ${momentum}, turn ${turn}, slow ${slow}, eddy ${eddy}`;

/** Rows for each closure that at least `least` cases (count) were run with. */
export function tableOf(lines: readonly PlaneLine[], least: number): string {
  const cases = fittedCases();
  const closures = new Map(lines.map((line) => [JSON.stringify(line.closure), line.closure]));
  const rows = [...closures].flatMap(([key, closure]) => {
    const own = new Map<string, PlaneLine>();
    for (const line of lines)
      if (JSON.stringify(line.closure) === key && (line.mixed.length > 0 || !own.has(line.name)))
        own.set(line.name, line);
    if (own.size < least) return [];
    const judged = cases.flatMap((one, place) => {
      const line = own.get(one.stored.name);
      return line ? [{ one, place, line }] : [];
    });
    const mixings = judged.find(({ line }) => line.mixed.length > 0)?.line.mixed ?? [];
    return [
      ["calibration", judged.filter(({ place }) => !isHeldOut(place))] as const,
      ["held out", judged.filter(({ place }) => isHeldOut(place))] as const,
    ].flatMap(([kind, those]) => [
      ...row(`${titleOf(closure)}: ${kind}`, those, ({ parcels }) => parcels),
      ...mixings.flatMap(({ by, part: amount }, n) =>
        row(`the same, mixed by ${by} ${amount}: ${kind}`, those, ({ mixed }) => mixed[n]),
      ),
    ]);
  });
  return [...HEAD, ...rows].join("\n");
}
