/** Messages by key: which languages there are, and the text of a key with its arguments filled in. */
import { signal } from "@preact/signals";
import { entryAt } from "../sim/checked/present.ts";
import { laterFiles, messageFiles, modeFiles } from "./files.ts";
import { type Arguments, formatMessage, type Part, parseMessage } from "./message-format.ts";
import { ownName } from "./own-name.ts";
import { isPseudo, pseudoMessage } from "./pseudo.ts";

type Table = Readonly<Record<string, string>>;

const languageOf = (path: string): string => entryAt(path.split("/"), 1);

// Without prototypes: a tag or key from an address, such as "constructor", finds nothing.
const merged: Record<string, Record<string, string>> = Object.create(null);

const merge = (path: string, messages: Table): void => {
  const language = languageOf(path);
  merged[language] = Object.assign(merged[language] ?? Object.create(null), messages);
};
const mergeAll = (files: readonly (readonly [path: string, messages: Table])[]): void => {
  for (const [path, messages] of files) merge(path, messages);
};
mergeAll(Object.entries(messageFiles));

/** Language tag -> key -> message, of the languages whose messages have come. Keys begin with their file's area. */
export const MESSAGES: Readonly<Record<string, Table>> = merged;

/** BCP 47 tags for which there are messages, English first. */
export const LANGUAGES: readonly string[] = [
  "en",
  ...[...new Set([...Object.keys(messageFiles), ...Object.keys(laterFiles)].map(languageOf))]
    .filter((tag) => tag !== "en")
    .sort(),
];

const hasCome = (tag: string): boolean => isPseudo(tag) || tag in MESSAGES;

/** @param tag one of `LANGUAGES`. Rejects, and keeps nothing, where one of its files cannot be fetched. */
export async function fetchMessages(tag: string): Promise<void> {
  if (hasCome(tag)) return;
  const files = Object.entries(laterFiles).filter(([path]) => languageOf(path) === tag);
  mergeAll(await Promise.all(files.map(async ([path, load]) => [path, await load()] as const)));
}

/** English of the modes; rejects where it cannot be fetched. */
export const fetchModeMessages = async (): Promise<void> => mergeAll(Object.entries(await modeFiles()));

const current = signal("en");

/** Set while something is written for readers of another language. */
let writtenIn: string | null = null;

/** The current tag. A component that reads it is updated when the language changes. */
export const language = (): string => writtenIn ?? current.value;

/** What `write` makes in a language whose messages have come, whatever the page speaks. `write` must not wait for anything. */
export function inLanguage<T>(tag: string, write: () => T): T {
  const before = writtenIn;
  writtenIn = tag;
  try {
    return write();
  } finally {
    writtenIn = before;
  }
}

let asked = "en";

/**
 * Takes any BCP 47 tag and returns the one in force: the nearest that has messages, finally English, once they have come.
 * One asked for meanwhile wins. Rejects, and changes nothing, where the messages cannot be fetched.
 */
export async function setLanguage(tag: string): Promise<string> {
  const chosen = nearestLanguage(tag);
  asked = chosen;
  // At once where nothing is to be fetched: no text is drawn in another language meanwhile.
  if (!hasCome(chosen)) await fetchMessages(chosen);
  if (asked === chosen) current.value = chosen;
  return current.value;
}

const clinical = signal(false);

/** Whether parts are called by their clinical names, `technical.<key>`, where the language has one. */
export function setTechnical(on: boolean): void {
  clinical.value = on;
}

const plain = signal(false);

/** Calls parts plainly, wherever the page is, until the returned function is called. */
export function speakPlainly(): () => void {
  plain.value = true;
  return () => {
    plain.value = false;
  };
}

export const nearestLanguage = (tag: string): string => languageFor(tag) ?? "en";

/** The language with messages that fits this tag; undefined when there is none. */
export function languageFor(tag: string): string | undefined {
  if (isPseudo(tag) || LANGUAGES.includes(tag)) return tag;
  const primary = entryAt(tag.split("-"), 0).toLowerCase();
  return LANGUAGES.find((each) => each.split("-")[0] === primary);
}

const RIGHT_TO_LEFT = ["ar", "fa", "he", "ur"];

export const direction = (tag: string = language()): "ltr" | "rtl" =>
  RIGHT_TO_LEFT.includes(entryAt(tag.split("-"), 0)) ? "rtl" : "ltr";

/** Found when the page was built; there is none on the command line. */
declare const __LANGUAGE_NAMES__: Readonly<Record<string, string>>;
const NAMES = typeof __LANGUAGE_NAMES__ === "undefined" ? {} : __LANGUAGE_NAMES__;

/** A language by its own name. */
export const languageName = (tag: string): string => (isPseudo(tag) ? tag : (NAMES[tag] ?? ownName(tag)));

export const hasMessage = (key: string): boolean => key in (MESSAGES.en ?? {});

const parsed = new Map<string, readonly Part[]>();

/** The message of the key in the current language, English where it has none; a key unknown to both is returned in brackets. */
export function t(asked: string, args?: Arguments): string {
  const tag = language();
  const technical = `technical.${asked}`;
  const key = clinical.value && !plain.value && MESSAGES[tag]?.[technical] ? technical : asked;
  const cacheKey = `${tag}:${key}`;
  let parts = parsed.get(cacheKey);
  if (!parts) {
    const english = MESSAGES.en?.[key];
    const text = isPseudo(tag) ? english : (MESSAGES[tag]?.[key] ?? english);
    if (text === undefined) return `[${key}]`;
    parts = isPseudo(tag) ? pseudoMessage(text, tag) : parseMessage(text);
    parsed.set(cacheKey, parts);
  }
  return formatMessage(parts, tag, args);
}
