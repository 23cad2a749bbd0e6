/** Two invented languages that show what a translation would break: `en-XA` is 40 % longer, `ar-XB` is right to left. */
import { entryAt } from "../sim/checked/present.ts";
import { type Part, parseMessage } from "./message-format.ts";

const PSEUDO_LANGUAGES = ["en-XA", "ar-XB"] as const;
export type PseudoLanguage = (typeof PSEUDO_LANGUAGES)[number];

export const isPseudo = (language: string): language is PseudoLanguage =>
  (PSEUDO_LANGUAGES as readonly string[]).includes(language);

const ACCENTED: Readonly<Record<string, string>> = Object.fromEntries(
  [..."aeiounycsAEIOUNYCS"].map((letter, index) => [letter, entryAt([..."áéíóúñýçšÁÉÍÓÚÑÝÇŠ"], index)]),
);

/** Accents the letters, then lengthens by 40 % with whole syllables so that lines can still break. */
export function lengthen(text: string): string {
  const accented = [...text].map((letter) => ACCENTED[letter] ?? letter).join("");
  const letters = text.trim().length;
  if (letters < 2) return accented;
  return `${accented}${" öne twö thréé föúr".repeat(Math.ceil(letters / 40) + 1).slice(0, Math.ceil(letters * 0.4))}`;
}

/** Wraps each run in a right-to-left override, so that letters show in reverse order as a foreign script would. */
const mirror = (text: string): string => `\u202e${text}\u202c`;

/** The English message with its literal parts changed and its arguments unchanged. */
export const pseudoMessage = (message: string, language: PseudoLanguage): readonly Part[] =>
  changeLiterals(parseMessage(message), language === "en-XA" ? lengthen : mirror);

const changeLiterals = (parts: readonly Part[], change: (text: string) => string): readonly Part[] =>
  parts.map((part) => {
    if (typeof part === "string") return change(part);
    if (part.kind !== "plural" && part.kind !== "select") return part;
    const branches = Object.entries(part.branches).map(
      ([word, branch]) => [word, changeLiterals(branch, change)] as const,
    );
    return { ...part, branches: Object.fromEntries(branches) };
  });
