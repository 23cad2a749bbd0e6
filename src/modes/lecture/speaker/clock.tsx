/** The time of day, the time since the talk began, and the time that is left. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { language, t } from "../../../i18n/index.ts";

/** `m:ss`, a true minus when negative */
export function minutesAndSeconds(seconds: number): string {
  const whole = Math.floor(Math.abs(seconds));
  const text = `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
  return seconds <= -1 ? `\u2212${text}` : text;
}

export interface ClockProps {
  /** ms since 1970; null = the talk has not begun */
  readonly began: number | null;
  readonly minutes: number;
}

export function Clock({ began, minutes }: ClockProps) {
  const now = useSignal(Date.now());
  useEffect(() => {
    const tick = setInterval(() => {
      now.value = Date.now();
    }, 500);
    return () => clearInterval(tick);
  }, [now]);
  const since = began === null ? null : (now.value - began) / 1000;
  const left = since === null ? minutes * 60 : minutes * 60 - since;
  return (
    <dl class={left < 0 ? "clock over" : "clock"}>
      <div>
        <dt>{t("lecture.clock")}</dt>
        <dd>{new Intl.DateTimeFormat(language(), { timeStyle: "short" }).format(now.value)}</dd>
      </div>
      <div>
        <dt>{t("lecture.elapsed")}</dt>
        <dd>{since === null ? t("lecture.notBegun") : minutesAndSeconds(since)}</dd>
      </div>
      <div>
        <dt>{t(left < 0 ? "lecture.over" : "lecture.left")}</dt>
        <dd data-left>{minutesAndSeconds(Math.abs(left))}</dd>
      </div>
    </dl>
  );
}
