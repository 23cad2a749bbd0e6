/** The text on the author's desk: one of the own texts, kept and checked at each change, its last good reading left running. */
import { batch, computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Port } from "../../chain/port.ts";
import { DRAFT_FILE } from "../../lesson/check/draft-check.ts";
import { LIMITS } from "../../lesson/format/limits.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import type { Library } from "../../lesson/library/library.ts";
import { joinFigures, type LessonFigure, readFigures, splitFigures } from "../../lesson/own/own-figures.ts";
import type { Fault } from "../../sim/faults.ts";
import { lessonFileText, nameOfFile } from "../shared/own/own-lessons.ts";
import type { OwnText, OwnTexts } from "../shared/own/own-texts.ts";
import { type DraftCheck, draftChecking } from "./draft-checking.ts";
import { idFaults } from "./id-faults.ts";

export interface Draft {
  /** Its words alone: the figures stand apart. */
  readonly own: ReadonlySignal<OwnText>;
  readonly figures: ReadonlySignal<readonly LessonFigure[]>;
  readonly faults: ReadonlySignal<readonly Fault[]>;
  /** Name of the file taken last, where it can be no lesson. */
  readonly refusedFile: ReadonlySignal<string | null>;
  /** Another lesson has its id. */
  readonly taken: ReadonlySignal<boolean>;
  /** The latest text has not been checked to its end. */
  readonly busy: ReadonlySignal<boolean>;
  /** How far the check has come. */
  readonly check: ReadonlySignal<DraftCheck>;
  /** The latest text that could be read as a lesson. */
  readonly lesson: ReadonlySignal<Lesson | null>;
  write(text: string): void;
  setFigures(figures: readonly LessonFigure[]): void;
  /** Another of the own texts. */
  open(id: string): void;
  /** Opens a file's text as a new one; a file that can be no lesson leaves the desk as it is. */
  take(file: File): Promise<void>;
  release(): void;
}

export interface DraftOptions {
  readonly texts: OwnTexts;
  readonly library: Library;
  readonly startChecker: () => Port;
  /** of the text to begin with */
  readonly id: string;
  /** characters of a kept draft that could not be opened */
  readonly tooLong?: number | null;
}

const FIRST_LINE = `${DRAFT_FILE}:1`;
const UNCHECKED: DraftCheck = { lesson: null, faults: [], steps: null, of: 0 };

export function openDraft({ texts, library, startChecker, id, tooLong }: DraftOptions): Draft {
  const at = signal(id);
  const kept = computed(
    () => texts.list.value.find((each) => each.id === at.value) ?? (texts.list.value[0] as OwnText),
  );
  const own = computed(() => ({ ...kept.value, text: splitFigures(kept.value.text).text }));
  // Read anew when they change, not at each change of the words.
  const section = computed(() => splitFigures(kept.value.text).figures);
  const figures = computed(() => readFigures(section.value).figures);
  const keep = (file: string): void => {
    texts.write(kept.value.id, file);
    look(file);
  };
  const check = signal(UNCHECKED);
  const busy = signal(false);
  const lesson = signal<Lesson | null>(null);
  const refused = signal<readonly Fault[]>([]);
  const refusedFile = signal<string | null>(null);
  const checking = draftChecking({
    start: startChecker,
    library,
    onCheck: (found) =>
      batch(() => {
        check.value = found;
        busy.value = found.lesson !== null && found.steps !== found.of;
        if (found.lesson && found.lesson !== lesson.value) lesson.value = found.lesson;
      }),
  });
  const taken = computed(() => idFaults(own.value, texts.list.value, library));
  const look = (file: string): void => {
    refused.value = [];
    refusedFile.value = null;
    const { length } = splitFigures(file).text;
    // Longer than any text that is read: checking it would only take time.
    if (length > LIMITS.file) refuse(`a text of ${length} characters`, `at most ${LIMITS.file}`);
    else {
      busy.value = true;
      checking.check(file);
    }
  };
  const refuse = (found: string, allowed: string): void => {
    refused.value = [{ path: FIRST_LINE, found, allowed }];
  };
  const open = (next: string): void => {
    at.value = next;
    lesson.value = null;
    check.value = UNCHECKED;
    look(kept.value.text);
  };
  open(id);
  if (tooLong) refuse(`a kept draft of ${tooLong} characters`, `at most ${LIMITS.file}`);
  return {
    own,
    figures,
    busy,
    check,
    lesson,
    refusedFile,
    faults: computed(() => [...refused.value, ...taken.value, ...check.value.faults]),
    taken: computed(() => taken.value.length > 0),
    write(text) {
      // A whole file that was pasted brings its figures along.
      const pasted = splitFigures(text);
      const { figures: come, faults } = readFigures(pasted.figures);
      const names = come.map(({ name }) => name);
      keep(joinFigures(pasted.text, [...figures.value.filter(({ name }) => !names.includes(name)), ...come]));
      if (faults.length > 0)
        refused.value = [...refused.value, ...faults.map((fault) => ({ ...fault, path: FIRST_LINE }))];
    },
    setFigures: (next) => keep(joinFigures(own.value.text, next)),
    open,
    async take(file) {
      const text = await lessonFileText(file);
      if (text === null) refusedFile.value = file.name;
      else open(texts.add(nameOfFile(file.name), text));
    },
    release: checking.release,
  };
}
