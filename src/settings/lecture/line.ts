/**
 * The line between the speaker's window and the stage's, on this machine alone. Both ways are used at once: a broadcast
 * channel, and the handle of the window that was opened (pages from a stick may have no common channel).
 */

export interface Line<Out> {
  post(message: Out): void;
  /** Another window of this page to talk to. */
  join(other: Window): void;
  close(): void;
}

interface Envelope {
  readonly lungwardLine: string;
  readonly id: string;
  readonly message: unknown;
}

const isEnvelope = (data: unknown, name: string): data is Envelope =>
  typeof data === "object" && data !== null && (data as Envelope).lungwardLine === name;

/** `hear` gets each message once, whichever way it came. */
export function openLine<Out, In>(name: string, hear: (message: In) => void): Line<Out> {
  const heard = new Set<string>();
  const others = new Set<Window>();
  if (globalThis.opener) others.add(globalThis.opener as Window);
  const take = (data: unknown) => {
    if (!isEnvelope(data, name) || heard.has(data.id)) return;
    if (heard.size > 200) heard.clear();
    heard.add(data.id);
    hear(data.message as In);
  };
  let channel: BroadcastChannel | null = null;
  try {
    channel = new BroadcastChannel(name);
    channel.onmessage = ({ data }) => take(data);
  } catch {
    // The window handles remain.
  }
  const listen = ({ data, source }: MessageEvent) => {
    if (!isEnvelope(data, name)) return;
    if (source && source !== window) others.add(source as Window);
    take(data);
  };
  addEventListener("message", listen);
  let count = 0;
  const self = `${performance.timeOrigin}.${performance.now()}`;
  return {
    post(message) {
      const envelope: Envelope = { lungwardLine: name, id: `${self}.${count++}`, message };
      channel?.postMessage(envelope);
      for (const other of others) {
        if (other.closed) others.delete(other);
        else other.postMessage(envelope, "*");
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
