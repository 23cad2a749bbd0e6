/** A checksum of a saved record, so that a slip or a quick edit is seen. Whoever can program can make a new one: the page says so. */
import { fingerprint } from "../../lesson/lesson-version.ts";

export type RecordCheck = "unchanged" | "changed" | "unknown";

/** Two groups of four hexadecimal digits. Kinds of line ends do not count: a mail may change them. */
export const checksumOf = (body: string): string =>
  fingerprint(body.replace(/\r\n?/g, "\n")).replace(/^(.{4})/, "$1-");

/** `page`: a record as it was saved */
export function checkRecord(page: string): RecordCheck {
  const [, body, foot] = /<main>([\s\S]*)<\/main>([\s\S]*)$/.exec(page) ?? [];
  const [checksum] = /\b[0-9a-f]{4}-[0-9a-f]{4}\b/.exec(foot ?? "") ?? [];
  if (body === undefined || checksum === undefined) return "unknown";
  return checksumOf(body) === checksum ? "unchanged" : "changed";
}
