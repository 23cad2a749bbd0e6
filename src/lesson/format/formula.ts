/** Limits of an equation, so that typesetting takes hardly any time: length, depth, size of tables, no definitions. */
import { LIMITS } from "./limits.ts";

const { characters, depth, cells } = LIMITS.formula;
/** What opens and what closes a level, a cell or row of a table, a definition; an escaped sign does not count. */
const MARK = /\\(?:([a-zA-Z]+)|(\\)|.)|([{}&])/gs;
/** Definitions can double a text at each use. */
const DEFINING = /^([egx]?def|let|futurelet|global|long|(new|renew|provide)command)$/;

export function formulaFault(tex: string): { found: string; allowed: string } | null {
  if (tex.length > characters)
    return { found: `an equation of ${tex.length} characters`, allowed: `at most ${characters}` };
  let [level, deepest, parted] = [0, 0, 0];
  for (const [, word = "", row, sign] of tex.matchAll(MARK)) {
    if (DEFINING.test(word)) return { found: `\\${word}`, allowed: "an equation without definitions" };
    if (sign === "{" || word === "left" || word === "begin") level++;
    else if (sign === "}" || word === "right" || word === "end") level--;
    else if (sign === "&" || row || word === "cr") parted++;
    deepest = Math.max(deepest, level);
  }
  if (deepest > depth) return { found: `${deepest} levels in an equation`, allowed: `at most ${depth}` };
  if (parted > cells) return { found: `${parted} cells in an equation`, allowed: `at most ${cells}` };
  return null;
}
