/** What server, stage and phone must agree on: a room's code and key, and the bounds of what is asked and answered. It imports nothing. */

/** Without characters that are read for one another: 32 of them, so 35 bits in seven. */
export const CODE_CHARACTERS = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ";
export const CODE_LENGTH = 7;
export const CODE = new RegExp(`^[${CODE_CHARACTERS}]{${CODE_LENGTH}}$`);

/** Of whoever holds the room. */
export const KEY_BYTES = 32;
export const KEY = new RegExp(`^[0-9a-f]{${2 * KEY_BYTES}}$`);
/** Where a stage's window keeps code and key, in sessionStorage. */
export const KEPT_KEY = "lungward.lecture.audience";

/** Drawn by a phone itself: it tells one phone from another and nothing else. */
export const TOKEN = /^[0-9a-f]{32}$/;

/** As many as there are keys to raise a hand with. */
export const MAX_CHOICES = 9;
export const CHOICE_ID = /^[\w=-]{1,60}$/;
/** A number that is answered, on either side of 0. */
export const LARGEST = 1e9;
/** characters of a text by what it is */
export const LONGEST_TEXT = { key: 200, ask: 600, title: 300, step: 6000 } as const;
