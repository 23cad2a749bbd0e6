/** What happens at a kiosk while nobody looks after it: touches, time passing, errors. */

/** ms */
const TICK = 250;

export interface VisitorWatch {
  readonly onTouch: () => void;
  readonly onTick: () => void;
  readonly onError: (reason: string) => void;
}

/** Until the returned function is called. */
export function watchVisitor({ onTouch, onTick, onError }: VisitorWatch): () => void {
  const error = (event: ErrorEvent | PromiseRejectionEvent) =>
    onError(String("reason" in event ? event.reason : event.message));
  const tick = setInterval(onTick, TICK);
  addEventListener("pointerdown", onTouch, { capture: true });
  addEventListener("keydown", onTouch, { capture: true });
  addEventListener("error", error);
  addEventListener("unhandledrejection", error);
  return () => {
    clearInterval(tick);
    removeEventListener("pointerdown", onTouch, { capture: true });
    removeEventListener("keydown", onTouch, { capture: true });
    removeEventListener("error", error);
    removeEventListener("unhandledrejection", error);
  };
}
