/** The text that is being written: read at each change, kept on this device, its last good reading left running. */
import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { checkLibrary } from "../../lesson/check-library.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import type { Library } from "../../lesson/library.ts";
import { LIMITS } from "../../lesson/limits.ts";
import { type Reading, readLesson, refuseIn } from "../../lesson/read.ts";
import { readTranslation } from "../../lesson/read-translation.ts";
import type { Fault } from "../../sim/faults.ts";

const NAME = "lungward.draft";

export interface Draft {
  readonly text: ReadonlySignal<string>;
  readonly faults: ReadonlySignal<readonly Fault[]>;
  /** The latest text that could be read as a lesson. */
  readonly lesson: ReadonlySignal<Lesson | null>;
  /** What would take the place of a text that somebody has written on, and waits for an answer. */
  readonly offered: ReadonlySignal<string | null>;
  write(text: string): void;
  /** Another text to work on: at once while the present one is as it was loaded, else once it is agreed to. */
  offer(text: string): void;
  answer(replace: boolean): void;
  /** Offers a file's text; one that can't be a lesson is reported as a fault and the text stays. */
  take(file: File): Promise<void>;
}

/** bytes: some twenty times the longest lesson */
const LARGEST_FILE = 500_000;

/** File name under which faults are reported: the text has only lines. */
const DRAFT_FILE = "lesson.md";

export function openDraft(library: Library, otherwise: string): Draft {
  const kept = keptText();
  // Longer than any text that is read: opening it would only hold the page.
  const tooLong = kept !== null && kept.length > LIMITS.file;
  const text = signal(kept === null || tooLong ? otherwise : kept);
  // A kept text may hold work; where it was loaded from is not kept.
  let loaded = otherwise;
  const offered = signal<string | null>(null);
  const reading = computed(() => readDraft(text.value, library));
  const lesson = signal<Lesson | null>(reading.value.value);
  const refused = signal<readonly Fault[]>(
    tooLong
      ? [
          {
            path: `${DRAFT_FILE}:1`,
            found: `a kept draft of ${kept.length} characters`,
            allowed: `at most ${LIMITS.file}`,
          },
        ]
      : [],
  );
  const write = (next: string) => {
    refused.value = [];
    text.value = next;
    if (reading.value.value) lesson.value = reading.value.value;
    try {
      localStorage.setItem(NAME, next);
    } catch {
      // Without storage the text lasts as long as the page.
    }
  };
  const load = (next: string) => {
    loaded = next;
    write(next);
  };
  const offer = (next: string) => {
    if (text.value === loaded || text.value.trim() === "") load(next);
    else if (text.value !== next) offered.value = next;
  };
  return {
    text,
    offered,
    faults: computed(() => [...refused.value, ...reading.value.faults]),
    lesson,
    write,
    offer,
    answer(replace) {
      if (replace && offered.value !== null) load(offered.value);
      offered.value = null;
    },
    async take(file) {
      const refuse = (found: string, allowed: string) => {
        refused.value = [{ path: `${DRAFT_FILE}:1`, found: `${file.name}: ${found}`, allowed }];
      };
      if (file.size > LARGEST_FILE) {
        refuse(`${file.size} bytes`, `at most ${LARGEST_FILE}`);
        return;
      }
      const next = await file.text().catch(() => null);
      if (next === null) refuse("unreadable", "a text file");
      else if (next.includes("\0")) refuse("binary", "a text file");
      else offer(next);
    },
  };
}

function keptText(): string | null {
  try {
    return localStorage.getItem(NAME);
  } catch {
    return null;
  }
}

/** A text that names its language translates the kit's lesson of the same id. */
export function readDraft(text: string, library: Library): Reading<Lesson> {
  const front = text.slice(0, LIMITS.part).split(/\n---\s*\n/, 1)[0] ?? "";
  const id = /^id:\s*(\S+)/m.exec(front)?.[1];
  const source = /^language:/m.test(front) ? library.lessons.find((lesson) => lesson.id === id) : undefined;
  const read = source ? readTranslation(text, DRAFT_FILE, source) : readLesson(text, DRAFT_FILE);
  if (!read.value) return read;
  const { refuse, faults } = refuseIn(DRAFT_FILE);
  checkLibrary(read.value, { ...library, lessons: [...library.lessons, read.value] }, refuse);
  return { value: read.value, faults: [...read.faults, ...faults] };
}
