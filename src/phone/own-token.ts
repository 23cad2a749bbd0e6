/** What this phone is called in a room: a number that it drew itself, kept for that room alone and for no longer. */
const KEPT = "lungward.phone";

/** The same as before where this phone was in this room already: it has one answer. */
export function tokenFor(code: string): string {
  try {
    const [room, token] = (localStorage.getItem(KEPT) ?? "").split(" ");
    if (room === code && token && /^[0-9a-f]{32}$/.test(token)) return token;
  } catch {
    // Without storage the number lasts as long as the page.
  }
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
