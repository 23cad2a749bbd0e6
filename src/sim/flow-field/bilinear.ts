/** Values between the points of a grid, straight in both directions. */

/**
 * The value of `values` [rows * width] at a place counted in points from the first one; the place must lie at or above 0 and below
 * the last column and row. Tracers' own loop reads two interleaved fields at once instead: it is the page's hottest.
 */
export function bilinear(values: Float32Array | Float64Array, width: number, x: number, y: number): number {
  const i = x | 0;
  const j = y | 0;
  const s = x - i;
  const t = y - j;
  const k = j * width + i;
  return (
    (1 - t) * ((1 - s) * values[k]! + s * values[k + 1]!) +
    t * ((1 - s) * values[k + width]! + s * values[k + width + 1]!)
  );
}
