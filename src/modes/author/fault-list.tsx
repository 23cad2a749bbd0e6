/** What could not be read, each with its line; a tap goes there. */

import { t } from "../../i18n/index.ts";
import type { Fault } from "../../sim/faults.ts";

export interface FaultListProps {
  readonly faults: readonly Fault[];
  readonly onGo: (line: number) => void;
}

export const FaultList = ({ faults, onGo }: FaultListProps) => (
  <div class="author-faults" role="status">
    <p>{t("author.faults", { count: faults.length })}</p>
    <ul>
      {faults.map((fault) => {
        const line = Number(fault.path.split(":").pop());
        return (
          <li key={`${fault.path} ${fault.found}`}>
            <button type="button" class="quiet" onClick={() => onGo(line)}>
              {t("author.fault", { line, found: fault.found, allowed: fault.allowed })}
            </button>
          </li>
        );
      })}
    </ul>
  </div>
);
