/** The room's short code for phones, and the long key of whoever holds the room. */
import { createHash, randomBytes, randomInt, timingSafeEqual } from "node:crypto";
import { CODE_CHARACTERS, CODE_LENGTH, KEY_BYTES } from "./room-code.ts";

export const newCode = (): string =>
  Array.from({ length: CODE_LENGTH }, () => CODE_CHARACTERS.charAt(randomInt(CODE_CHARACTERS.length))).join(
    "",
  );

export const newKey = (): string => randomBytes(KEY_BYTES).toString("hex");

/** What can be kept where others may read: a key is not found from it. */
export const digestOf = (key: string): string => createHash("sha256").update(key).digest("hex");

/** Takes as long for a digest that is nearly right as for any other. */
export const isSameDigest = (a: string, b: string): boolean =>
  timingSafeEqual(createHash("sha256").update(a).digest(), createHash("sha256").update(b).digest());
