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
  const reader = { text, at: 0 };
  const parts = readParts(reader, false);
  if (reader.at < text.length) refuse(reader, "the end");
  return parts;
}

interface Reader {
  readonly text: string;
  at: number;
}

function refuse({ text, at }: Reader, allowed: string): never {
  const found = at < text.length ? `“${text.slice(at, at + 12)}”` : "the end";
  throw new SyntaxError(`message “${text}”, character ${at + 1}: found ${found}, allowed: ${allowed}`);
}

/** Takes what the pattern (sticky) finds here; null where it finds nothing. */
function take(reader: Reader, pattern: RegExp): RegExpExecArray | null {
  pattern.lastIndex = reader.at;
  const found = pattern.exec(reader.text);
  if (found) reader.at += found[0].length;
  return found;
}

const expectMatch = (reader: Reader, pattern: RegExp, allowed: string): RegExpExecArray =>
  take(reader, pattern) ?? refuse(reader, allowed);

const LITERAL = /''|'(?=[{}])((?:[^']|'')*)'?|[^{}#']+|'/y;

/** Up to the brace that closes a branch, or to the end. */
function readParts(reader: Reader, counted: boolean): readonly Part[] {
  const parts: Part[] = [];
  const add = (text: string) => {
    const last = parts.at(-1);
    if (typeof last === "string") parts[parts.length - 1] = last + text;
    else parts.push(text);
  };
  while (reader.at < reader.text.length && reader.text[reader.at] !== "}") {
    if (take(reader, /#/y)) {
      if (counted) parts.push({ kind: "count" });
      else add("#");
    } else if (take(reader, /\{/y)) parts.push(readPlace(reader, counted));
    else {
      const [whole, quoted] = expectMatch(reader, LITERAL, "text");
      add(whole === "''" ? "'" : (quoted?.replaceAll("''", "'") ?? whole));
    }
  }
  return parts;
}

function readPlace(reader: Reader, counted: boolean): Part {
  const name = present(expectMatch(reader, /\s*(\w+)\s*/y, "a name")[1]);
  if (take(reader, /\}/y)) return { kind: "value", name };
  const kind = expectMatch(reader, /,\s*(number|plural|select)\s*/y, "number, plural or select")[1];
  if (kind === "number") {
    const [, skeleton = ""] = expectMatch(
      reader,
      /(?:,\s*::([^{}]*?)\s*)?\}/y,
      "}, or a form that begins with ::",
    );
    return { kind, name, style: styleOf(skeleton, reader) };
  }
  expectMatch(reader, /,\s*/y, "a comma and the branches");
  const branches = readBranches(reader, counted || kind === "plural");
  return { kind: kind === "plural" ? "plural" : "select", name, branches };
}

function readBranches(reader: Reader, counted: boolean): Branches {
  // Without a prototype: a word such as "constructor" finds no branch.
  const branches: Record<string, readonly Part[]> = Object.create(null);
  for (let branch = take(reader, /(=?\w+)\s*\{/y); branch; branch = take(reader, /(=?\w+)\s*\{/y)) {
    branches[present(branch[1])] = readParts(reader, counted);
    expectMatch(reader, /\}\s*/y, "}");
  }
  if (!branches.other) refuse(reader, "a branch named other");
  expectMatch(reader, /\}/y, "} or another branch");
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
    else refuse(reader, `a form of .0, precision-integer or +!, not ${stem}`);
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
function numbers(language: string, style: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = `${language} ${style.minimumFractionDigits} ${style.signDisplay}`;
  const known = made.get(key) ?? new Intl.NumberFormat(language, style);
  made.set(key, known);
  return known;
}
