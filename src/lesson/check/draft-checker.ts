/** The author's checker apart from the page: hears texts, answers with what it found; a newer text ends the check of an older one. */
import type { Fault } from "../../sim/faults.ts";
import type { Lesson } from "../lesson.ts";
import type { Library } from "./check-library.ts";
import { rememberAnswers, type Solve } from "./check-model.ts";
import { type CheckedSoFar, checkDraft, readDraft } from "./draft-check.ts";

export type ToDraftChecker =
  /** Comes first: what texts are checked against. */
  | { readonly kind: "library"; readonly library: Library }
  | { readonly kind: "text"; readonly id: number; readonly text: string };

export type FromDraftChecker =
  /** `lesson` null where the text is none; `id`: of the text */
  | {
      readonly kind: "read";
      readonly id: number;
      readonly lesson: Lesson | null;
      readonly faults: readonly Fault[];
    }
  | ({ readonly kind: "checked"; readonly id: number } & CheckedSoFar);

export interface DraftCheckerOptions {
  readonly solve: Solve;
  readonly post: (message: FromDraftChecker) => void;
  /** Resolves once messages that have arrived meanwhile have been heard. */
  readonly rest: () => Promise<void>;
}

/** Answers of the model kept between texts: most edits leave the scenes as they are. */
const MAX_ANSWERS = 300;

export function draftChecker({
  solve,
  post,
  rest,
}: DraftCheckerOptions): (message: ToDraftChecker) => Promise<void> {
  const answer = rememberAnswers(solve, MAX_ANSWERS);
  let library: Library = { glossary: {}, sources: {}, lessons: [] };
  let latest = 0;
  return async (message) => {
    if (message.kind === "library") {
      library = message.library;
      return;
    }
    const { id, text } = message;
    latest = id;
    const { value, faults } = readDraft(text, library);
    post({ kind: "read", id, lesson: value, faults });
    if (!value) return;
    for (const soFar of checkDraft(value, answer)) {
      post({ kind: "checked", id, ...soFar });
      await rest();
      if (latest !== id) return;
    }
  };
}
