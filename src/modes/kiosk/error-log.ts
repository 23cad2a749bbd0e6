/** What went wrong at the kiosk, for the organiser; kept in memory, the last few alone. */
import { signal } from "@preact/signals";

export interface LoggedError {
  /** RFC 3339 */
  readonly at: string;
  readonly what: string;
}

const MAX = 20;

export const errorLog = signal<readonly LoggedError[]>([]);

export function logError(what: string): void {
  const entry = { at: new Date().toISOString(), what: what.slice(0, 200) };
  errorLog.value = [...errorLog.value, entry].slice(-MAX);
}
