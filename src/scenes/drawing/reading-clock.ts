/** When a number that changes all the time is read anew, so that it can be read. */

/** s of a person's time: four readings a second can be read */
const PERIOD = 0.25;

/**
 * Gives the model's time (s) whose reading stands now. It follows by a person's clock, not the model's: in slow motion the number
 * keeps up with the picture, and on one that is held it belongs to the moment that is seen.
 */
export function readingClock(): (time: number, elapsed: number) => number {
  let stands = 0;
  let since = Number.POSITIVE_INFINITY;
  return (time, elapsed) => {
    since += elapsed;
    if (since >= PERIOD) {
      stands = time;
      since = 0;
    }
    return stands;
  };
}
