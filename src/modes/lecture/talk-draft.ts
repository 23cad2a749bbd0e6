/** A talk while it is put together: its steps, its time, its name, and what a file opened for it could not bring. */
import { computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import type { Lesson } from "../../lesson/lesson.ts";
import type { Fault } from "../../sim/faults.ts";
import type { Place } from "../shared/place.ts";
import { type Playlist, readPlaylistFile, readStops, type Stop, writeStops } from "./playlist.ts";
import { type FoundStop, findStops } from "./stops.ts";

/** min: a usual slot */
const USUAL_MINUTES = 20;
/** Characters of a file; what lies beyond is not read. */
const LONGEST_FILE = 200_000;

export interface TalkDraft {
  readonly stops: Signal<readonly Stop[]>;
  readonly minutes: Signal<number>;
  readonly title: Signal<string>;
  readonly faults: ReadonlySignal<readonly Fault[]>;
  /** The steps that the lessons have. */
  readonly found: ReadonlySignal<readonly FoundStop[]>;
  move(from: number, to: number): void;
  open(file: Blob): Promise<void>;
  playlist(): Playlist;
  /** The words of an address that open it. */
  words(): Place["more"];
}

/** `lessons`: those of the language in use now */
export function talkDraft(asked: Place["more"], lessons: () => readonly Lesson[]): TalkDraft {
  const stops = signal<readonly Stop[]>(readStops(asked.list ?? ""));
  const minutes = signal(Number(asked.minutes) || USUAL_MINUTES);
  const title = signal(asked.title ?? "");
  const faults = signal<readonly Fault[]>([]);
  return {
    stops,
    minutes,
    title,
    faults,
    found: computed(() => findStops(stops.value, lessons()).found),
    move(from, to) {
      if (to < 0 || to >= stops.value.length) return;
      const next = [...stops.value];
      next.splice(to, 0, ...next.splice(from, 1));
      stops.value = next;
    },
    async open(file) {
      const { playlist, faults: refused } = readPlaylistFile(await file.slice(0, LONGEST_FILE).text());
      const dropped = playlist ? findStops(playlist.stops, lessons()).dropped : [];
      faults.value = [...refused, ...dropped];
      if (!playlist) return;
      stops.value = playlist.stops;
      minutes.value = playlist.minutes;
      title.value = playlist.title;
    },
    playlist: () => ({ title: title.value, minutes: minutes.value, stops: stops.value }),
    words: () => ({ list: writeStops(stops.value), minutes: String(minutes.value), title: title.value }),
  };
}
