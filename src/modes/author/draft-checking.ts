/** The checker's thread from the page's side: one text at a time, with a deadline for reading it. */
import type { Port } from "../../chain/port.ts";
import type { Library } from "../../lesson/check/check-library.ts";
import { DRAFT_FILE } from "../../lesson/check/draft-check.ts";
import type { FromDraftChecker, ToDraftChecker } from "../../lesson/check/draft-checker.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import type { Fault } from "../../sim/faults.ts";

export interface DraftCheck {
  /** null where the text is no lesson */
  readonly lesson: Lesson | null;
  readonly faults: readonly Fault[];
  /** steps run through the model, of all; null while reading */
  readonly steps: number | null;
  readonly of: number;
}

export interface DraftChecking {
  check(text: string): void;
  release(): void;
}

/** ms: reading takes a hundredth of this for the longest lesson */
const DEADLINE = 4_000;

export interface DraftCheckingOptions {
  readonly start: () => Port;
  readonly library: Library;
  readonly onCheck: (check: DraftCheck) => void;
  /** ms */
  readonly deadline?: number;
}

export function draftChecking({
  start,
  library,
  onCheck,
  deadline = DEADLINE,
}: DraftCheckingOptions): DraftChecking {
  let port: Port | null = null;
  let latest = 0;
  let due: ReturnType<typeof setTimeout> | undefined;
  let reading: Pick<DraftCheck, "lesson" | "faults"> = { lesson: null, faults: [] };
  const post = (message: ToDraftChecker) => port?.post(message);
  const fail = (found: string, allowed: string): void => {
    port?.close();
    port = null;
    onCheck({
      lesson: null,
      faults: [{ path: `${DRAFT_FILE}:1`, found, allowed }],
      steps: 0,
      of: 0,
    });
  };
  const hear = (message: FromDraftChecker): void => {
    if (message.id !== latest) return;
    clearTimeout(due);
    if (message.kind === "read") {
      reading = { lesson: message.lesson, faults: message.faults };
      onCheck({ ...reading, steps: message.lesson ? 0 : null, of: message.lesson?.steps.length ?? 0 });
    } else {
      const faults = [...reading.faults, ...message.faults];
      onCheck({ lesson: reading.lesson, faults, steps: message.steps, of: message.of });
    }
  };
  const open = (): void => {
    port = start();
    port.onMessage = (message) => hear(message as FromDraftChecker);
    port.onFailure = (reason) => {
      clearTimeout(due);
      fail(`the checker stopped (${reason})`, "any change of the text starts it again");
    };
    post({ kind: "library", library });
  };
  return {
    check(text) {
      latest++;
      clearTimeout(due);
      if (!port) open();
      due = setTimeout(
        () =>
          fail(
            `a text that takes longer than ${deadline / 1000} s to read`,
            "a shorter or simpler text; undo the last change",
          ),
        deadline,
      );
      post({ kind: "text", id: latest, text });
    },
    release() {
      clearTimeout(due);
      port?.close();
    },
  };
}
