/** A learner's progress as a file, to go on with elsewhere. */
import * as v from "valibot";
import { describeFault, type Fault } from "../../sim/faults.ts";
import { isNewerProgress, NO_PROGRESS, type Progress, progressSchema } from "./progress.ts";

/** Characters: far more than a course with every note and task written in full. */
export const LONGEST_PROGRESS_FILE = 2_000_000;

/** What stands in the file beside the progress, for whoever opens it. */
export interface FileNote {
  /** version of the kit */
  readonly kit: string;
  /** RFC 3339 */
  readonly date: string;
  readonly cautions: readonly string[];
}

export const writeProgressFile = (progress: Progress, note: FileNote): string =>
  `${JSON.stringify({ ...progress, ...note }, null, 2)}\n`;

export type ReadProgressFile =
  | { readonly progress: Progress; readonly date: string; readonly fault: null }
  | { readonly progress: null; readonly fault: string };

export function readProgressFile(text: string): ReadProgressFile {
  const refuse = (fault: Fault): ReadProgressFile => ({ progress: null, fault: describeFault(fault) });
  if (text.length > LONGEST_PROGRESS_FILE)
    return refuse({
      path: "file",
      found: `${text.length} characters`,
      allowed: `at most ${LONGEST_PROGRESS_FILE}`,
    });
  let found: unknown;
  try {
    found = JSON.parse(text);
  } catch {
    return refuse({ path: "file", found: JSON.stringify(text.slice(0, 40)), allowed: "JSON" });
  }
  if (typeof found !== "object" || found === null)
    return refuse({ path: "file", found: String(found).slice(0, 40), allowed: "an object" });
  if (isNewerProgress(text))
    return refuse({
      path: "version",
      found: String((found as { version?: unknown }).version),
      allowed: `${NO_PROGRESS.version}; a newer version of the kit wrote this file`,
    });
  const { kit: _kit, date, cautions: _cautions, ...rest } = found as Record<string, unknown>;
  const read = v.safeParse(progressSchema, rest);
  if (!read.success) {
    const [issue] = read.issues;
    return refuse({
      path: v.getDotPath(issue) ?? "file",
      found: issue.received.slice(0, 60),
      allowed: issue.expected === "never" ? "no key of this name" : (issue.expected ?? issue.message),
    });
  }
  return { progress: read.output, date: typeof date === "string" ? date : "", fault: null };
}
