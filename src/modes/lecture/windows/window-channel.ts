/**
 * The line between the speaker's window and the stage's, on this machine alone. Both ways are used at once: a broadcast
 * channel of the room, and the handle of the window that was opened (pages from a stick may have no common channel).
 * Only those hear who know the room's id, in a page of the same origin.
 */
import * as v from "valibot";

export interface WindowChannel<Out> {
  post(message: Out): void;
  /** Another window of this page to talk to. */
  join(other: Window): void;
  close(): void;
}

export const roomId = v.pipe(v.string(), v.regex(/^[0-9a-f]{32}$/));

const envelope = v.looseObject({
  lungwardChannel: roomId,
  /** Of the line's form. A later one may say more; what is not understood is passed over. */
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  id: v.pipe(v.string(), v.minLength(1), v.maxLength(80)),
  message: v.unknown(),
});

export const CHANNEL_VERSION = 1;

const MAX_KNOWN = 200;

/** The whole page's own origin and no other: also where it has none to name, as a file. */
const OWN_ORIGIN = "/";

/** An id that nobody guesses. */
export const newRoom = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join(
    "",
  );

/** `read` gives null for what is no message; `hear` gets each message once, whichever way it came. */
export function openWindowChannel<Out, In>(
  room: string,
  read: (found: unknown) => In | null,
  hear: (message: In) => void,
): WindowChannel<Out> {
  const heard = new Set<string>();
  const others = new Set<Window>();
  if (globalThis.opener) others.add(globalThis.opener as Window);
  /** True for an envelope of this room, heard or not. */
  const take = (data: unknown): boolean => {
    const found = v.safeParse(envelope, data);
    if (!found.success || found.output.lungwardChannel !== room) return false;
    const { id, message } = found.output;
    if (heard.has(id)) return true;
    heard.add(id);
    // The oldest go first: a message that comes both ways is still known when it comes again.
    for (const old of heard) {
      if (heard.size <= MAX_KNOWN) break;
      heard.delete(old);
    }
    const known = read(message);
    if (known !== null) hear(known);
    return true;
  };
  let channel: BroadcastChannel | null = null;
  try {
    channel = new BroadcastChannel(`lungward.lecture.${room}`);
    channel.onmessage = ({ data }) => take(data);
  } catch {
    // The window handles remain.
  }
  const listen = ({ data, source, origin }: MessageEvent) => {
    if (origin !== globalThis.origin || !take(data)) return;
    if (source && source !== window) others.add(source as Window);
  };
  addEventListener("message", listen);
  let count = 0;
  const self = `${performance.timeOrigin}.${performance.now()}`;
  return {
    post(message) {
      const sent = { lungwardChannel: room, version: CHANNEL_VERSION, id: `${self}.${count++}`, message };
      channel?.postMessage(sent);
      for (const other of others) {
        if (other.closed) others.delete(other);
        else other.postMessage(sent, OWN_ORIGIN);
      }
    },
    join(other) {
      others.add(other);
    },
    close() {
      channel?.close();
      removeEventListener("message", listen);
    },
  };
}
