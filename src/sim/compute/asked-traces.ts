/** The curves of a circulation, asked for by name in "traces": one cycle (a breath of whole beats), in the trade's units. */
import type { Circulation } from "../circulation/answer/answer.ts";
import type { Fault } from "../faults.ts";
import { oneOf, shown } from "../input-checks.ts";
import type { Schema, Table } from "./kind.ts";

const NAMES = {
  pressures: [
    "svc",
    "ivc",
    "hepaticVein",
    "pathway",
    "pulmonaryArteryLeft",
    "pulmonaryArteryRight",
    "pulmonaryVein",
    "atrium",
    "ventricle",
    "aorta",
    "pleural",
    "alveolar",
    "abdominal",
    "calf",
  ],
  flows: [
    "systemic",
    "pulmonary",
    "svc",
    "ivc",
    "left",
    "right",
    "fenestration",
    "aorta",
    "atrioventricularValve",
    "pulmonaryVein",
    "collaterals",
    "hepaticVein",
    "legs",
    "legBed",
    "workingMuscle",
    "splanchnic",
    "upper",
  ],
  volumes: [
    "ventricle",
    "atrium",
    "lungLeft",
    "lungRight",
    "pulmonaryVeins",
    "upperVeins",
    "splanchnicVeins",
    "legVeins",
    "ivc",
    "pathway",
  ],
} as const;

type Group = keyof typeof NAMES;
export type TraceName = { [G in Group]: `${G}.${(typeof NAMES)[G][number]}` }[Group];

const GROUPS = Object.keys(NAMES) as Group[];
export const TRACE_NAMES = GROUPS.flatMap((group) =>
  NAMES[group].map((name) => `${group}.${name}`),
) as readonly TraceName[];
const UNITS: Readonly<Record<string, string>> = { pressures: "mmHg", flows: "L/min", volumes: "mL" };

/** The schema with the wish for curves added. */
export const withTraces = (schema: Schema): Schema => ({
  ...schema,
  properties: {
    ...(schema.properties as object),
    traces: {
      type: "array",
      items: { enum: TRACE_NAMES },
      description: "curves over one breath, beside the numbers; as CSV they are the table",
    },
  },
});

/** Splits the wanted curves from the rest of a request. */
export function takeTraces(input: Record<string, unknown>): {
  readonly traces: readonly TraceName[];
  readonly rest: Record<string, unknown>;
  readonly faults: readonly Fault[];
} {
  if (input.traces === undefined) return { traces: [], rest: input, faults: [] };
  const { traces, ...rest } = input;
  const faults: Fault[] = [];
  if (!Array.isArray(traces)) {
    faults.push({ path: "traces", found: shown(traces), allowed: "a list of names" });
    return { traces: [], rest, faults };
  }
  const found = traces.flatMap(
    (name: unknown, i) => oneOf<TraceName>(name, TRACE_NAMES, `traces[${i}]`, faults) ?? [],
  );
  return { traces: found, rest, faults };
}

/** Curves over one cycle, each in the unit of its group: mmHg, L/min, mL. */
export interface AskedTraces {
  /** s */
  readonly time: readonly number[];
  readonly curves: Readonly<Record<string, readonly number[]>>;
}

/** The named curves of an answer, in its units (mmHg, L/min, mL) against time in s. */
export function tracesAsked({ traces }: Circulation, names: readonly TraceName[]): AskedTraces {
  const curve = (name: string): readonly number[] => {
    const [group, key] = name.split(".") as [Group, string];
    return [...(traces[group][key] ?? [])];
  };
  return { time: [...traces.time], curves: Object.fromEntries(names.map((name) => [name, curve(name)])) };
}

/** The curves as columns, or undefined where none were asked for: the numbers are the table then. */
export function traceTable(answer: object): Table | undefined {
  const asked = (answer as { readonly traces?: AskedTraces }).traces;
  if (!asked) return undefined;
  const names = Object.keys(asked.curves);
  const unit = (name: string) => UNITS[name.split(".")[0] ?? ""] ?? "";
  return {
    columns: ["time, s", ...names.map((name) => `${name}, ${unit(name)}`)],
    rows: asked.time.map((time, i) => [time, ...names.map((name) => asked.curves[name]?.[i] ?? null)]),
  };
}
