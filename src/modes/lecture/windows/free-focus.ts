/** The focus stays with the talk: a button pressed by mouse or touch lets it go, so that the next key steps, blanks or returns. */
import { useEffect } from "preact/hooks";

/** A press by the keyboard has no detail, and keeps the focus where its user put it. */
export function letGo({ detail, target }: Pick<MouseEvent, "detail" | "target">): void {
  const button = target instanceof Element ? target.closest("button") : null;
  if (detail > 0 && button && button === document.activeElement) button.blur();
}

export function useFreeFocus(): void {
  useEffect(() => {
    addEventListener("click", letGo);
    return () => removeEventListener("click", letGo);
  }, []);
}
