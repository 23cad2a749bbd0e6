import { IntlMessageFormat } from "intl-messageformat";
import { expect, it, test } from "vitest";
import { LANGUAGES, MESSAGES } from "../../src/i18n/index.ts";
import { type Arguments, formatMessage, type Part, parseMessage } from "../../src/i18n/message-format.ts";

/** Values that a message's arguments may have: each branch, and numbers that every language sorts differently. */
function valuesOf(parts: readonly Part[]): Map<string, readonly (string | number)[]> {
  const found = new Map<string, readonly (string | number)[]>();
  for (const part of parts) {
    if (typeof part === "string" || part.kind === "count") continue;
    if (part.kind === "plural" || part.kind === "select")
      for (const branch of Object.values(part.branches))
        for (const [name, values] of valuesOf(branch)) found.set(name, values);
    if (part.kind === "select") found.set(part.name, [...Object.keys(part.branches), "constructor"]);
    if (part.kind === "plural") found.set(part.name, [0, 1, 2, 1.5, 1234]);
    if (part.kind === "number") found.set(part.name, [1234.567, 0, -0.26, 1, 7.5]);
    if (part.kind === "value" && !found.has(part.name)) found.set(part.name, ["<a'b>", 18, 0.5]);
  }
  return found;
}

it.each(LANGUAGES)("the messages in %s read as an established reader of the format reads them", (tag) => {
  for (const [key, message] of Object.entries(MESSAGES[tag]!)) {
    const parts = parseMessage(message);
    const reference = new IntlMessageFormat(message, tag, undefined, { ignoreTag: true });
    const values = valuesOf(parts);
    for (let turn = 0; turn < 5; turn++) {
      const args: Arguments = Object.fromEntries(
        [...values].map(([name, each]) => [name, each[turn % each.length]!]),
      );
      expect(formatMessage(parts, tag, args), `${tag} ${key}`).toBe(reference.format(args));
    }
  }
});

test.each([
  ["it''s '{'quoted'}' and ''so'' on", {}],
  ["don't {x}", { x: 1 }],
  ["{n, plural, =1 {just #} one {#} other {# of {n} {s, select, a {A} other {B}}}}", { n: 1, s: "a" }],
  ["{n, plural, =1 {just #} one {#} other {# of {n} {s, select, a {A} other {B}}}}", { n: 3, s: "z" }],
  ["# {x, number, ::+! .00} {x, number} { x }", { x: 1234.5 }],
])("%s reads as an established reader of the format reads it", (message, args) => {
  const reference = new IntlMessageFormat(message, "en", undefined, { ignoreTag: true });
  expect(formatMessage(parseMessage(message), "en", args as Arguments)).toBe(reference.format(args));
});

test.each([
  ["{x", /character 3: found the end, allowed: /],
  ["a } b", /character 3: found “} b”, allowed: the end/],
  ["{x, date}", /allowed: number, plural or select/],
  ["{x, number, ::currency/EUR}", /not currency\/EUR/],
  ["{x, plural, one {a}}", /allowed: a branch named other/],
])("%s is refused with the place and what is allowed there", (message, told) => {
  expect(() => parseMessage(message)).toThrow(told);
});

test("an argument that is not given is named", () => {
  expect(() => formatMessage(parseMessage("{toString} {missing}"), "en", {})).toThrow(/toString/);
});
