/** Unknown input in, a trusted request or every fault out. The page, the lessons and `compute` all pass through here. */
import { describeList, type Fault, nearestMatch } from "../faults.ts";
import { findParameter, PARAMETERS } from "../parameters/parameters.ts";
import {
  BODY_RANGES,
  type Body,
  type BodyRange,
  type CirculationRequest,
  type ParameterValue,
  STAGES,
  type Stage,
  VOLUME_RULES,
  type VolumeRule,
} from "../parameters/request.ts";

const REQUEST_KEYS = ["kind", "stage", "body", "volumeRule", "set"] as const;
/** Settings of the heart itself: a body answers a weaker or stiffer one by keeping water until output is back. */
const HEART_SETTINGS = ["contractility", "stiffness", "atrioventricularValveLeak", "semilunarValveLeak"];

/** What a request without a rule holds, by whether it sets anything of the heart itself. */
export const defaultVolumeRule = (set: Readonly<Record<string, ParameterValue>>): VolumeRule =>
  HEART_SETTINGS.some((name) => name in set) ? "hold-output" : "hold-atrial-pressure";

export type Checked<T> = { readonly request: T } | { readonly faults: readonly Fault[] };

/**
 * `stage` and `body` are required, of the body what has no usual value; `volumeRule` defaults to hold-atrial-pressure, or to hold-output where the heart's own
 * settings are moved, so that a weaker or stiffer heart congests; `set` to nothing set.
 * @param path prefix of the key paths in faults, such as "base."
 */
export function checkRequest(input: unknown, path = ""): Checked<CirculationRequest> {
  const faults: Fault[] = [];
  if (!isRecord(input))
    return { faults: [{ path: path || "request", found: shown(input), allowed: "an object" }] };
  refuseUnknownKeys(input, REQUEST_KEYS, path, faults);
  if (input.kind !== "circulation")
    faults.push({ path: `${path}kind`, found: shown(input.kind), allowed: '"circulation"' });
  const stage = oneOf<Stage>(input.stage, STAGES, `${path}stage`, faults);
  const body = checkBody(input.body, `${path}body`, faults);
  const set = checkSettings(input.set, `${path}set`, faults);
  const volumeRule =
    input.volumeRule === undefined
      ? defaultVolumeRule(set)
      : oneOf<VolumeRule>(input.volumeRule, VOLUME_RULES, `${path}volumeRule`, faults);
  if (faults.length > 0 || !stage || !volumeRule) return { faults };
  return { request: { kind: "circulation", stage, body: body as Body, volumeRule, set } };
}

function checkBody(input: unknown, path: string, faults: Fault[]): Partial<Body> {
  const keys = Object.keys(BODY_RANGES) as (keyof Body)[];
  if (!isRecord(input)) {
    faults.push({ path, found: shown(input), allowed: `an object with ${keys.join(", ")}` });
    return {};
  }
  refuseUnknownKeys(input, keys, `${path}.`, faults);
  const body = Object.fromEntries(
    keys.map((key) => {
      const range: BodyRange = BODY_RANGES[key];
      const value = input[key] === undefined ? range.usual : input[key];
      numberWithin(value, range, `${path}.${key}`, faults);
      return [key, value];
    }),
  );
  return body as unknown as Body;
}

function checkSettings(input: unknown, path: string, faults: Fault[]): Record<string, ParameterValue> {
  if (input === undefined) return {};
  if (!isRecord(input)) {
    faults.push({ path, found: shown(input), allowed: "an object of parameters by name" });
    return {};
  }
  refuseUnknownKeys(
    input,
    PARAMETERS.map(({ name }) => name),
    `${path}.`,
    faults,
  );
  for (const [name, value] of Object.entries(input)) {
    const parameter = findParameter(name);
    if (parameter?.kind === "number") numberWithin(value, parameter, `${path}.${name}`, faults);
    if (parameter?.kind === "word") oneOf(value, parameter.words, `${path}.${name}`, faults);
  }
  return { ...(input as Record<string, ParameterValue>) };
}

/** An object that is no array. */
export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

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
