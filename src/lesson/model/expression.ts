/** The arithmetic that lesson files may write: names, numbers, + - * /, comparison, and / or / not, abs, sqrt, min, max. Nothing else can be said. */

import { entryAt, present } from "../../sim/checked/present.ts";
import { LIMITS } from "../format/limits.ts";

export type Expression =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "name"; readonly path: string }
  | { readonly kind: "call"; readonly name: FunctionName; readonly of: readonly Expression[] }
  | { readonly kind: "negate" | "not"; readonly of: Expression }
  | {
      readonly kind: "binary";
      readonly operator: Operator;
      readonly left: Expression;
      readonly right: Expression;
    };

const FUNCTIONS = { abs: 1, sqrt: 1, min: 2, max: 2 } as const;
type FunctionName = keyof typeof FUNCTIONS;
type Operator = "or" | "and" | "<" | "<=" | ">" | ">=" | "+" | "-" | "*" | "/";

/** Binding strength, weakest first. Comparisons do not chain. */
const STRENGTH: ReadonlyMap<string, number> = new Map([
  ["or", 1],
  ["and", 2],
  ["<", 3],
  ["<=", 3],
  [">", 3],
  [">=", 3],
  ["+", 4],
  ["-", 4],
  ["*", 5],
  ["/", 5],
]);
const COMPARISON = present(STRENGTH.get("<"));
const TOKEN = /\s*(?:(\d+(?:\.\d+)?)|([A-Za-z][A-Za-z0-9]*(?:\.[A-Za-z][A-Za-z0-9]*)*)|(<=|>=|[-+*/()<>,]))/y;
/** Deeper nesting than this is a mistake, and would only exhaust the stack. */
const DEEPEST = 40;
const MAX_TOKENS = 200;

export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly found: string; readonly allowed: string };

const refuse = (found: string, allowed: string) => ({ ok: false, found, allowed }) as const;

/** Text -> expression, or what was found instead. Never throws. */
export function parseExpression(text: string): Parsed<Expression> {
  if (text.length > LIMITS.expression)
    return refuse(`an expression of ${text.length} characters`, `at most ${LIMITS.expression}`);
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (text.slice(TOKEN.lastIndex).trim() !== "") {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(text);
    if (!match)
      return refuse(
        JSON.stringify(text.slice(at).trim().slice(0, 20)),
        "names, numbers, + - * / < <= > >= ( )",
      );
    tokens.push(match[1] ?? match[2] ?? entryAt(match, 3));
    if (tokens.length > MAX_TOKENS) return refuse("a very long expression", `at most ${MAX_TOKENS} parts`);
  }
  let position = 0;
  let refusal: { ok: false; found: string; allowed: string } | null = null;
  const fail = (allowed: string): null => {
    refusal ??= refuse(tokens[position] ?? "the end", allowed);
    return null;
  };

  function primary(depth: number): Expression | null {
    if (depth > DEEPEST) return fail(`at most ${DEEPEST} levels of brackets`);
    const token = tokens[position];
    if (token === undefined) return fail("a name or a number");
    if (token === "-" || token === "not") {
      position++;
      const of = token === "-" ? primary(depth + 1) : binary(COMPARISON, depth + 1);
      return of && { kind: token === "-" ? "negate" : "not", of };
    }
    if (token === "(") {
      position++;
      const inner = binary(1, depth + 1);
      if (!inner) return null;
      if (tokens[position] !== ")") return fail("a closing bracket");
      position++;
      return inner;
    }
    if (/^\d/.test(token)) {
      position++;
      return { kind: "number", value: Number(token) };
    }
    if (!/^[A-Za-z]/.test(token) || STRENGTH.has(token)) return fail("a name or a number");
    position++;
    if (tokens[position] !== "(") return { kind: "name", path: token };
    return call(token, depth);
  }

  function call(name: string, depth: number): Expression | null {
    if (!Object.hasOwn(FUNCTIONS, name)) {
      position--;
      return fail(`one of ${Object.keys(FUNCTIONS).join(", ")}`);
    }
    const of: Expression[] = [];
    do {
      position++;
      const argument = binary(1, depth + 1);
      if (!argument) return null;
      of.push(argument);
    } while (tokens[position] === ",");
    const wanted = FUNCTIONS[name as FunctionName];
    if (tokens[position] !== ")" || of.length !== wanted) return fail(`${name} with ${wanted} in brackets`);
    position++;
    return { kind: "call", name: name as FunctionName, of };
  }

  function binary(weakest: number, depth: number): Expression | null {
    let left = primary(depth);
    while (left) {
      const operator = tokens[position];
      const strength = operator === undefined ? undefined : STRENGTH.get(operator);
      if (strength === undefined || strength < weakest) return left;
      if (strength === COMPARISON && isComparison(left)) return fail("and, between two comparisons");
      position++;
      const right = binary(strength + 1, depth + 1);
      if (!right) return null;
      left = { kind: "binary", operator: operator as Operator, left, right };
    }
    return null;
  }

  const value = binary(1, 0);
  if (value && position < tokens.length) fail("an operator or the end");
  return refusal ?? { ok: true, value: present(value) };
}

const isComparison = (expression: Expression): boolean =>
  expression.kind === "binary" && STRENGTH.get(expression.operator) === COMPARISON;

/** Every name that the expression reads. */
export function namesIn(expression: Expression): readonly string[] {
  switch (expression.kind) {
    case "number":
      return [];
    case "name":
      return [expression.path];
    case "call":
      return expression.of.flatMap(namesIn);
    case "binary":
      return [...namesIn(expression.left), ...namesIn(expression.right)];
    default:
      return namesIn(expression.of);
  }
}

/** A name's value in its own unit; null while it is not known. */
export type Lookup = (path: string) => number | null;

/** The number; null when a name is not known yet or the result is not finite. Conditions give 1 or 0. */
export function evaluate(expression: Expression, lookup: Lookup): number | null {
  const value = raw(expression, lookup);
  return value !== null && Number.isFinite(value) ? value : null;
}

/** As {@link evaluate}, read as a condition. */
export function holds(expression: Expression, lookup: Lookup): boolean | null {
  const value = evaluate(expression, lookup);
  return value === null ? null : value !== 0;
}

function raw(expression: Expression, lookup: Lookup): number | null {
  switch (expression.kind) {
    case "number":
      return expression.value;
    case "name":
      return lookup(expression.path);
    case "negate":
    case "not": {
      const of = raw(expression.of, lookup);
      if (of === null) return null;
      return expression.kind === "negate" ? -of : Number(of === 0);
    }
    case "call": {
      const of = expression.of.map((argument) => raw(argument, lookup));
      if (of.includes(null)) return null;
      const apply: (...of: number[]) => number = Math[expression.name];
      return apply(...(of as number[]));
    }
    case "binary": {
      const left = raw(expression.left, lookup);
      const right = raw(expression.right, lookup);
      return left === null || right === null ? null : combine(expression.operator, left, right);
    }
  }
}

function combine(operator: Operator, left: number, right: number): number {
  switch (operator) {
    case "or":
      return Number(left !== 0 || right !== 0);
    case "and":
      return Number(left !== 0 && right !== 0);
    case "<":
      return Number(left < right);
    case "<=":
      return Number(left <= right);
    case ">":
      return Number(left > right);
    case ">=":
      return Number(left >= right);
    case "+":
      return left + right;
    case "-":
      return left - right;
    case "*":
      return left * right;
    case "/":
      return left / right;
  }
}
