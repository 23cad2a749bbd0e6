/** The stored lines, docs/validation/plane-set.jsonl: rounded, one for each case and closure. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import type { PlaneLine } from "./run-case.ts";

export const STORED = "docs/validation/plane-set.jsonl";

export function readLines(file: string): PlaneLine[] {
  if (!existsSync(file))
    throw new Error(`${file}: found nothing; allowed: lines written by calibrate, run or mix`);
  return readFileSync(file, "utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as PlaneLine);
}

const rounded = (key: string, value: unknown): unknown =>
  key === "seconds" || key === "audit"
    ? undefined
    : typeof value === "number"
      ? Number(value.toPrecision(4))
      : value;

/** A line with mixing takes the place of one without. */
export function keepLines(files: readonly string[]): void {
  const kept = new Map<string, PlaneLine>();
  for (const line of files.flatMap(readLines)) {
    const key = JSON.stringify([line.closure, line.name]);
    if (line.mixed.length > 0 || !kept.has(key)) kept.set(key, line);
  }
  writeFileSync(STORED, [...kept.values()].map((line) => `${JSON.stringify(line, rounded)}\n`).join(""));
}
