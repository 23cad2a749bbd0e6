/** Staff are called away: what they opened closes by itself. */
import { useEffect } from "preact/hooks";

/** ms */
const QUIET = 60_000;

/** Calls `close` after a minute without a touch or a key. */
export function useLeaveWhenQuiet(close: () => void): void {
  useEffect(() => {
    let due = setTimeout(close, QUIET);
    const touched = () => {
      clearTimeout(due);
      due = setTimeout(close, QUIET);
    };
    const events = ["pointerdown", "keydown", "input"] as const;
    for (const name of events) addEventListener(name, touched, { capture: true });
    return () => {
      clearTimeout(due);
      for (const name of events) removeEventListener(name, touched, { capture: true });
    };
  }, []);
}
