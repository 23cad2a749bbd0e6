/** Anderson's acceleration of a fixed-point search (D. G. Anderson, J ACM 1965;12:547), with restart when it misleads. */

const MEMORY = 10;
const RIDGE = 1e-12;

export interface Accelerator {
  /** From a point and its image, the next point to try; `scale` turns each component into comparable size. */
  next(point: Float64Array, image: Float64Array): Float64Array;
  forget(): void;
}

export function acceleratorOf(scale: Float64Array): Accelerator {
  const size = scale.length;
  let residuals: Float64Array[] = [];
  let images: Float64Array[] = [];
  return {
    forget() {
      residuals = [];
      images = [];
    },
    next(point, image) {
      const residual = Float64Array.from(image, (value, i) => (value - point[i]!) * scale[i]!);
      residuals.push(residual);
      images.push(image.slice());
      if (residuals.length > MEMORY + 1) {
        residuals.shift();
        images.shift();
      }
      const weights = mixing(residuals);
      const last = residuals.length - 1;
      const next = new Float64Array(size);
      for (let i = 0; i < size; i++) {
        let value = images[last]![i]!;
        for (let k = 0; k < last; k++) value -= weights[k]! * (images[k + 1]![i]! - images[k]![i]!);
        next[i] = value;
      }
      return next;
    },
  };
}

/** Least squares of the last residual on the differences between successive ones, by normal equations with a small ridge. */
function mixing(residuals: readonly Float64Array[]): Float64Array {
  const count = residuals.length - 1;
  const last = residuals[count]!;
  const difference = (k: number, i: number) => residuals[k + 1]![i]! - residuals[k]![i]!;
  // [count][count + 1], right-hand side in the last column
  const rows = Array.from({ length: count }, () => new Float64Array(count + 1));
  for (let p = 0; p < count; p++) {
    for (let q = p; q < count; q++) {
      let product = 0;
      for (let i = 0; i < last.length; i++) product += difference(p, i) * difference(q, i);
      rows[p]![q] = product;
      rows[q]![p] = product;
    }
    let product = 0;
    for (let i = 0; i < last.length; i++) product += difference(p, i) * last[i]!;
    rows[p]![count] = product;
    rows[p]![p] = rows[p]![p]! * (1 + RIDGE) + Number.MIN_VALUE;
  }
  return solveRows(rows);
}

/** Gauss with row exchange; a column without a pivot gets the weight 0. */
function solveRows(rows: Float64Array[]): Float64Array {
  const count = rows.length;
  const weights = new Float64Array(count);
  for (let p = 0; p < count; p++) {
    let best = p;
    for (let q = p + 1; q < count; q++) if (Math.abs(rows[q]![p]!) > Math.abs(rows[best]![p]!)) best = q;
    [rows[p], rows[best]] = [rows[best]!, rows[p]!];
    const pivot = rows[p]![p]!;
    if (Math.abs(pivot) < 1e-300) continue;
    for (let q = p + 1; q < count; q++) {
      const factor = rows[q]![p]! / pivot;
      for (let k = p; k <= count; k++) rows[q]![k] = rows[q]![k]! - factor * rows[p]![k]!;
    }
  }
  for (let p = count - 1; p >= 0; p--) {
    let value = rows[p]![count]!;
    for (let q = p + 1; q < count; q++) value -= rows[p]![q]! * weights[q]!;
    weights[p] = Math.abs(rows[p]![p]!) < 1e-300 ? 0 : value / rows[p]![p]!;
  }
  return weights;
}
