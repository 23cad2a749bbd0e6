/** YAML text -> a record that fits its schema, each fault with its line in the file. */
import * as v from "valibot";
import { type Document, isMap, isNode, isScalar, LineCounter, parseDocument } from "yaml";
import { entryAt } from "../sim/checked/present.ts";
import { nearestMatch } from "../sim/faults.ts";
import { currentIds } from "../sim/parameters/aliases.ts";
import { RECORD_LIMITS, type RecordLimits } from "./limits.ts";
import type { Refuse } from "./read-prose.ts";
import { recordFault } from "./yaml-amount.ts";

type Schema = v.GenericSchema;

const MAX_ERRORS = 5;

export interface ReadRecord<T> {
  readonly value: T;
  /** Line of the key path in the file. */
  lineOf(...path: readonly (string | number)[]): number;
}

/**
 * null when it does not fit; the faults went to `refuse`. `firstLine`: where `text` begins in its file (1-based).
 * The schema may depend on what the text says it is.
 */
export function readRecord<S extends Schema>(
  text: string,
  firstLine: number,
  fitting: S | ((raw: unknown) => S),
  refuse: Refuse,
  limits: RecordLimits = RECORD_LIMITS,
): ReadRecord<v.InferOutput<S>> | null {
  const counter = new LineCounter();
  const lineAt = (offset: number) => firstLine + Math.max(0, counter.linePos(offset).line - 1);
  const tooMuch = recordFault(text, limits);
  if (tooMuch) {
    refuse(firstLine, tooMuch.found, tooMuch.allowed);
    return null;
  }
  let document: Document;
  let raw: unknown;
  try {
    document = parseDocument(text, { lineCounter: counter, prettyErrors: false, uniqueKeys: true });
    // One slip is often found again in all that follows.
    for (const { pos, message } of document.errors.slice(0, MAX_ERRORS))
      refuse(lineAt(pos[0]), firstSentence(message), "YAML");
    if (document.errors.length > 0) return null;
    // Few aliases: a short text must not unfold into a huge one.
    raw = currentIds(document.toJS({ maxAliasCount: 20 }) ?? {});
  } catch (error) {
    refuse(firstLine, firstSentence(String((error as Error).message)), "YAML");
    return null;
  }
  const lineOf = (...path: readonly (string | number)[]) => lineAt(offsetOf(document, path));
  const schema = typeof fitting === "function" ? fitting(raw) : fitting;
  const result = v.safeParse(schema, raw);
  if (result.success) return { value: result.output, lineOf };
  for (const issue of result.issues) {
    const path = (issue.path ?? []).map(({ key }) => key as string | number);
    refuse(lineOf(...path), foundIn(issue, path), allowedBy(issue, path, schema));
  }
  return null;
}

const firstSentence = (message: string): string => entryAt(message.split("\n"), 0).slice(0, 160);

/** Nearest enclosing node that the document has for this path. */
function offsetOf(document: Document, path: readonly (string | number)[]): number {
  for (let length = path.length; length > 0; length--) {
    const parent = length === 1 ? document.contents : document.getIn(path.slice(0, length - 1), true);
    const key = path[length - 1];
    if (isMap(parent)) {
      const pair = parent.items.find(({ key: each }) => isScalar(each) && String(each.value) === String(key));
      if (pair && isNode(pair.key)) return pair.key.range?.[0] ?? 0;
    }
    const node = document.getIn(path.slice(0, length), true);
    if (isNode(node)) return node.range?.[0] ?? 0;
  }
  return 0;
}

function foundIn(issue: v.BaseIssue<unknown>, path: readonly (string | number)[]): string {
  const where = path.join(".");
  if (issue.received === "undefined") return `no ${where}`;
  if (issue.expected === "never") return `unknown key ${where}`;
  return `${where ? `${where}: ` : ""}${shorten(issue.input)}`;
}

const shorten = (input: unknown): string => {
  const text = JSON.stringify(input) ?? String(input);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
};

function allowedBy(issue: v.BaseIssue<unknown>, path: readonly (string | number)[], schema: Schema): string {
  if (issue.expected === "never") return keysAllowed(schema, path);
  const words = [...(issue.expected ?? "").matchAll(/"([^"]*)"/g)].map((match) => entryAt(match, 1));
  if (issue.received === "undefined") return `${path[path.length - 1]} is needed`;
  if (words.length > 0) {
    const near = typeof issue.input === "string" ? nearestMatch(issue.input, words) : undefined;
    return words.join(", ") + (near ? `; nearest: ${near}` : "");
  }
  return issue.expected ?? issue.message;
}

function keysAllowed(schema: Schema, path: readonly (string | number)[]): string {
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
