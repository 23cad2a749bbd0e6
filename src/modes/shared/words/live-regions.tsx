/** The page's two live regions, and what speaks through them. */
import { effect } from "@preact/signals";
import { render } from "preact";
import { t } from "../../../i18n/index.ts";
import { announceFault, LiveRegions } from "../../../ui/announce.tsx";
import type { Session } from "../session.ts";
import { tellAnswers } from "./announce-answers.ts";

export function mountLiveRegions(session: Session): void {
  const host = document.createElement("div");
  document.body.append(host);
  render(<LiveRegions />, host);
  tellAnswers(session);
  effect(() => {
    if (session.chain.faults.value.length > 0) announceFault(t("fault.title"));
  });
}
