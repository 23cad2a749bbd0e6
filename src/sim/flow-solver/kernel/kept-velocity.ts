// A velocity's new value, and what that makes of the velocity ahead. Addresses are those of u; v lies one STRIDE further in every pair of arrays.
import { U, U_AHEAD, U_LOW } from "./addresses";
import { LEAD } from "./step-constants";
import { add, mul, sub } from "./vectors";

/**
 * Adds `change`; single precision carries what rounding leaves over, or a slow approach to the steady state would be lost.
 * @param to from the ahead velocities' first array to the one that is written
 * @param ahead the velocity ahead is wanted
 */
@inline export function keep<T>(k: usize, to: usize, old: v128, change: v128, ahead: bool): void {
  let fresh = add<T>(old, change);
  let taken = change;
  if (sizeof<T>() == 4) {
    const whole = add<T>(v128.load(k, U_LOW), change);
    fresh = add<T>(old, whole);
    taken = sub<T>(fresh, old);
    v128.store(k, sub<T>(whole, taken), U_LOW);
  }
  v128.store(k, fresh, U);
  if (ahead) v128.store(k + to, add<T>(fresh, mul<T>(v128.load(LEAD), taken)), U_AHEAD);
}
