/** What went wrong at the kiosk, for the organiser; kept in memory, the last few alone. */
import { signal } from "@preact/signals";

export interface Trouble {
  /** RFC 3339 */
  readonly at: string;
  readonly what: string;
}

const MOST = 20;

export const troubles = signal<readonly Trouble[]>([]);

export function noteTrouble(what: string): void {
  const trouble = { at: new Date().toISOString(), what: what.slice(0, 200) };
  troubles.value = [...troubles.value, trouble].slice(-MOST);
}
