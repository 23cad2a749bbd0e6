/** One value of a YAML text set, added or taken out: all other lines, comments and the way they are written stay. */
import {
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  stringify,
  type YAMLMap,
  type YAMLSeq,
} from "yaml";
import { RECORD_LIMITS } from "../format/limits.ts";
import { recordFault } from "../format/yaml-amount.ts";

export type Path = readonly (string | number)[];
type Parent = YAMLMap<Node, Node | null> | YAMLSeq<Node>;

/** Long enough for a pair of braces on the line of its key. */
const SHORT = 70;

/** null where the text cannot be read as YAML. */
function parse(text: string) {
  if (recordFault(text, RECORD_LIMITS)) return null;
  const document = parseDocument(text, { keepSourceTokens: true, uniqueKeys: true });
  return document.errors.length > 0 ? null : document;
}

export interface LenientRecord {
  readonly value: Readonly<Record<string, unknown>>;
  /** Every key path of the text, with its line counted from 0, outer ones first. */
  readonly places: readonly KeyPlace[];
}

interface KeyPlace {
  readonly path: Path;
  readonly line: number;
}

/** What stands in the text whether it fits or not; null where it cannot be read. */
export function readLeniently(text: string): LenientRecord | null {
  try {
    const document = parse(text);
    if (!document) return null;
    const value: unknown = document.toJS({ maxAliasCount: 20 }) ?? {};
    if (typeof value !== "object" || Array.isArray(value)) return null;
    return { value: value as Record<string, unknown>, places: placesIn(document.contents, text) };
  } catch {
    return null;
  }
}

function placesIn(node: unknown, text: string, path: Path = []): KeyPlace[] {
  if (!isCollection(node)) return [];
  return (node.items as readonly (Node | PairOf)[]).flatMap((item, index) => {
    const [start, value] = isPairOf(item) ? [item.key, item.value] : [item, item];
    const here = [...path, isPairOf(item) ? String((item.key as { value?: unknown }).value) : index];
    const line = text.slice(0, start?.range?.[0] ?? 0).split("\n").length - 1;
    return [{ path: here, line }, ...placesIn(value, text, here)];
  });
}

type PairOf = Pair<Node, Node | null>;
const isPairOf = (node: Node | PairOf): node is PairOf => "key" in node && !("range" in node);

function childOf(parent: unknown, key: string | number): Node | PairOf | undefined {
  if (isMap<Node, Node | null>(parent))
    return parent.items.find(({ key: each }) => isScalar(each) && String(each.value) === String(key));
  return isSeq<Node>(parent) ? parent.items[Number(key)] : undefined;
}

/**
 * `value` undefined takes the key out, and with it what would be left empty around it.
 * @param order keys of the outermost map in the order in which a new one takes its place
 * @returns null where the text cannot be read, or the edit would change anything else
 */
export function setIn(
  text: string,
  path: Path,
  value: unknown,
  order: readonly string[] = [],
): string | null {
  const document = parse(text);
  if (!document) return null;
  if (!document.contents || !isMap(document.contents)) {
    if (document.contents && !(isScalar(document.contents) && document.contents.value === null)) return null;
    if (value === undefined) return text;
    return `${text === "" || text.endsWith("\n") ? text : `${text}\n`}${pairText(nested(path, value), 0)}`;
  }
  let parent = document.contents as Parent;
  let depth = 0;
  for (; depth < path.length - 1; depth++) {
    const child = childOf(parent, path[depth] as string);
    const node = child && isPairOf(child) ? child.value : child;
    if (!isCollection(node)) break;
    if (node.items.length === 0) break;
    parent = node as Parent;
  }
  const key = path[depth] as string | number;
  const deepest = depth === path.length - 1;
  if (value === undefined) {
    if (!deepest || !childOf(parent, key)) return text;
    if (parent.items.length === 1 && depth > 0) return setIn(text, path.slice(0, -1), undefined, order);
    return ifReadable(removed(text, parent, key));
  }
  const inner = deepest ? value : (nested(path.slice(depth), value) as Record<string, unknown>)[key];
  const there = childOf(parent, key);
  return ifReadable(
    there ? replaced(text, parent, there, inner) : added(text, parent, key, inner, depth === 0 ? order : []),
  );
}

/** Only what can be read again. */
const ifReadable = (text: string): string | null => (parse(text) ? text : null);

function nested(path: Path, value: unknown): unknown {
  return path.reduceRight<unknown>(
    (inner, key) => (typeof key === "number" ? [inner] : { [key]: inner }),
    value,
  );
}

/** Within braces or brackets, on one line. */
const inFlow = (value: unknown): string =>
  stringify([value], { collectionStyle: "flow", lineWidth: 0, blockQuote: false })
    .trimEnd()
    .slice(1, -1)
    .trim();

const inBlock = (value: unknown): string =>
  stringify(value, { lineWidth: 0, blockQuote: false, indent: 2 }).trimEnd();

/** Numbers, switches and single words go in braces; sentences take lines of their own. */
function isTerse(value: unknown): boolean {
  if (typeof value !== "object" || value === null) return typeof value !== "string" || !value.includes(" ");
  return Object.values(value).every(isTerse) && inFlow(value).length <= SHORT;
}

/** What stands behind a key's colon. */
function valueText(value: unknown, indent: number): string {
  if (typeof value !== "object" || value === null) return ` ${inBlock(value)}`;
  if (isTerse(value) || Object.keys(value).length === 0) return ` ${inFlow(value)}`;
  const pad = " ".repeat(indent + 2);
  return `\n${inBlock(value)
    .split("\n")
    .map((line) => pad + line)
    .join("\n")}`;
}

/** A record as the lines of a block. */
export const recordText = (record: Readonly<Record<string, unknown>>): string => pairText(record, 0);

function pairText(record: unknown, indent: number): string {
  return Object.entries(record as Record<string, unknown>)
    .map(([key, value]) => `${" ".repeat(indent)}${inFlow(key)}:${valueText(value, indent)}`)
    .join("\n");
}

/** Where the last thing that the node holds ends. */
function endOf(node: Node | null | undefined): number {
  if (isCollection(node) && !node.flow && node.items.length > 0) {
    const last = node.items.at(-1) as Node | PairOf;
    if (!isPairOf(last)) return endOf(last);
    return last.value ? endOf(last.value) : (last.key.range?.[1] ?? 0) + 1;
  }
  return node?.range?.[1] ?? 0;
}

const indentAt = (text: string, at: number): number => at - (text.lastIndexOf("\n", at - 1) + 1);
const lineEnd = (text: string, at: number): number => {
  // A block scalar ends behind its line's end.
  if (text[at - 1] === "\n") return at - 1;
  const end = text.indexOf("\n", at);
  return end < 0 ? text.length : end;
};
const splice = (text: string, from: number, to: number, by: string): string =>
  text.slice(0, from) + by + text.slice(to);

function replaced(text: string, parent: Parent, there: Node | PairOf, value: unknown): string {
  if (!isPairOf(there)) {
    const from = there.range?.[0] ?? 0;
    const end = endOf(there);
    return splice(text, from, end, parent.flow ? inFlow(value) : inBlock(value));
  }
  const key = there.key.range?.[0] ?? 0;
  const colon = text.indexOf(":", there.key.range?.[1] ?? key) + 1;
  const end = there.value ? Math.max(colon, endOf(there.value)) : colon;
  const closing = text[end - 1] === "\n" ? "\n" : "";
  return splice(
    text,
    colon,
    end,
    (parent.flow ? ` ${inFlow(value)}` : valueText(value, indentAt(text, key))) + closing,
  );
}

function added(
  text: string,
  parent: Parent,
  key: string | number,
  value: unknown,
  order: readonly string[],
): string {
  if (parent.flow) {
    const close = (parent.range?.[1] ?? 1) - 1;
    const before = text.slice(0, close).trimEnd();
    const item = isSeq(parent) ? inFlow(value) : `${inFlow(key)}: ${inFlow(value)}`;
    return `${before}${parent.items.length > 0 ? "," : ""} ${item} ${text.slice(close)}`;
  }
  const first = parent.items[0] as Node | PairOf;
  const indent = isSeq(parent)
    ? indentAt(text, text.lastIndexOf("-", first && !isPairOf(first) ? (first.range?.[0] ?? 0) : 0))
    : indentAt(text, isPairOf(first) ? (first.key.range?.[0] ?? 0) : 0);
  const line = isSeq(parent) ? `${" ".repeat(indent)}- ${inFlow(value)}` : pairText({ [key]: value }, indent);
  const rank = order.indexOf(String(key));
  const earlier = (parent.items as readonly (Node | PairOf)[]).filter(
    (each) => rank < 0 || !isPairOf(each) || before(order, each, rank),
  );
  const after = earlier.at(-1);
  if (!after) return splice(text, 0, 0, `${line}\n`);
  const end = lineEnd(text, isPairOf(after) ? endOfPair(after) : endOf(after));
  return splice(text, end, end, `\n${line}`);
}

const before = (order: readonly string[], { key }: PairOf, rank: number): boolean => {
  const at = order.indexOf(String(isScalar(key) ? key.value : ""));
  return at >= 0 && at < rank;
};

const endOfPair = ({ key, value }: PairOf): number => Math.max((key.range?.[1] ?? 0) + 1, endOf(value));

function removed(text: string, parent: Parent, key: string | number): string {
  const items = parent.items as readonly (Node | PairOf)[];
  const there = childOf(parent, key) as Node | PairOf;
  const from = (isPairOf(there) ? there.key.range?.[0] : there.range?.[0]) ?? 0;
  const end = isPairOf(there) ? endOfPair(there) : endOf(there);
  if (parent.flow) {
    const last = items.at(-1) === there;
    if (items.length === 1) return splice(text, from, end, "");
    if (!last) return splice(text, from, text.slice(end).search(/[^\s,]/) + end, "");
    return splice(text, text.slice(0, from).replace(/[\s,]+$/, "").length, end, "");
  }
  // A pair at the start of a list's item stands behind its dash.
  const start = text.lastIndexOf("\n", from - 1) + 1;
  const stop = Math.min(text.length, lineEnd(text, end) + 1);
  const rest = splice(text, start, stop, "");
  return stop === text.length && !text.endsWith("\n") ? rest.replace(/\n$/, "") : rest;
}
