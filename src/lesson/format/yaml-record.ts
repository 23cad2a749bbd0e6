/** YAML text -> a record that fits its schema, each fault with its line in the file. */
import * as v from "valibot";
import { type Document, isMap, isNode, isScalar, LineCounter, parseDocument } from "yaml";
import { entryAt } from "../../sim/checked/present.ts";
import { currentIds } from "../../sim/parameters/aliases.ts";
import type { Refuse } from "../read/read-prose.ts";
import { lostText, yamlSlip, yamlWords } from "../slips/yaml-slips.ts";
import { RECORD_LIMITS, type RecordLimits } from "./limits.ts";
import { schemaFaults } from "./schema-faults.ts";
import { recordFault } from "./yaml-amount.ts";

type Schema = v.GenericSchema;

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
    const [error] = document.errors;
    if (error) {
      // One slip is found again in all that follows: the first is told.
      const slip = yamlSlip(text, lineAt(error.pos[0]) - firstLine);
      const [found, allowed] = yamlWords(error);
      if (slip) refuse(firstLine + slip.line, slip.found, slip.allowed, slip.fix);
      else refuse(lineAt(error.pos[0]), found, allowed);
      return null;
    }
    for (const { line, found, allowed, fix } of lostText(text)) refuse(firstLine + line, found, allowed, fix);
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
  const lines = text.split("\n");
  for (const { path, ...fault } of schemaFaults(result.issues, schema, (...path) => {
    const line = lineOf(...path);
    return { line, text: lines[line - firstLine] ?? "" };
  }))
    refuse(lineOf(...path), fault.found, fault.allowed, fault.fix);
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
