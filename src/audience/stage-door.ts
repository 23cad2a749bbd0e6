/** Hands the room's key to the kit: from the part of an address that no server sees, into the window's own storage. */
import { createHash } from "node:crypto";
import { KEPT_KEY } from "./room-code.ts";

/** An address may have passed through what writes it all small or all in capitals. */
const script = `const [code, key] = location.hash.slice(1).split(".");
if (key) sessionStorage.setItem("${KEPT_KEY}", JSON.stringify({ code: code.toUpperCase(), key: key.toLowerCase() }));
location.replace("./?mode=lecture");`;

const hash = createHash("sha256").update(script).digest("base64");

export const STAGE_DOOR = {
  headers: {
    "content-type": "text/html; charset=utf-8",
    "cache-control": "no-store",
    "content-security-policy": `default-src 'none'; script-src 'sha256-${hash}'; frame-ancestors 'none'`,
  },
  page: `<!doctype html><html lang="en"><meta charset="utf-8"><title>Lungward</title><script>${script}</script></html>`,
} as const;
