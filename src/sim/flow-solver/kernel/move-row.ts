// One row of u or v in the later steps of sound: the push that the first has worked out, and the pressure. Addresses are those of u; v lies
// one STRIDE further.
import { P_AHEAD, STRIDE, U, U_FRICTION, U_INVERSE, U_PUSH, U_STEP, WEST } from "./addresses";
import { keep } from "./kept-velocity";
import { alikeRun, HELD, ONE, OPEN, PUSHED, STEP, WALL } from "./step-constants";
import { add, mul, sub } from "./vectors";

/** Runs as in across-row.ts; faces lie between cells `back` bytes apart; `shift`: from the arrays of u to those wanted; `ahead`: the last of them. */
export function moveRow<T>(start: usize, runs: usize, count: i32, swapped: i32, back: usize, shift: usize, ahead: bool): void {
  const cell: usize = sizeof<T>();
  const to: usize = swapped ? 0 : 2 * STRIDE;
  for (let run: i32 = 0; run < count; run++) {
    const last = load<i32>(runs + (<usize>run << 3), 4);
    let k: usize = start + <usize>load<i32>(runs + (<usize>run << 3)) * cell + shift;
    const end: usize = start + <usize>(last < 0 ? -last : last) * cell + shift;
    let c: usize = k - shift;
    if (last > 0) {
      const step = v128.load(STEP);
      const wall = v128.load(WALL);
      const one = v128.load(ONE);
      for (; k < end; k += 16) {
        const old = v128.load(k, U);
        const loss = v128.load(k, U_STEP);
        let held = mul<T>(wall, v128.load(k, U_FRICTION));
        if (v128.any_true(loss)) held = add<T>(held, mul<T>(step, v128.pmax<T>(mul<T>(loss, old), v128.splat<T>(0 as T))));
        const slope = sub<T>(v128.load(c, P_AHEAD), v128.load(c - back, P_AHEAD));
        const push = sub<T>(v128.load(k, U_PUSH), mul<T>(v128.load(k, WEST), slope));
        const change = v128.div<T>(
          sub<T>(mul<T>(mul<T>(step, v128.load(k, U_INVERSE)), push), mul<T>(held, old)),
          add<T>(one, held),
        );
        keep<T>(k, to, old, change, ahead);
        c += 16;
      }
    } else {
      alikeRun<T>(load<T>(k, WEST), load<T>(k, U_FRICTION), load<T>(k, U_INVERSE));
      const open = v128.load(OPEN);
      const pushed = v128.load(PUSHED);
      const held = v128.load(HELD);
      for (; k < end; k += 16) {
        const old = v128.load(k, U);
        const slope = sub<T>(v128.load(c, P_AHEAD), v128.load(c - back, P_AHEAD));
        const push = sub<T>(v128.load(k, U_PUSH), mul<T>(open, slope));
        keep<T>(k, to, old, sub<T>(mul<T>(pushed, push), mul<T>(held, old)), ahead);
        c += 16;
      }
    }
  }
}
