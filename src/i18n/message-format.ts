/**
 * The part of ICU MessageFormat that the messages use: `{name}`, `{name, number, ::.0}`, `plural`, `select`, `#`, and
 * an apostrophe that quotes a brace. Small because it is part of the first view.
 */
import { present } from "../sim/checked/present.ts";

export type Arguments = Readonly<Record<string, string | number>>;

type Branches = Readonly<Record<string, readonly Part[]>>;
export type Part =
  | string
  | { readonly kind: "value"; readonly name: string }
  | { readonly kind: "number"; readonly name: string; readonly style: Intl.NumberFormatOptions }
  | { readonly kind: "plural" | "select"; readonly name: string; readonly branches: Branches }
  | { readonly kind: "count" };

/** @throws a SyntaxError that names the place in the text and what is allowed there */
export function parseMessage(text: string): readonly Part[] {
  const reader = readerOf(text);
  const parts = readParts(reader, false);
  if (!reader.take(/$/y)) reader.refuse("the end");
  return parts;
}

interface Reader {
  /** Takes what the pattern (sticky) finds here; null where it finds nothing. */
  take(pattern: RegExp): RegExpExecArray | null;
  refuse(allowed: string): never;
  /** The same as `take`, where nothing else is allowed. */
  must(pattern: RegExp, allowed: string): RegExpExecArray;
}

function readerOf(text: string): Reader {
  let at = 0;
  const take = (pattern: RegExp) => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found) at += found[0].length;
    return found;
  };
  const refuse = (allowed: string): never => {
    const found = at < text.length ? `“${text.slice(at, at + 12)}”` : "the end";
    throw new SyntaxError(`message “${text}”, character ${at + 1}: found ${found}, allowed: ${allowed}`);
  };
  return { take, refuse, must: (pattern, allowed) => take(pattern) ?? refuse(allowed) };
}

const LITERAL = /''|'(?=[{}])((?:[^']|'')*)'?|[^{}#']+|'/y;

/** Up to the brace that closes a branch, or to the end. */
function readParts(reader: Reader, counted: boolean): readonly Part[] {
  const parts: Part[] = [];
  const add = (text: string) => {
    const last = parts.at(-1);
    if (typeof last === "string") parts[parts.length - 1] = last + text;
    else parts.push(text);
  };
  while (!reader.take(/(?=\})|$/y)) {
    if (reader.take(/#/y)) {
      if (counted) parts.push({ kind: "count" });
      else add("#");
    } else if (reader.take(/\{/y)) parts.push(readPlace(reader, counted));
    else {
      const [whole, quoted] = reader.must(LITERAL, "text");
      add(whole === "''" ? "'" : (quoted?.replaceAll("''", "'") ?? whole));
    }
  }
  return parts;
}

function readPlace(reader: Reader, counted: boolean): Part {
  const name = present(reader.must(/\s*(\w+)\s*/y, "a name")[1]);
  if (reader.take(/\}/y)) return { kind: "value", name };
  const kind = reader.must(/,\s*(number|plural|select)\s*/y, "number, plural or select")[1];
  if (kind === "number") {
    const [, skeleton = ""] = reader.must(/(?:,\s*::([^{}]*?)\s*)?\}/y, "}, or a form that begins with ::");
    return { kind, name, style: styleOf(skeleton, reader) };
  }
  reader.must(/,\s*/y, "a comma and the branches");
  const branches = readBranches(reader, counted || kind === "plural");
  return { kind: kind === "plural" ? "plural" : "select", name, branches };
}

function readBranches(reader: Reader, counted: boolean): Branches {
  // Without a prototype: a word such as "constructor" finds no branch.
  const branches: Record<string, readonly Part[]> = Object.create(null);
  for (let branch = reader.take(/(=?\w+)\s*\{/y); branch; branch = reader.take(/(=?\w+)\s*\{/y)) {
    branches[present(branch[1])] = readParts(reader, counted);
    reader.must(/\}\s*/y, "}");
  }
  if (!branches.other) reader.refuse("a branch named other");
  reader.must(/\}/y, "} or another branch");
  return branches;
}

/** `.00`, `precision-integer` and `+!` */
function styleOf(skeleton: string, reader: Reader): Intl.NumberFormatOptions {
  const style: Intl.NumberFormatOptions = {};
  for (const stem of skeleton.split(/\s+/).filter(Boolean)) {
    const digits = stem === "precision-integer" ? 0 : /^\.(0+)$/.exec(stem)?.[1]?.length;
    if (digits !== undefined)
      Object.assign(style, { minimumFractionDigits: digits, maximumFractionDigits: digits });
    else if (stem === "+!") style.signDisplay = "always";
    else reader.refuse(`a form of .0, precision-integer or +!, not ${stem}`);
  }
  return style;
}

/** The parts as one text, numbers as the language writes them. @throws where an argument is missing */
export function formatMessage(
  parts: readonly Part[],
  language: string,
  args: Arguments = {},
  count = 0,
): string {
  const textOf = (part: Part): string => {
    if (typeof part === "string") return part;
    if (part.kind === "count") return numbers(language, {}).format(count);
    const value = Object.hasOwn(args, part.name) ? args[part.name] : undefined;
    if (value === undefined) throw new Error(`a message needs ${part.name}`);
    if (part.kind === "value") return String(value);
    if (part.kind === "number") return numbers(language, part.style).format(Number(value));
    const { branches, kind } = part;
    const own = branches[kind === "select" ? String(value) : `=${value}`];
    if (kind === "select") return formatMessage(own ?? present(branches.other), language, args, count);
    const sort = new Intl.PluralRules(language).select(Number(value));
    return formatMessage(own ?? branches[sort] ?? present(branches.other), language, args, Number(value));
  };
  return parts.map(textOf).join("");
}

const made = new Map<string, Intl.NumberFormat>();

/** Making one takes longer than a frame has for all its words. */
export function numbers(language: string, style: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = `${language} ${style.minimumFractionDigits} ${style.signDisplay} ${style.numberingSystem}`;
  const known = made.get(key) ?? new Intl.NumberFormat(language, style);
  made.set(key, known);
  return known;
}
