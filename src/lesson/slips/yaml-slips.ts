/** Slips in settings: what YAML reads otherwise than it was meant, line by line. */
import type { YAMLError } from "yaml";
import type { Slip } from "./slip.ts";

type Rule = (line: string, at: number, lines: readonly string[]) => Omit<Slip, "line"> | null;

const QUOTED = "the whole text in straight quotes";
/** `key: value` or `- value`, its indent and dash, its key, its value without quotes or braces of its own. */
const ENTRY = /^(\s*(?:- +)?)([A-Za-z][\w-]*):[ \t]+(\S.*?)\s*$/;
const CURLY = /^[„“”»«"]+|[“”«»"]+$/g;

const quoted = (text: string): string => JSON.stringify(text);
const indentOf = (line: string): string => /^\s*/.exec(line)?.[0] ?? "";

const tab: Rule = (line, at, lines) => {
  if (!/^ *\t/.test(line)) return null;
  const above = lines.slice(0, at).findLast((each) => each.trim() !== "") ?? "";
  const indent = indentOf(above).replaceAll("\t", "  ") + (/:\s*$/.test(above) ? "  " : "");
  return {
    found: "a tab at the start of the line",
    allowed: "blanks",
    fix: [line, indent + line.trimStart()],
  };
};

const closedQuote: Rule = (line) => {
  const [, lead = "", key = "", value = ""] = ENTRY.exec(line) ?? [];
  if (value.startsWith('"') && !/^"(?:[^"\\]|\\.)*"\s*(#.*)?$/.test(value))
    return {
      found: `quotes around a part of ${key}, or open ones`,
      allowed: QUOTED,
      fix: [line, `${lead}${key}: ${quoted(value.replace(CURLY, "").replaceAll('"', "'"))}`],
    };
  if (value.startsWith("'") && !/^'(?:[^']|'')*'\s*(#.*)?$/.test(value))
    return {
      found: `an apostrophe within single quotes in ${key}`,
      allowed: QUOTED,
      fix: [line, `${lead}${key}: ${quoted(value.replace(/^'|'$/g, ""))}`],
    };
  return null;
};

const colon: Rule = (line) => {
  const [, lead = "", key = "", value = ""] = ENTRY.exec(line) ?? [];
  if (!key || /^["'[{|>&*!]/.test(value) || !/:(\s|$)/.test(value)) return null;
  return {
    found: `a colon within the text of ${key}`,
    allowed: QUOTED,
    fix: [line, `${lead}${key}: ${quoted(value.replace(CURLY, ""))}`],
  };
};

const noBlank: Rule = (line) => {
  const [, lead = "", key = "", value = ""] = /^(\s*)([a-z][A-Za-z-]*):([^\s:/].*)$/.exec(line) ?? [];
  if (!key) return null;
  return {
    found: `no blank behind ${key}:`,
    allowed: "a blank between the colon and the value",
    fix: [line, `${lead}${key}: ${value}`],
  };
};

const sign: Rule = (line) => {
  const [, lead = "", key = "", value = ""] = ENTRY.exec(line) ?? [];
  if (!/^[`@%*&!]/.test(value)) return null;
  return {
    found: `${key} begins with ${value.charAt(0)}`,
    allowed: QUOTED,
    fix: [line, `${lead}${key}: ${quoted(value)}`],
  };
};

const openBracket: Rule = (line) => {
  const count = (letter: string) => line.split(letter).length - 1;
  for (const [open, close] of [
    ["{", "}"],
    ["[", "]"],
  ] as const)
    if (/^\s*(- +)?[\w-]+:\s*[[{]/.test(line) && count(open) === count(close) + 1)
      return {
        found: `a ${open} without its ${close}`,
        allowed: `${close} at the end of the list`,
        fix: [line, `${line.trimEnd()} ${close}`],
      };
  return null;
};

const indent: Rule = (line, at, lines) => {
  const own = indentOf(line).length;
  const above = lines.slice(0, at).filter((each) => each.trim() !== "" && !each.trim().startsWith("#"));
  const last = above.at(-1);
  if (last === undefined || line.trim() === "" || /:\s*$/.test(last)) return null;
  const known = [...new Set(above.map((each) => indentOf(each).length))];
  if (known.includes(own) || !/^\s*(- |[\w-]+:)/.test(line)) return null;
  // The line above, where it is next to it; else whichever of the lines above is nearest.
  const beside = indentOf(last).length;
  const [nearest = 0] = known.sort((a, b) => Math.abs(a - own) - Math.abs(b - own));
  const near = Math.abs(beside - own) === 1 ? beside : nearest;
  return {
    found: `a line that begins ${own} blanks in`,
    allowed: `as many as the lines that it belongs to: ${near}`,
    fix: [line, " ".repeat(near) + line.trimStart()],
  };
};

const RULES = [tab, closedQuote, colon, sign, openBracket, indent, noBlank];

/** The slip that a text which cannot be read has, at the line that was refused first, else anywhere. */
export function yamlSlip(text: string, line: number): Slip | null {
  const lines = text.split("\n");
  for (const at of [line, ...lines.keys()]) {
    for (const rule of RULES) {
      const slip = rule(lines[at] ?? "", at, lines);
      if (slip) return { line: at, ...slip };
    }
  }
  return null;
}

/** A sign for a comment right before a word: all behind it would be lost without a word. */
export function lostText(text: string): readonly Slip[] {
  return text.split("\n").flatMap((line, at) => {
    const [, lead = "", key = "", value = ""] = ENTRY.exec(line) ?? [];
    if (!key || /^["'[{|>&*!#]/.test(value) || !/\s#[^\s#]/.test(value)) return [];
    return [
      {
        line: at,
        found: `${key}: all behind # is left out`,
        allowed: `${QUOTED}; a comment has a blank behind its #`,
        fix: [line, `${lead}${key}: ${quoted(value)}`] as const,
      },
    ];
  });
}

const PLAIN: Readonly<Partial<Record<YAMLError["code"], readonly [string, string]>>> = {
  BAD_INDENT: ["a line that begins elsewhere than those that it belongs to", "the same number of blanks"],
  DUPLICATE_KEY: ["a key twice", "each key once"],
  MISSING_CHAR: ["quotes or brackets without their end", QUOTED],
  BLOCK_AS_IMPLICIT_KEY: ["a colon within a text", QUOTED],
};

/** What YAML found, in words of this kit where there are any. */
export const yamlWords = ({ code, message }: YAMLError): readonly [found: string, allowed: string] =>
  PLAIN[code] ?? [
    message.split("\n", 1)[0]?.slice(0, 160) ?? "",
    "key: value on each line; a text with signs such as : # { [ in straight quotes",
  ];
