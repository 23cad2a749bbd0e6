/** The address of the page: which mode, lesson and step are open, in which language, with which state. */

import { LANGUAGES, languageFor } from "../../../i18n/index.ts";
import type { Fault } from "../../../sim/faults.ts";

const MODE_NAMES = ["home", "bench", "study", "lecture", "kiosk", "author"] as const;
export type ModeName = (typeof MODE_NAMES)[number];

/** Further words of an address that have few values. `draw`: how the picture is drawn, whatever the device has. */
const FURTHER: readonly (readonly [name: string, allowed: readonly string[]])[] = [
  ["draw", ["webgl", "canvas"]],
  ["view", ["text", "picture", "handout"]],
  ["window", ["speaker"]],
];

export interface Place {
  readonly mode: ModeName;
  /** id of a lesson, "" = none */
  readonly lesson: string;
  /** id or number of a step, "" = the first */
  readonly step: string;
  /** BCP 47 tag, "" = the browser's */
  readonly language: string;
  /** The short text of a state (src/state/address.ts), "" = none asked for. */
  readonly state: string;
  /** Words that only one mode reads, such as a lecture's playlist or `window=speaker`. */
  readonly more: Readonly<Record<string, string>>;
}

export const AT_HOME: Place = { mode: "home", lesson: "", step: "", language: "", state: "", more: {} };

/** `?mode=bench&state=1~...` -> Place. What there is not gives way to what there is, and is reported. */
export function readPlace(query: string): { readonly place: Place; readonly dropped: readonly Fault[] } {
  const words = Object.fromEntries(new URLSearchParams(query));
  const {
    setting: earlier = "",
    mode = earlier,
    lesson = "",
    step = "",
    language = "",
    state = "",
    ...more
  } = words;
  const dropped: Fault[] = [];
  const known = MODE_NAMES.find((name) => name === mode);
  if (mode && !known) dropped.push({ path: "mode", found: mode, allowed: MODE_NAMES.join(", ") });
  const spoken = language === "" || languageFor(language) !== undefined;
  if (!spoken) dropped.push({ path: "language", found: language, allowed: LANGUAGES.join(", ") });
  for (const [name, allowed] of FURTHER) {
    const found = words[name];
    if (found && !allowed.includes(found)) dropped.push({ path: name, found, allowed: allowed.join(", ") });
  }
  const fallback: ModeName = lesson ? "study" : state ? "bench" : "home";
  const place = { mode: known ?? fallback, lesson, step, language: spoken ? language : "", state, more };
  return { place, dropped };
}

/** The query that opens this place, "?" included; the state's characters need no escape. */
export function writePlace(place: Place): string {
  const { state, more, ...named } = place;
  const words = { ...named, ...more };
  const pairs = Object.entries(words).flatMap(([key, value]) =>
    value ? [`${key}=${encodeURIComponent(value)}`] : [],
  );
  if (state) pairs.push(`state=${state}`);
  return `?${pairs.join("&")}`;
}
