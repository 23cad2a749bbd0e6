/** How the parts of an address are written and read: parameters, choices, body, clots. */
import { type Fault, nearestMatch } from "../sim/faults.ts";
import { ALIASES, currentId } from "../sim/parameters/aliases.ts";
import { findParameter, PARAMETERS } from "../sim/parameters/parameters.ts";
import { BODY_RANGES, type Body, type ParameterValue } from "../sim/parameters/request.ts";
import { nearestAllowed } from "./edit.ts";
import { CLOT_SIZES, MAX_CLOTS } from "./scene-state.ts";

type Settings = Readonly<Record<string, ParameterValue>>;

/** Three letters for a parameter's name (FNV-1a, base 26): they stay the same when rows are added or moved. */
export function parameterCode(name: string): string {
  let hash = 0x811c9dc5;
  for (const letter of name) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193);
  const number = (hash >>> 0) % 26 ** 3;
  return [26 ** 2, 26, 1]
    .map((place) => String.fromCharCode(97 + (Math.floor(number / place) % 26)))
    .join("");
}

const nameOfCode = (code: string): string | undefined =>
  [...PARAMETERS.map(({ name }) => name), ...Object.keys(ALIASES.parameters)].find(
    (name) => parameterCode(name) === code,
  );

/** `abc24def.5ghi_held_`: code and number, or code and word, in the order of the parameter table. */
export const writeSettings = (set: Settings): string =>
  PARAMETERS.filter(({ name }) => name in set)
    .map(({ name, kind }) => {
      const value = String(set[name]);
      return parameterCode(name) + (kind === "word" ? `_${value}_` : value.replace(/^(-?)0\./, "$1."));
    })
    .join("");

const PIECE = /([a-z]{3})(?:_([a-z-]*)_|(-?[\d.]*))|(.)/g;

export function readSettings(path: string, text: string, dropped: Fault[]): Settings {
  const set: Record<string, ParameterValue> = {};
  for (const [piece, code, word, number] of text.matchAll(PIECE)) {
    const coded = code && nameOfCode(code);
    const name = coded && currentId("parameters", coded);
    const parameter = name ? findParameter(name) : undefined;
    const found = word === undefined ? (number ?? "") : currentId("words", word);
    if (!name || !parameter) {
      dropped.push({ path, found: piece, allowed: "parameter" });
    } else if (parameter.kind === "word") {
      if (parameter.words.includes(found)) set[name] = found;
      else dropped.push({ path: `${path}.${name}`, found, allowed: parameter.words.join(", ") });
    } else {
      const value = readNumber(`${path}.${name}`, found, parameter, dropped);
      if (value !== null) set[name] = value;
    }
  }
  return set;
}

interface Span {
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

/** The nearest allowed number, null when there is no number; any change to what was written is reported. */
export function readNumber(path: string, found: string, span: Span, dropped: Fault[]): number | null {
  const value = found === "" ? Number.NaN : Number(found);
  const taken = Number.isFinite(value) ? nearestAllowed(span, value) : null;
  const { min, max, step } = span;
  if (taken !== value) dropped.push({ path, found, allowed: `${min} to ${max} in steps of ${step}` });
  return taken;
}

/** `hold-atrial-pressure` is written as `hap`; a word without a hyphen unchanged. */
export const shortWord = (word: string): string =>
  word.includes("-")
    ? word
        .split("-")
        .map((part) => part.charAt(0))
        .join("")
    : word;

/** One of the words, in full or short; a near miss becomes the nearest word, anything else `fallback`. Both are reported. */
export function readChoice<Word extends string>(
  path: string,
  found: string,
  words: readonly Word[],
  fallback: Word,
  dropped: Fault[],
): Word {
  const earlier = Object.keys(ALIASES.words).find((word) => word === found || shortWord(word) === found);
  const now = currentId("words", earlier ?? found);
  const meant = words.find((word) => word === now || shortWord(word) === now);
  if (meant) return meant;
  dropped.push({ path, found, allowed: words.join(", ") });
  return (nearestMatch(found, words) as Word | undefined) ?? fallback;
}

export function readBody(text: string, fallback: Body, dropped: Fault[]): Body {
  const numbers = text.split("_");
  const read = (name: keyof Body, index: number): number => {
    const { min, max } = BODY_RANGES[name];
    const found = numbers[index] ?? "";
    const value = found === "" ? Number.NaN : Number(found);
    if (value >= min && value <= max) return value;
    dropped.push({ path: `body.${name}`, found, allowed: `${min} to ${max}` });
    return Number.isFinite(value) ? Math.min(max, Math.max(min, value)) : fallback[name];
  };
  return { ageYears: read("ageYears", 0), bsa: read("bsa", 1), haemoglobin: read("haemoglobin", 2) };
}

export function readClots(text: string, dropped: Fault[]): readonly number[] {
  const clots: number[] = [];
  for (const found of text.split("_")) {
    const diameter = Number(found);
    if (diameter >= CLOT_SIZES.min && diameter <= CLOT_SIZES.max && clots.length < MAX_CLOTS)
      clots.push(diameter);
    else dropped.push({ path: "clots", found, allowed: `${CLOT_SIZES.min} to ${CLOT_SIZES.max}` });
  }
  return clots;
}
