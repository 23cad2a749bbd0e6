/** What a what-if changes, and what it holds: without the second no number after it means anything. */
import { t } from "../../../i18n/index.ts";
import type { CirculationRequest } from "../../../sim/parameters/request.ts";
import { heldSentence } from "../../shared/words/held.ts";
import type { WhatIf } from "./what-if.ts";

export interface ChangesProps {
  readonly whatIf: WhatIf | null;
  readonly request: CirculationRequest;
}

export const Changes = ({ whatIf, request }: ChangesProps) => (
  <div class="what-if-changes" data-changes>
    <p class="script">
      {whatIf && whatIf.changes.length > 0 ? whatIf.changes.join("; ") : t("lecture.unchanged")}
    </p>
    <p class="quiet-text">{heldSentence(request)}</p>
  </div>
);
