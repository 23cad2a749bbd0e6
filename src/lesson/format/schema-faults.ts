/** What does not fit a schema, each key once and in words for whoever writes the text. */
import type * as v from "valibot";
import { entryAt } from "../../sim/checked/present.ts";
import { type Fault, nearestMatch } from "../../sim/faults.ts";
import { numberAlone } from "../slips/number-slips.ts";
import { yamlSlip } from "../slips/yaml-slips.ts";

type Schema = v.GenericSchema;
type Path = readonly (string | number)[];

export interface SchemaFault extends Omit<Fault, "path"> {
  readonly path: Path;
}

/** `at`: the line of a key path, and what stands on it */
export function schemaFaults(
  issues: readonly v.BaseIssue<unknown>[],
  schema: Schema,
  at: (...path: Path) => { readonly line: number; readonly text: string },
): readonly SchemaFault[] {
  const told = new Set<string>();
  const paths = issues.map(({ path = [] }) => path.map(({ key }) => key as string | number));
  const unknown = issues.flatMap(({ expected }, index) =>
    expected === "never" ? [String(paths[index]?.at(-1)).toLowerCase()] : [],
  );
  return issues.flatMap((issue, index): SchemaFault[] => {
    const path = entryAt(paths, index);
    // A key in capitals is one fault, not an unknown and a missing one.
    if (issue.received === "undefined" && unknown.includes(String(path.at(-1)).toLowerCase())) return [];
    const list = listWithoutKeys(issue, path);
    const fault = list ?? { path, ...slipAt(issue, path, schema, at(...path).text) };
    const key = JSON.stringify([fault.path, list ? "" : fault.found]);
    if (told.has(key)) return [];
    told.add(key);
    return [fault];
  });
}

/** A list where each entry needs a key of its own: told once, at the list. */
function listWithoutKeys(issue: v.BaseIssue<unknown>, path: Path): SchemaFault | null {
  const depth = (issue.path ?? []).findIndex(({ type, input }) => type === "object" && Array.isArray(input));
  if (depth < 1) return null;
  const holder = path.slice(0, depth);
  return {
    path: holder,
    found: `${holder.join(".")}: a list with hyphens`,
    allowed: "a key for each entry, such as  wide: { say: ..., because: ... }",
  };
}

function slipAt(
  issue: v.BaseIssue<unknown>,
  path: Path,
  schema: Schema,
  line: string,
): Omit<SchemaFault, "path"> {
  const found = foundIn(issue, path);
  const { input } = issue;
  // `conduitDiameter: 12,5` between braces is read as 12 and a key 5.
  if (/^\d+$/.test(String(path.at(-1))) && input === null && /\d,\d/.test(line))
    return {
      found: `${path.slice(0, -1).join(".")}: a comma within a number`,
      allowed: "a point",
      fix: [line, line.replaceAll(/(\d),(\d)/g, "$1.$2")],
    };
  if (issue.expected === "number" && typeof input === "string") {
    const { allowed, right } = numberAlone(input);
    return { found, allowed, ...(right === undefined ? {} : { fix: [input, right] }) };
  }
  if (typeof input === "object" && input !== null && /: /.test(line)) {
    const slip = yamlSlip(line.replace(/^(\s*)- /, "$1  text: "), 0);
    if (slip && /^\s*- /.test(line)) {
      const text = line.replace(/^\s*- /, "").trim();
      return { found: "a colon within a text", allowed: slip.allowed, fix: [text, JSON.stringify(text)] };
    }
  }
  const tag = path.at(-1) === "language" ? TAGS[String(input).toLowerCase()] : undefined;
  return { found, allowed: allowedBy(issue, path, schema), ...(tag ? { fix: [String(input), tag] } : {}) };
}

/** Languages by the names that authors give them. */
const TAGS: Readonly<Record<string, string>> = Object.assign(Object.create(null), {
  english: "en",
  german: "de",
  deutsch: "de",
  spanish: "es",
  español: "es",
  french: "fr",
  français: "fr",
});

function foundIn(issue: v.BaseIssue<unknown>, path: Path): string {
  const where = path.join(".");
  if (issue.received === "undefined") return `no ${where}`;
  if (issue.expected === "never") return `unknown key ${where}`;
  return `${where ? `${where}: ` : ""}${shorten(issue.input)}`;
}

const shorten = (input: unknown): string => {
  const text = JSON.stringify(input) ?? String(input);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
};

function allowedBy(issue: v.BaseIssue<unknown>, path: Path, schema: Schema): string {
  if (issue.expected === "never") return keysAllowed(schema, path);
  if (issue.type === "min_length" && typeof issue.input === "string") return "some words";
  // A rule of its own says in words what it allows.
  if (issue.kind === "validation" && !issue.message.startsWith("Invalid")) return issue.message;
  const words = [...(issue.expected ?? "").matchAll(/"([^"]*)"/g)].map((match) => entryAt(match, 1));
  if (issue.received === "undefined") return `${path[path.length - 1]} is needed`;
  if (words.length > 0) {
    const near = typeof issue.input === "string" ? nearestMatch(issue.input, words) : undefined;
    return words.join(", ") + (near ? `; nearest: ${near}` : "");
  }
  return issue.expected ?? issue.message;
}

function keysAllowed(schema: Schema, path: Path): string {
  let entries: Readonly<Record<string, unknown>> = {};
  let at: unknown = schema;
  for (const key of path) {
    const node = bare(at);
    entries = (node.entries as Record<string, unknown>) ?? {};
    at = entries[key as string] ?? node.value ?? node.item;
  }
  const keys = Object.keys(entries);
  const found = String(path[path.length - 1]);
  // The rest of a sentence, cut at its comma.
  if (found.includes(" ")) return `${keys.join(", ")}; a text with a comma between { } stands in quotes`;
  const near = nearestMatch(found, keys);
  return keys.join(", ") + (near ? `; nearest: ${near}` : "");
}

/** The schema inside "optional" and "nullable". */
function bare(schema: unknown): Record<string, unknown> {
  let node = (schema ?? {}) as Record<string, unknown>;
  while (node.wrapped) node = node.wrapped as Record<string, unknown>;
  return node;
}
