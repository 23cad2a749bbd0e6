/** How much a text of YAML holds, counted in one pass before it is read: reading many keys or levels takes long. */
import { Lexer } from "yaml";
import type { RecordLimits } from "./limits.ts";

export function recordFault(
  text: string,
  { characters, keys, depth }: RecordLimits,
): { found: string; allowed: string } | null {
  if (text.length > characters)
    return { found: `${text.length} characters of settings`, allowed: `at most ${characters}` };
  const amount = amountOf(text);
  if (amount.depth > depth)
    return { found: `settings ${amount.depth} levels deep`, allowed: `at most ${depth}` };
  if (amount.keys > keys) return { found: `${amount.keys} keys`, allowed: `at most ${keys}` };
  return null;
}

/** Keys, and the most levels that brackets and the indicators of one line open; indents are bounded by the text's length. */
function amountOf(text: string): { keys: number; depth: number } {
  let [keys, depth, brackets, indicators] = [0, 0, 0, 0];
  for (const token of new Lexer().lex(text)) {
    if (token === ":") keys++;
    if (token === ":" || token === "-" || token === "?") indicators++;
    else if (token === "[" || token === "{") brackets++;
    else if (token === "]" || token === "}") brackets = Math.max(0, brackets - 1);
    else if (token.startsWith("\n") || token.startsWith("\r")) indicators = 0;
    depth = Math.max(depth, brackets + (brackets === 0 ? indicators : 0));
  }
  return { keys, depth };
}
