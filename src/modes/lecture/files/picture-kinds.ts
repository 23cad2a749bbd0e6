/** Which pictures a talk takes, recognised by their first bytes: a name may say anything. */

/** bytes */
export const MAX_PICTURE = 25_000_000;

export const ENDINGS = {
  "image/png": "png",
  "image/jpeg": "jpg",
  "image/webp": "webp",
  "image/svg+xml": "svg",
} as const;
export type PictureType = keyof typeof ENDINGS;

const begins = (bytes: Uint8Array, text: string, at = 0): boolean =>
  [...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

/** null for what is none of the four. */
export function typeOfPicture(bytes: Uint8Array): PictureType | null {
  if (begins(bytes, "\x89PNG\r\n\x1a\n")) return "image/png";
  if (begins(bytes, "\xff\xd8\xff")) return "image/jpeg";
  if (begins(bytes, "RIFF") && begins(bytes, "WEBP", 8)) return "image/webp";
  const head = new TextDecoder().decode(bytes.subarray(0, 2000));
  return /^\uFEFF?\s*(<\?xml[^>]*>\s*|<!--(?:(?!-->)[\s\S])*-->\s*|<!DOCTYPE[^>]*>\s*)*<svg[\s>]/i.test(head)
    ? "image/svg+xml"
    : null;
}

export const isPdf = (bytes: Uint8Array): boolean => begins(bytes, "%PDF-");
