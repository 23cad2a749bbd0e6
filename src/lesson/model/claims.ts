/** Marked statements: what a sentence says of the model, and whether the model does it. */

import { present } from "../../sim/checked/present.ts";
import { LIMITS } from "../format/limits.ts";
import { type Expression, evaluate, holds, namesIn, type Parsed, parseExpression } from "./expression.ts";
import { lookupIn, type Situation } from "./figure-paths.ts";

interface Amount {
  readonly value: number;
  readonly percent: boolean;
}

export type Claim =
  | { readonly kind: "condition"; readonly written: string; readonly of: Expression }
  | {
      readonly kind: "rises" | "falls" | "holds";
      readonly written: string;
      readonly of: Expression;
      /** name of the state compared with */
      readonly from: string;
      readonly amount: Amount;
    };

const CHANGE =
  /^(.+?)\s+(rises|falls|holds)\s+from:?\s+([A-Za-z][A-Za-z0-9]*)(?:\s+(by|within)\s+(\d+(?:\.\d+)?)\s*(%?))?$/;
/** A change below 1 % does not count; what stays within 5 % "holds". */
const MIN_CHANGE: Amount = { value: 1, percent: true };
const MAX_DRIFT: Amount = { value: 5, percent: true };

/** The text after `claim:`; several joined by semicolons. */
export function parseClaims(text: string): Parsed<readonly Claim[]> {
  if (text.length > LIMITS.expression)
    return {
      ok: false,
      found: `a claim of ${text.length} characters`,
      allowed: `at most ${LIMITS.expression}`,
    };
  const claims: Claim[] = [];
  for (const part of text.split(";")) {
    const claim = parseClaim(part.trim());
    if (!claim.ok) return claim;
    claims.push(claim.value);
  }
  return { ok: true, value: claims };
}

function parseClaim(written: string): Parsed<Claim> {
  const match = CHANGE.exec(written);
  if (!match) {
    if (/\b(rises|falls|holds)\b/.test(written)) {
      return {
        ok: false,
        found: written,
        allowed: "... rises from S, falls from S by 20 %, holds from S within 3 %",
      };
    }
    const of = parseExpression(written);
    return of.ok ? { ok: true, value: { kind: "condition", written, of: of.value } } : of;
  }
  const [, expression, verb, from, word, amount, percent] = match;
  const kind = verb as "rises" | "falls" | "holds";
  if (word !== undefined && (word === "within") !== (kind === "holds")) {
    return { ok: false, found: `${kind} ... ${word}`, allowed: kind === "holds" ? "within" : "by" };
  }
  const of = parseExpression(present(expression));
  if (!of.ok) return of;
  const usual = kind === "holds" ? MAX_DRIFT : MIN_CHANGE;
  return {
    ok: true,
    value: {
      kind,
      written,
      of: of.value,
      from: present(from),
      amount: amount === undefined ? usual : { value: Number(amount), percent: percent === "%" },
    },
  };
}

export interface Verdict {
  /** null when an output is unknown */
  readonly holds: boolean | null;
  readonly now: number | null;
  readonly before: number | null;
}

export function judgeClaim(claim: Claim, situation: Situation): Verdict {
  const lookup = lookupIn(situation);
  if (claim.kind === "condition")
    return { holds: holds(claim.of, lookup), now: evaluate(claim.of, lookup), before: null };
  const own = new Set(namesIn(claim.of));
  const now = evaluate(claim.of, lookup);
  const before = evaluate(claim.of, (path) => lookup(own.has(path) ? `${claim.from}.${path}` : path));
  if (now === null || before === null) return { holds: null, now, before };
  const change = now - before;
  const { value, percent } = claim.amount;
  const bound = percent ? (value / 100) * Math.abs(before) : value;
  const kept =
    claim.kind === "rises"
      ? change > bound
      : claim.kind === "falls"
        ? -change > bound
        : Math.abs(change) <= bound;
  return { holds: kept, now, before };
}

/** The names that the claim reads, those in the other state included. */
export const claimNames = (claim: Claim): readonly string[] =>
  claim.kind === "condition"
    ? namesIn(claim.of)
    : namesIn(claim.of).flatMap((name) => [name, `${claim.from}.${name}`]);
