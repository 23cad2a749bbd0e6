/** What the checker found, each with its line; a tap goes there, a second one fixes what one word would fix. */

import { t } from "../../i18n/index.ts";
import { lineOfFault } from "../../lesson/edit/field-of-fault.ts";
import type { Fault } from "../../sim/faults.ts";
import { inSight } from "../../ui/fault-note.tsx";
import { MAX_KILOBYTES } from "../shared/own/own-texts.ts";
import type { DraftCheck } from "./draft-checking.ts";
import { plainFix } from "./plain-fix.ts";

export interface FaultListProps {
  readonly faults: readonly Fault[];
  readonly refusedFile: string | null;
  readonly check: DraftCheck;
  /** Not all of the text has been checked. */
  readonly busy: boolean;
  readonly text: string;
  readonly onGo: (line: number, fault: Fault) => void;
  /** The text without the fault. */
  readonly onFix: (text: string) => void;
}

export function FaultList({ faults, refusedFile, check, busy, text, onGo, onFix }: FaultListProps) {
  return (
    <div class="author-faults" aria-busy={busy}>
      <p role="status">{stateOf(faults.length, check)}</p>
      {refusedFile !== null && (
        <p role="alert">{t("study.own.refused", { name: inSight(refusedFile), most: MAX_KILOBYTES })}</p>
      )}
      <ul>
        {faults.map((fault) => {
          const line = lineOfFault(fault);
          const fix = plainFix(fault, text);
          return (
            <li key={`${fault.path} ${fault.found}`}>
              <button type="button" class="quiet" onClick={() => onGo(line, fault)}>
                {t("author.fault", { line, found: fault.found, allowed: fault.allowed })}
              </button>
              {fix && (
                <button type="button" onClick={() => onFix(fix.text)}>
                  {t("author.fix", { word: fix.word })}
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </div>
  );
}

function stateOf(faults: number, { lesson, steps, of }: DraftCheck): string {
  if (steps === null && faults === 0) return t("author.reading");
  if (lesson && steps !== null && steps < of) return t("author.checking", { steps, of, count: faults });
  return t(lesson ? "author.checked" : "author.unread", { count: faults });
}
