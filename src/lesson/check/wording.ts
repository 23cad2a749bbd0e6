import { entryAt } from "../../sim/checked/present.ts";

/** Words not used with families, by language: talking down, blame, promises. */
const NOT_SAID: Readonly<Record<string, readonly string[]>> = {
  en: [
    "just",
    "simply",
    "unfortunately",
    "obviously",
    "of course",
    "merely",
    "trivial",
    "guarantee\\p{L}*",
    "don['’]t worry",
    "your fault",
    "suffer\\p{L}*",
  ],
  es: [
    "simplemente",
    "sencillamente",
    "desgraciadamente",
    "lamentablemente",
    "por desgracia",
    "obviamente",
    "evidentemente",
    "por supuesto",
    "garantiz\\p{L}*",
    "no te preocupes",
    "tu culpa",
    "sufr\\p{L}*",
  ],
  fr: [
    "simplement",
    "malheureusement",
    "hélas",
    "évidemment",
    "bien sûr",
    "bien entendu",
    "garanti\\p{L}*",
    "ne vous inquiétez pas",
    "votre faute",
    "souffr\\p{L}*",
  ],
  de: [
    "leider",
    "bloß",
    "offensichtlich",
    "selbstverständlich",
    "natürlich",
    "ganz einfach",
    "garantier\\p{L}*",
    "keine sorge",
    "ihre schuld",
    "leiden",
  ],
};

const patterns = Object.fromEntries(
  Object.entries(NOT_SAID).map(([language, words]) => [
    language,
    new RegExp(`(?<!\\p{L})(?:${words.join("|")})(?!\\p{L})`, "iu"),
  ]),
);

export const LANGUAGES_WITH_WORDING = Object.keys(NOT_SAID);

/** The first such word; null when none is found or the language has no list. */
export const notSaid = (text: string, language: string): string | null =>
  patterns[entryAt(language.split("-"), 0)]?.exec(text)?.[0] ?? null;
