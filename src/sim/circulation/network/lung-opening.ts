/** How far the vessels of the lung stand open, as a mean over its height. */

/**
 * How far open a distending lung vessel is at a pressure above the air about it, as the mean of three levels of the lung: the upper
 * third stands `height` higher, the lower as much lower (Pa); a vessel below the air's pressure is shut (West's zones, spread out).
 */
export function lungOpening(distensibility: number, pressure: number, height: number): number {
  const middle = 1 + distensibility * Math.max(pressure, 0);
  const top = 1 + distensibility * (pressure > height ? pressure - height : 0);
  const foot = 1 + distensibility * (pressure > -height ? pressure + height : 0);
  return (fifthPower(top) + fifthPower(middle) + fifthPower(foot)) / 3;
}

function fifthPower(x: number): number {
  const square = x * x;
  return square * square * x;
}
