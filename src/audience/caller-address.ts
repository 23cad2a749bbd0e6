/** Whose tries are counted together: the address of a connection, or the one that a trusted proxy saw. */
import type { IncomingMessage } from "node:http";

/** A proxy adds what it saw at the end; what stands before it the caller may have written itself. */
export function callerAddress(
  { headers, socket }: Pick<IncomingMessage, "headers" | "socket">,
  trustProxy: boolean,
): string {
  const seen = trustProxy ? String(headers["x-forwarded-for"] ?? "").split(",") : [];
  return seen.at(-1)?.trim() || (socket.remoteAddress ?? "");
}
