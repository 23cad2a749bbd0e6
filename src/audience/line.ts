/** A page's line to the audience's server, which is the server of the page itself and no other. It calls again until it is closed. */
import { ENDED } from "./ended.ts";

export interface AudienceLine<Out> {
  /** False while there is no line: nothing is said later by itself. */
  say(message: Out): boolean;
  /** A device that slept calls at once. */
  wake(): void;
  close(): void;
}

export interface LineOptions<Out, In> {
  readonly side: "phone" | "stage";
  /** Who calls; said first, at every call. */
  readonly greeting: () => Out;
  /** null for what is no message. */
  readonly read: (data: string) => In | null;
  readonly hear: (message: In) => void;
  readonly onLine: (open: boolean) => void;
  /** 0 to 1: a hall must not call in step. */
  readonly chance: () => number;
  /** The server will not have this caller: there is no further call. */
  readonly onRefused: (code: number) => void;
}

/** ms; each further wait is twice as long */
const WAIT = { first: 500, longest: 5000 } as const;
/** ms: the server says something every 15 s */
const SILENT = 40_000;
const FINAL: readonly number[] = [ENDED.wrongKey, ENDED.noRoom, ENDED.full, ENDED.over];

export function openLine<Out, In>(options: LineOptions<Out, In>): AudienceLine<Out> {
  const { side, greeting, read, hear, onLine, chance, onRefused } = options;
  let socket: WebSocket | null = null;
  let wait: number = WAIT.first;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let heardAt = 0;
  let closed = false;
  const later = (call: () => void, ms: number) => {
    clearTimeout(timer);
    timer = setTimeout(call, ms);
  };
  const watch = () => later(() => socket?.close(), SILENT);
  const call = () => {
    const own = new WebSocket(`${location.origin.replace(/^http/, "ws")}/hall/${side}`);
    socket = own;
    own.onopen = () => {
      own.send(JSON.stringify(greeting()));
      watch();
    };
    own.onmessage = ({ data }) => {
      heardAt = performance.now();
      wait = WAIT.first;
      watch();
      const message = read(String(data));
      onLine(true);
      if (message) hear(message);
    };
    own.onclose = ({ code }) => {
      if (socket !== own || closed) return;
      socket = null;
      onLine(false);
      if (FINAL.includes(code)) {
        closed = true;
        onRefused(code);
        return;
      }
      later(call, wait * (0.5 + chance()));
      wait = Math.min(WAIT.longest, 2 * wait);
    };
  };
  call();
  return {
    say(message) {
      if (socket?.readyState !== WebSocket.OPEN) return false;
      socket.send(JSON.stringify(message));
      return true;
    },
    wake() {
      if (closed) return;
      // What a device missed while it slept it does not know; a line that was silent meanwhile is made anew.
      if (socket && performance.now() - heardAt < SILENT / 2) return;
      const old = socket;
      socket = null;
      if (old) onLine(false);
      old?.close();
      later(call, 0);
    },
    close() {
      closed = true;
      clearTimeout(timer);
      socket?.close();
    },
  };
}

/** For `chance`. */
export const drawChance = (): number => (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) / 2 ** 32;
