/** How large and how often the stage's picture goes to the speaker's window. */

/** ms between pictures */
export const EVERY = 400;
/** ms for which a look asks for pictures */
export const LOOKS_FOR = 2500;
/** px of the longer side */
export const LONGEST_SIDE = 640;
export const QUALITY = 0.7;
/** bytes of a picture: none of this size needs as many */
export const MAX_BYTES = 200_000;

/** px, in the shape of what is shown */
export function sizeOfPicture(width: number, height: number): [width: number, height: number] {
  const scale = Math.min(1, LONGEST_SIDE / Math.max(width, height, 1));
  return [Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale))];
}
