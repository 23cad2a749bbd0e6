/** The address of the page: which setting, lesson and step are open, in which language, with which state. */
import type { Fault } from "../sim/faults.ts";

const SETTING_NAMES = ["home", "bench", "study", "lecture", "kiosk", "author"] as const;
export type SettingName = (typeof SETTING_NAMES)[number];

/** How the picture may be asked to be drawn, whatever the device has. */
const WAYS: readonly string[] = ["webgl", "canvas"];

export interface Place {
  readonly setting: SettingName;
  /** id of a lesson, "" = none */
  readonly lesson: string;
  /** id or number of a step, "" = the first */
  readonly step: string;
  /** BCP 47 tag, "" = the browser's */
  readonly language: string;
  /** The short text of a state (src/state/address.ts), "" = none asked for. */
  readonly state: string;
  /** Words that only one setting reads, such as a lecture's playlist or `window=speaker`. */
  readonly more: Readonly<Record<string, string>>;
}

export const AT_HOME: Place = { setting: "home", lesson: "", step: "", language: "", state: "", more: {} };

/** `?setting=bench&state=1~...` -> Place. An unknown setting opens home and is reported. */
export function readPlace(query: string): { readonly place: Place; readonly dropped: readonly Fault[] } {
  const words = Object.fromEntries(new URLSearchParams(query));
  const { setting = "", lesson = "", step = "", language = "", state = "", ...more } = words;
  const known = SETTING_NAMES.find((name) => name === setting);
  const dropped: Fault[] =
    known || setting === "" ? [] : [{ path: "setting", found: setting, allowed: SETTING_NAMES.join(", ") }];
  if (more.draw && !WAYS.includes(more.draw))
    dropped.push({ path: "draw", found: more.draw, allowed: WAYS.join(", ") });
  const standard: SettingName = lesson ? "study" : state ? "bench" : "home";
  return { place: { setting: known ?? standard, lesson, step, language, state, more }, dropped };
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
