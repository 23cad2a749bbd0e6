/** "Back to your course": only where the course system says where that is. */
import type { TargetedMouseEvent } from "preact";
import { useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { KeptProgress } from "./kept-progress.ts";

export function LeaveLink({ wayBack, end }: Pick<KeptProgress, "wayBack" | "end">) {
  const ended = useRef(false);
  if (wayBack === null) return null;
  const leave = async (event: TargetedMouseEvent<HTMLAnchorElement>) => {
    if (ended.current) return;
    const link = event.currentTarget;
    event.preventDefault();
    await end();
    ended.current = true;
    link.click();
  };
  return (
    <a class="button" href={wayBack} onClick={(event) => void leave(event)}>
      {t("study.leave")}
    </a>
  );
}
