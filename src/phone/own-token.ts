/** What this phone is called in a room: a number that it drew itself, kept for that room alone and for no longer. */
import { TOKEN } from "../audience/room-code.ts";

const KEPT = "lungward.phone";

/** The room that this phone was in, and its number there; null where it was in none. */
function kept(): { readonly room: string; readonly token: string } | null {
  try {
    const [room = "", token = ""] = (localStorage.getItem(KEPT) ?? "").split(" ");
    return TOKEN.test(token) ? { room, token } : null;
  } catch {
    // Without storage the number lasts as long as the page.
    return null;
  }
}

export const keptRoom = (): string => kept()?.room ?? "";

/** The same as before where this phone was in this room already: it has one answer. */
export function tokenFor(code: string): string {
  const earlier = kept();
  if (earlier?.room === code) return earlier.token;
  const drawn = Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) =>
    byte.toString(16).padStart(2, "0"),
  ).join("");
  try {
    localStorage.setItem(KEPT, `${code} ${drawn}`);
  } catch {
    // As above.
  }
  return drawn;
}

export function forgetToken(): void {
  try {
    localStorage.removeItem(KEPT);
  } catch {
    // Nothing was kept either.
  }
}
