/** What every check of unknown input is made of: a value of the kind that is asked for, or a fault. */
import { describeList, type Fault, nearestMatch } from "./faults.ts";

/** What was asked for, once nothing is wrong with it; else all faults at once. */
export type Checked<T> = { readonly request: T } | { readonly faults: readonly Fault[] };

/** An object that is no array. */
export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The value when it is an object, else one fault and undefined. */
export function recordIn(
  value: unknown,
  path: string,
  faults: Fault[],
  allowed = "an object",
): Record<string, unknown> | undefined {
  if (isRecord(value)) return value;
  faults.push({ path, found: shown(value), allowed });
  return undefined;
}

/** One fault for each key that is not allowed, with the nearest that is. */
export function refuseUnknownKeys(
  input: Record<string, unknown>,
  allowed: readonly string[],
  prefix: string,
  faults: Fault[],
): void {
  for (const key of Object.keys(input)) {
    if (allowed.includes(key)) continue;
    const near = nearestMatch(key, allowed);
    faults.push({
      path: `${prefix}${key}`,
      found: "unknown key",
      allowed: near ? `did you mean "${near}"? one of ${describeList(allowed)}` : describeList(allowed),
    });
  }
}

/** The value when it is one of the allowed words, else one fault and undefined. */
export function oneOf<T extends string>(
  value: unknown,
  allowed: readonly T[],
  path: string,
  faults: Fault[],
): T | undefined {
  if (typeof value === "string" && (allowed as readonly string[]).includes(value)) return value as T;
  faults.push({ path, found: shown(value), allowed: allowed.map((each) => `"${each}"`).join(" | ") });
  return undefined;
}

/** Bounds of a number, themselves allowed; both in `unit`, which may be empty. */
interface NumberRange {
  readonly min: number;
  readonly max: number;
  readonly unit: string;
}

/** One fault where `value` is no number within the range. */
export function numberWithin(
  value: unknown,
  { min, max, unit }: NumberRange,
  path: string,
  faults: Fault[],
): void {
  if (typeof value === "number" && value >= min && value <= max) return;
  faults.push({ path, found: shown(value), allowed: `a number from ${min} to ${max} ${unit}` });
}

/** What was found, short enough for one line. */
export function shown(value: unknown): string {
  if (value === undefined) return "nothing (missing)";
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
