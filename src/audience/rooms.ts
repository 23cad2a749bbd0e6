/** The one room of a process that keeps it in a file. */
import { type HeldRoom, holdRoom } from "./held-room.ts";
import type { Journal } from "./journal.ts";
import type { OpenRoom, Rooms } from "./reception.ts";
import { digestOf } from "./room-keys.ts";

/** ms between two counts sent to the stage */
const COUNTED = 50;

/** Held from a journal, with its counts sent together. @param onEnd called when the talk ended and nothing of it is kept */
export async function holdFrom(journal: Journal, onEnd: () => void): Promise<HeldRoom> {
  let due: ReturnType<typeof setTimeout> | null = null;
  return holdRoom({
    journal,
    soon(call) {
      due ??= setTimeout(() => {
        due = null;
        call();
      }, COUNTED);
    },
    onEnd() {
      if (due) clearTimeout(due);
      void journal.erase().then(onEnd);
    },
  });
}

export async function oneRoom(
  { code, key, journal }: { readonly code: string; readonly key: string; readonly journal: Journal },
  onEnd: () => void,
): Promise<Rooms> {
  let open: OpenRoom | null = null;
  const room = await holdFrom(journal, () => {
    open = null;
    onEnd();
  });
  open = { room, keyDigest: digestOf(key) };
  return { find: async (asked) => (asked === code ? open : null) };
}
