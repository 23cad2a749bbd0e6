/** A closed page: no menu, no selection, no zoom, no print, no way out by touch or key. */

const REFUSED = ["contextmenu", "selectstart", "dragstart", "gesturestart", "dragover", "drop", "auxclick"];

/** Keys that leave, reload, search, save, print, zoom or open; the page itself needs none of them. */
const isWayOut = ({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean =>
  /^F\d{1,2}$/.test(key) ||
  ["BrowserBack", "BrowserForward", "BrowserHome", "BrowserSearch", "ContextMenu"].includes(key) ||
  ctrlKey ||
  metaKey ||
  (altKey && key !== "Alt");

/** Until the returned function is called. */
export function closePage(): () => void {
  const refuse = (event: Event) => event.preventDefault();
  const key = (event: KeyboardEvent) => {
    if (isWayOut(event)) event.preventDefault();
  };
  const wheel = (event: WheelEvent) => {
    if (event.ctrlKey) event.preventDefault();
  };
  const pinch = (event: TouchEvent) => {
    if (event.touches.length > 1 && event.cancelable) event.preventDefault();
  };
  for (const name of REFUSED) addEventListener(name, refuse, { capture: true });
  addEventListener("keydown", key, { capture: true });
  addEventListener("wheel", wheel, { passive: false });
  addEventListener("touchmove", pinch, { passive: false });
  document.documentElement.classList.add("closed");
  return () => {
    for (const name of REFUSED) removeEventListener(name, refuse, { capture: true });
    removeEventListener("keydown", key, { capture: true });
    removeEventListener("wheel", wheel);
    removeEventListener("touchmove", pinch);
    document.documentElement.classList.remove("closed");
  };
}
