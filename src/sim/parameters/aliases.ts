import { present } from "../checked/present.ts";

/**
 * Ids of earlier versions in requests, lessons and links -> current ones. Applied wherever input comes in, never written; the earlier
 * words appear nowhere else.
 */
export const ALIASES = {
  words: { "before-completion": "glenn", strain: "valsalva" },
  parameters: {
    lungDistension: "pulmonaryDistensibility",
    inletValveLeak: "atrioventricularValveLeak",
    outletValveLeak: "semilunarValveLeak",
    strainPressure: "valsalvaPressure",
  },
  places: {
    lungArtery: "pulmonaryArtery",
    leftLungArtery: "leftPulmonaryArtery",
    rightLungArtery: "rightPulmonaryArtery",
    lungVein: "pulmonaryVein",
  },
  outputs: {
    "extras.lungArteryPressure": "extras.pulmonaryArteryPressure",
    "extras.lungArterySystolic": "extras.pulmonaryArterySystolic",
    "extras.lungArteryDiastolic": "extras.pulmonaryArteryDiastolic",
    "energy.losses.inletValve": "energy.losses.atrioventricularValve",
    "energy.losses.outletValve": "energy.losses.semilunarValve",
    "energy.losses.rightInletValve": "energy.losses.rightAtrioventricularValve",
    "energy.losses.rightOutletValve": "energy.losses.rightSemilunarValve",
    "energy.losses.liver": "energy.losses.hepatic",
    "energy.losses.lungVeins": "energy.losses.pulmonaryVeins",
  },
} as const satisfies Record<string, Readonly<Record<string, string>>>;

/** The current id; any other text unchanged. */
export function currentId(kind: keyof typeof ALIASES, id: string): string {
  const known: Readonly<Record<string, string>> = ALIASES[kind];
  return Object.hasOwn(known, id) ? present(known[id]) : id;
}

/** `second.extras.lungArteryPressure`, `set.strainPressure` -> the same path in current ids, with or without the state's name before it. */
export function currentPath(path: string): string {
  for (const [earlier, now] of Object.entries(ALIASES.outputs))
    if (path === earlier || path.endsWith(`.${earlier}`))
      return path.slice(0, path.length - earlier.length) + now;
  return path.replace(
    /(^|\.)set\.(\w+)$/,
    (_, before, name) => `${before}set.${currentId("parameters", name)}`,
  );
}

/** Unknown input with its ids replaced by current ones, wherever it holds a request or a scene. Everything else is unchanged. */
export function currentIds(input: unknown): unknown {
  if (Array.isArray(input)) return input.map(currentIds);
  if (typeof input !== "object" || input === null) return input;
  return Object.fromEntries(Object.entries(input).map(([key, value]) => [key, currentValue(key, value)]));
}

function currentValue(key: string, value: unknown): unknown {
  if (key === "set" && typeof value === "object" && value !== null) return currentSet(value);
  if (key === "outputs" && Array.isArray(value))
    return value.map((path) => (typeof path === "string" ? currentPath(path) : path));
  if (typeof value !== "string") return currentIds(value);
  if (key === "stage" || key === "breathing") return currentId("words", value);
  if (key === "focus") return currentId("places", value);
  if (key === "control" || key === "parameter") return currentId("parameters", value);
  return value;
}

/** A parameter that is given under both ids keeps the earlier one, which is then refused as unknown. */
function currentSet(set: object): object {
  const entries = Object.entries(set).map(([name, value]) => {
    const now = currentId("parameters", name);
    return [now in set ? name : now, currentValue(name, value)] as const;
  });
  return Object.fromEntries(entries);
}
