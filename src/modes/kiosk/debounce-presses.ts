/** For hands that tremble: one press counts once. */

/** s between two presses of the same button (EN 301 549, 5.8) */
const DOUBLE_STRIKE = 0.3;

/** Of two presses of one button within 0.3 s the second is not heard. */
export function debouncePresses(): () => void {
  let last: { target: EventTarget | null; at: number } = { target: null, at: 0 };
  const press = (event: MouseEvent) => {
    const target = event.target instanceof Element ? event.target.closest("button") : null;
    if (target && target === last.target && event.timeStamp - last.at < DOUBLE_STRIKE * 1000) {
      event.preventDefault();
      event.stopPropagation();
    }
    if (target) last = { target, at: event.timeStamp };
  };
  addEventListener("click", press, { capture: true });
  return () => removeEventListener("click", press, { capture: true });
}
