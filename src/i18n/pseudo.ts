/** Two invented languages that show what a translation would break: `en-XA` is 40 % longer, `ar-XB` is right to left. */
import { IntlMessageFormat } from "intl-messageformat";
import { entryAt, present } from "../sim/checked/present.ts";

type Nodes = ReturnType<NonNullable<typeof IntlMessageFormat.__parse>>;

export const PSEUDO_LANGUAGES = ["en-XA", "ar-XB"] as const;
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
export function pseudoMessage(message: string, language: PseudoLanguage): Nodes {
  const change = language === "en-XA" ? lengthen : mirror;
  return changeLiterals(present(IntlMessageFormat.__parse)(message), change);
}

function changeLiterals(nodes: Nodes, change: (text: string) => string): Nodes {
  return nodes.map((node) => {
    if ("value" in node && node.type === 0) return { ...node, value: change(node.value) };
    if (!("options" in node)) return node;
    const options = Object.entries(node.options).map(([key, option]) => [
      key,
      { ...option, value: changeLiterals(option.value, change) },
    ]);
    return { ...node, options: Object.fromEntries(options) };
  }) as Nodes;
}
