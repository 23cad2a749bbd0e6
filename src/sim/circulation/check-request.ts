/** Unknown input in, a trusted request or every fault out. The page, the lessons and `compute` all pass through here. */
import type { Fault } from "../faults.ts";
import { type Checked, numberWithin, oneOf, recordIn, refuseUnknownKeys, shown } from "../input-checks.ts";
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

/**
 * `stage` and `body` are required, of the body what has no usual value; `volumeRule` defaults to hold-atrial-pressure, or to hold-output where the heart's own
 * settings are moved, so that a weaker or stiffer heart congests; `set` to nothing set.
 * @param path prefix of the key paths in faults, such as "base."
 */
export function checkRequest(input: unknown, path = ""): Checked<CirculationRequest> {
  const faults: Fault[] = [];
  const asked = recordIn(input, path || "request", faults);
  if (!asked) return { faults };
  refuseUnknownKeys(asked, REQUEST_KEYS, path, faults);
  if (asked.kind !== "circulation")
    faults.push({ path: `${path}kind`, found: shown(asked.kind), allowed: '"circulation"' });
  const stage = oneOf<Stage>(asked.stage, STAGES, `${path}stage`, faults);
  const body = checkBody(asked.body, `${path}body`, faults);
  const set = checkSettings(asked.set, `${path}set`, faults);
  const volumeRule =
    asked.volumeRule === undefined
      ? defaultVolumeRule(set)
      : oneOf<VolumeRule>(asked.volumeRule, VOLUME_RULES, `${path}volumeRule`, faults);
  if (faults.length > 0 || !stage || !volumeRule) return { faults };
  return { request: { kind: "circulation", stage, body: body as Body, volumeRule, set } };
}

function checkBody(input: unknown, path: string, faults: Fault[]): Partial<Body> {
  const keys = Object.keys(BODY_RANGES) as (keyof Body)[];
  const given = recordIn(input, path, faults, `an object with ${keys.join(", ")}`);
  if (!given) return {};
  refuseUnknownKeys(given, keys, `${path}.`, faults);
  const body = Object.fromEntries(
    keys.map((key) => {
      const range: BodyRange = BODY_RANGES[key];
      const value = given[key] === undefined ? range.usual : given[key];
      numberWithin(value, range, `${path}.${key}`, faults);
      return [key, value];
    }),
  );
  return body as unknown as Body;
}

function checkSettings(input: unknown, path: string, faults: Fault[]): Record<string, ParameterValue> {
  if (input === undefined) return {};
  const given = recordIn(input, path, faults, "an object of parameters by name");
  if (!given) return {};
  refuseUnknownKeys(
    given,
    PARAMETERS.map(({ name }) => name),
    `${path}.`,
    faults,
  );
  for (const [name, value] of Object.entries(given)) {
    const parameter = findParameter(name);
    if (parameter?.kind === "number") numberWithin(value, parameter, `${path}.${name}`, faults);
    if (parameter?.kind === "word") oneOf(value, parameter.words, `${path}.${name}`, faults);
  }
  return { ...(given as Record<string, ParameterValue>) };
}
