/** A talk's playlist: which steps of which lessons, in which order, in how much time; as a file and as part of a link. */
import type { Fault } from "../../../sim/faults.ts";

/** A step as a link and the earlier files name it. */
export interface StepName {
  readonly lesson: string;
  readonly step: string;
}

export interface Playlist {
  readonly title: string;
  /** Time for the whole talk. */
  readonly minutes: number;
  readonly stops: readonly StepName[];
}

export const MINUTES = { min: 1, max: 240 } as const;
/** min: a usual slot */
export const USUAL_MINUTES = 20;
export const MAX_STOPS = 300;
/** characters of a playlist in a link */
export const LONGEST_LIST = 20_000;

/** `03-pathways*swirl.tunnel!04-energy-loss*narrow`: lessons parted by "!", steps by "."; no character needs an escape. */
export function writeStops(stops: readonly StepName[]): string {
  const runs: { lesson: string; steps: string[] }[] = [];
  for (const { lesson, step } of stops) {
    const last = runs.at(-1);
    if (last?.lesson === lesson) last.steps.push(step);
    else runs.push({ lesson, steps: [step] });
  }
  return runs.map(({ lesson, steps }) => `${lesson}*${steps.join(".")}`).join("!");
}

export const readStops = (text: string): readonly StepName[] =>
  text
    .slice(0, LONGEST_LIST)
    .split("!")
    .filter(Boolean)
    .flatMap((run) => {
      const [lesson = "", steps = ""] = run.split("*");
      return steps
        .split(".")
        .filter(Boolean)
        .map((step) => ({ lesson, step }));
    })
    .slice(0, MAX_STOPS);

/** Plain JSON, to be read by a person too. */
export const writePlaylistFile = (playlist: Playlist): string =>
  `${JSON.stringify({ kind: "lungward-playlist", version: 1, ...playlist }, null, 2)}\n`;

/** A file of any origin: what is not a playlist is refused with reasons, what is one is taken as far as it goes. */
export function readPlaylistFile(text: string): {
  readonly playlist: Playlist | null;
  readonly faults: readonly Fault[];
} {
  const refuse = (path: string, found: string, allowed: string) => ({
    playlist: null,
    faults: [{ path, found, allowed }],
  });
  let found: unknown;
  try {
    found = JSON.parse(text);
  } catch {
    return refuse("file", text.slice(0, 20), "JSON");
  }
  if (typeof found !== "object" || found === null) return refuse("file", typeof found, "object");
  const { kind, title, minutes, stops } = found as Record<string, unknown>;
  if (kind !== "lungward-playlist") return refuse("kind", String(kind), "lungward-playlist");
  if (!Array.isArray(stops)) return refuse("stops", typeof stops, "list");
  const faults: Fault[] = [];
  const kept = stops.slice(0, MAX_STOPS).flatMap((stop: unknown, index) => {
    const { lesson, step } = (stop ?? {}) as Record<string, unknown>;
    if (typeof lesson === "string" && typeof step === "string") return [{ lesson, step }];
    faults.push({
      path: `stops.${index}`,
      found: JSON.stringify(stop).slice(0, 60),
      allowed: "lesson, step",
    });
    return [];
  });
  const time = Number(minutes);
  const inRange = time >= MINUTES.min && time <= MINUTES.max;
  if (!inRange)
    faults.push({ path: "minutes", found: String(minutes), allowed: `${MINUTES.min} to ${MINUTES.max}` });
  return {
    playlist: {
      title: String(title ?? "").slice(0, 120),
      minutes: inRange ? time : USUAL_MINUTES,
      stops: kept,
    },
    faults,
  };
}
