/** A caller over a socket: what it does not take in is not heaped up for it. */
import type { WebSocket } from "ws";
import type { Caller } from "./held-room.ts";

/** bytes that may wait for one caller; whoever reads so slowly is cut off and calls again */
export const MAX_WAITING = 512 * 1024;

export function sendTo(socket: WebSocket, text: string): void {
  if (socket.bufferedAmount > MAX_WAITING) socket.terminate();
  else socket.send(text);
}

export const callerOf = (socket: WebSocket, address: string): Caller => ({
  address,
  send: (text) => sendTo(socket, text),
  end: (code) => socket.close(code),
});
