/** What the organiser has set, kept on this device alone: nothing about any visitor. */
import { signal } from "@preact/signals";
import { keptIn } from "../../ui/kept-in.ts";

export interface OrganiserSettings {
  /** s without a touch until the warning */
  readonly idle: number;
  /** Tags of the languages offered; empty = all. */
  readonly languages: readonly string[];
  /** ids of the lessons offered; empty = all. */
  readonly lessons: readonly string[];
  /** Screen diagonal, inch, and viewing distance, mm: they give the size of the larger words. */
  readonly diagonal: number;
  readonly distance: number;
  /** Count how often each lesson is opened, by day. */
  readonly counting: boolean;
  /** Whom to ask here, shown under the cautions; empty = nothing. */
  readonly contact: string;
  readonly code: string;
}

export const DEFAULTS: OrganiserSettings = {
  idle: 60,
  languages: [],
  lessons: [],
  diagonal: 24,
  distance: 600,
  counting: false,
  contact: "",
  code: "2468",
};

export const LIMITS = {
  idle: { min: 30, max: 600, step: 10 },
  diagonal: { min: 8, max: 90, step: 1 },
  distance: { min: 300, max: 3000, step: 50 },
} as const;

/** characters */
export const MAX_CONTACT = 200;
/** digits */
const SHORTEST_CODE = 4;
export const LONGEST_CODE = 8;

export const isCode = (text: string): boolean =>
  /^\d+$/.test(text) && text.length >= SHORTEST_CODE && text.length <= LONGEST_CODE;

/** The chosen of all; all where none of the chosen is here, as with settings from another kiosk. */
export function offeredOf(all: readonly string[], chosen: readonly string[]): readonly string[] {
  const here = all.filter((each) => chosen.includes(each));
  return here.length > 0 ? here : all;
}

/** Whatever stands in storage gives valid settings. */
export function checkSettings(found: unknown): OrganiserSettings {
  const record = (typeof found === "object" && found !== null ? found : {}) as Record<string, unknown>;
  const number = (name: keyof typeof LIMITS): number => {
    const value = Number(record[name]);
    const { min, max } = LIMITS[name];
    return value >= min && value <= max ? value : DEFAULTS[name];
  };
  const words = (name: "languages" | "lessons"): readonly string[] =>
    Array.isArray(record[name]) ? record[name].filter((each) => typeof each === "string").slice(0, 50) : [];
  const code = typeof record.code === "string" ? record.code : "";
  return {
    idle: number("idle"),
    diagonal: number("diagonal"),
    distance: number("distance"),
    languages: words("languages"),
    lessons: words("lessons"),
    counting: record.counting === true,
    contact: typeof record.contact === "string" ? record.contact.slice(0, MAX_CONTACT) : "",
    code: isCode(code) ? code : DEFAULTS.code,
  };
}

const KEPT = keptIn(() => localStorage, "lungward.organiser", checkSettings);

export const organiser = signal(KEPT.read() ?? DEFAULTS);

/** Takes effect at once; kept if the device keeps anything. */
export function setOrganiser(change: Partial<OrganiserSettings>): void {
  organiser.value = checkSettings({ ...organiser.value, ...change });
  KEPT.write(organiser.value);
}

/** Capitals of our face are this part of its size. */
const CAPITAL = 0.67;
/** EN 301 549, 5.1.4: a capital H of at least 0.7 degrees. */
const CAPITAL_PART_OF_DISTANCE = 0.0122;
const MM_PER_INCH = 25.4;

/** CSS px of type so large that a capital H is 0.0122 of the viewing distance, on a screen of this many CSS px. */
export function largerType(
  { diagonal, distance }: Pick<OrganiserSettings, "diagonal" | "distance">,
  width: number,
  height: number,
): number {
  const pixel = (diagonal * MM_PER_INCH) / Math.hypot(width, height);
  return Math.ceil((CAPITAL_PART_OF_DISTANCE * distance) / CAPITAL / pixel);
}

/** Names the file's kind, so that another one is not taken for it. */
const KIND = "lungward-kiosk";

/** For a second kiosk; without the code, which each kiosk has of its own. */
export function writeSettings({ code: _, ...settings }: OrganiserSettings): string {
  return `${JSON.stringify({ kind: KIND, ...settings }, null, 2)}\n`;
}

/** @returns null for a text that is no file of settings; a value out of range is the default */
export function readSettings(text: string): Omit<OrganiserSettings, "code"> | null {
  try {
    const found: unknown = JSON.parse(text);
    if (typeof found !== "object" || found === null || !("kind" in found) || found.kind !== KIND) return null;
    const { code: _, ...settings } = checkSettings(found);
    return settings;
  } catch {
    return null;
  }
}
