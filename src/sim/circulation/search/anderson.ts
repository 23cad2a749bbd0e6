/** Anderson's acceleration of a fixed-point search (D. G. Anderson, J ACM 1965;12:547), with secants that outlive the search. */

export const MEMORY = 10;
/** A secant of which less than this part is new beside newer ones tells more of rounding and curvature than of the map. */
const INDEPENDENT = 0.03;

/** How residual and image changed together from one point to the next; [size] each, each component in its own unit. */
export interface Secant {
  readonly residual: Float64Array;
  readonly image: Float64Array;
}

/** The running search. */
export interface Accelerator {
  /** From a point and its image, the next point to try. */
  next(point: Float64Array, image: Float64Array): Float64Array;
  forget(): void;
  /** newest last */
  readonly secants: () => readonly Secant[];
}

/**
 * @param scale [size], in 1 over each component's unit: turns it into comparable size
 * @param known secants of a neighbouring search: its map changes nearly alike, so that they shorten this one
 */
export function acceleratorOf(scale: Float64Array, known: readonly Secant[]): Accelerator {
  let secants = [...known];
  let before: Secant | undefined;
  return {
    secants: () => secants,
    forget() {
      secants = [];
      before = undefined;
    },
    next(point, image) {
      const now = { residual: image.map((value, i) => value - (point[i] ?? 0)), image: image.slice() };
      if (before)
        secants = [
          ...secants.slice(1 - MEMORY),
          { residual: difference(now.residual, before.residual), image: difference(now.image, before.image) },
        ];
      before = now;
      const weighed = now.residual.map((value, i) => value * (scale[i] ?? 0));
      const next = image.slice();
      for (const each of independent(secants, scale))
        subtract(next, each.image, product(weighed, each.residual));
      return next;
    },
  };
}

/** The same secants, newest first, with residuals weighed by `scale`, of length 1 and at right angles to each other. */
function independent(secants: readonly Secant[], scale: Float64Array): Secant[] {
  const found: Secant[] = [];
  for (const secant of secants.toReversed()) {
    const residual = secant.residual.map((value, i) => value * (scale[i] ?? 0));
    const image = secant.image.slice();
    const whole = Math.sqrt(product(residual, residual));
    for (const each of found) {
      const part = product(residual, each.residual);
      subtract(residual, each.residual, part);
      subtract(image, each.image, part);
    }
    const left = Math.sqrt(product(residual, residual));
    if (!(left > INDEPENDENT * whole)) continue;
    found.push({
      residual: residual.map((value) => value / left),
      image: image.map((value) => value / left),
    });
  }
  return found;
}

const difference = (one: Float64Array, other: Float64Array): Float64Array =>
  one.map((value, i) => value - (other[i] ?? 0));

function subtract(from: Float64Array, what: Float64Array, times: number): void {
  for (let i = 0; i < from.length; i++) from[i] = (from[i] ?? 0) - times * (what[i] ?? 0);
}

function product(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += (one[i] ?? 0) * (other[i] ?? 0);
  return sum;
}
