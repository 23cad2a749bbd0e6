/** Messages by key: which languages there are, and the text of a key with its arguments filled in. */
import { signal } from "@preact/signals";
import { IntlMessageFormat } from "intl-messageformat";
import { entryAt } from "../sim/checked/present.ts";
import { messageFiles } from "./files.ts";
import { isPseudo, pseudoMessage } from "./pseudo.ts";

export type Arguments = Readonly<Record<string, string | number>>;

/** Language tag -> key -> message. The files of one language are merged; keys begin with their file's area. */
export const MESSAGES: Readonly<Record<string, Readonly<Record<string, string>>>> = (() => {
  // Without prototypes: a tag or key from an address, such as "constructor", finds nothing.
  const merged: Record<string, Record<string, string>> = Object.create(null);
  for (const [path, messages] of Object.entries(messageFiles)) {
    const language = entryAt(path.split("/"), 1);
    merged[language] = Object.assign(merged[language] ?? Object.create(null), messages);
  }
  return merged;
})();

/** BCP 47 tags for which there are messages, English first. */
export const LANGUAGES: readonly string[] = [
  "en",
  ...Object.keys(MESSAGES)
    .filter((tag) => tag !== "en")
    .sort(),
];

const current = signal("en");

/** The current tag. A component that reads it is updated when the language changes. */
export const language = (): string => current.value;

/** Takes any BCP 47 tag; falls back to the nearest language that has messages, finally English. Returns the one chosen. */
export function setLanguage(tag: string): string {
  current.value = nearestLanguage(tag);
  return current.value;
}

const clinical = signal(false);

/** Whether parts are called by their clinical names, `technical.<key>`, where the language has one. */
export function setTechnical(on: boolean): void {
  clinical.value = on;
}

export const nearestLanguage = (tag: string): string => languageFor(tag) ?? "en";

/** The language with messages that fits this tag; undefined when there is none. */
export function languageFor(tag: string): string | undefined {
  if (isPseudo(tag) || tag in MESSAGES) return tag;
  const primary = entryAt(tag.split("-"), 0).toLowerCase();
  return LANGUAGES.find((each) => each.split("-")[0] === primary);
}

const RIGHT_TO_LEFT = ["ar", "fa", "he", "ur"];

export const direction = (tag: string = language()): "ltr" | "rtl" =>
  RIGHT_TO_LEFT.includes(entryAt(tag.split("-"), 0)) ? "rtl" : "ltr";

/** A language by its own name. */
export function languageName(tag: string): string {
  if (isPseudo(tag)) return tag;
  const name = new Intl.DisplayNames([tag], { type: "language" }).of(tag) ?? tag;
  return name.charAt(0).toLocaleUpperCase(tag) + name.slice(1);
}

export const hasMessage = (key: string): boolean => key in (MESSAGES.en ?? {});

const compiled = new Map<string, IntlMessageFormat>();

/** The message of the key in the current language, English where it has none; a key unknown to both is returned in brackets. */
export function t(asked: string, args?: Arguments): string {
  const tag = language();
  const technical = `technical.${asked}`;
  const key = clinical.value && MESSAGES[tag]?.[technical] ? technical : asked;
  const cacheKey = `${tag}:${key}`;
  let format = compiled.get(cacheKey);
  if (!format) {
    const english = MESSAGES.en?.[key];
    const text = isPseudo(tag) ? english : (MESSAGES[tag]?.[key] ?? english);
    if (text === undefined) return `[${key}]`;
    const message = isPseudo(tag) ? pseudoMessage(text, tag) : text;
    format = new IntlMessageFormat(message, tag, undefined, { ignoreTag: true });
    compiled.set(cacheKey, format);
  }
  return format.format(args) as string;
}
