/** Whose attempts are counted together: the address of a connection, or the one that a trusted proxy saw. */
import type { IncomingMessage } from "node:http";
import { isIPv6 } from "node:net";

/** A proxy adds what it saw at the end; what stands before it the caller may have written itself. */
export function callerAddress(
  { headers, socket }: Pick<IncomingMessage, "headers" | "socket">,
  trustProxy: boolean,
): string {
  const seen = trustProxy ? String(headers["x-forwarded-for"] ?? "").split(",") : [];
  return networkOf(seen.at(-1)?.trim() || (socket.remoteAddress ?? ""));
}

/** An IPv6 caller has a network of its own, the first four groups, and may take any address within it. */
function networkOf(address: string): string {
  const bare = address.split("%")[0] ?? "";
  if (!isIPv6(bare)) return address;
  const short = new URL(`http://[${bare}]`).hostname.slice(1, -1);
  const mapped = /^::ffff:([\da-f]+):([\da-f]+)$/.exec(short);
  if (mapped) return mapped.slice(1).flatMap(bytesOf).join(".");
  const [before = [], after = []] = short.split("::").map((part) => part.split(":").filter(Boolean));
  const zeros = new Array<string>(8 - before.length - after.length).fill("0");
  return [...before, ...zeros, ...after].slice(0, 4).join(":");
}

function bytesOf(group: string): readonly number[] {
  const both = Number.parseInt(group, 16);
  return [both >> 8, both & 255];
}
