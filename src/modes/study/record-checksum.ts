/** A checksum of a saved record, so that a slip or a quick edit is seen. Whoever can program can make a new one: the page says so. */
import { fingerprint } from "../../lesson/read/lesson-version.ts";

type RecordCheck = "unchanged" | "changed" | "unknown";

/** Two groups of four hexadecimal digits: stands in the page until the page is whole. */
export const NO_CHECKSUM = "0000-0000";
const PLACE = /(<footer><p><strong>[^<]*)\b([0-9a-f]{4}-[0-9a-f]{4})\b/;

/** Of the whole page, what only looks included: a style can hide a word as well as an edit. Line ends do not count: a mail may change them. */
const checksumOf = (page: string): string =>
  fingerprint(put(page, NO_CHECKSUM).replace(/\r\n?/g, "\n").trim()).replace(/^(.{4})/, "$1-");

const put = (page: string, checksum: string): string =>
  page.replace(PLACE, (_, before) => `${before}${checksum}`);

export const withChecksum = (page: string): string => put(page, checksumOf(page));

/** `page`: a record as it was saved */
export function checkRecord(page: string): RecordCheck {
  const checksum = PLACE.exec(page)?.[2];
  if (checksum === undefined) return "unknown";
  return checksumOf(page) === checksum ? "unchanged" : "changed";
}
