/** A closed page: no menu, no selection, no zoom, no print, no way out by touch or key. */

const REFUSED = ["contextmenu", "selectstart", "dragstart", "gesturestart", "dragover", "drop", "auxclick"];
const BUTTONS = ["mousedown", "mouseup"] as const;

/** Of the organiser's page: there text is typed, marked and copied. */
const isField = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement && /^(text|password)$/.test(target.type);

/** Keys that leave, reload, search, save, print, zoom or open; the page itself needs none of them. */
function isWayOut(event: KeyboardEvent): boolean {
  const { key, ctrlKey, metaKey, altKey } = event;
  if (/^F\d{1,2}$/.test(key) || /^(Browser\w+|ContextMenu)$/.test(key)) return true;
  // A sign such as @ that a layout has on a third level; no browser has a shortcut there.
  if (event.getModifierState("AltGraph") || (altKey && !ctrlKey && /^[^\w\s]$/.test(key))) return false;
  if (isField(event.target) && (ctrlKey || metaKey) && /^[acvxz]$/i.test(key)) return false;
  return ctrlKey || metaKey || (altKey && key !== "Alt");
}

/** Until the returned function is called. */
export function closePage(): () => void {
  const refuse = (event: Event) => {
    if (event.type !== "selectstart" || !isField(event.target)) event.preventDefault();
  };
  // The wheel's press scrolls by itself, the side buttons go back and forward.
  const button = (event: MouseEvent) => {
    if (event.button > 0) event.preventDefault();
  };
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
  for (const name of BUTTONS) addEventListener(name, button, { capture: true });
  addEventListener("keydown", key, { capture: true });
  addEventListener("wheel", wheel, { passive: false });
  addEventListener("touchmove", pinch, { passive: false });
  document.documentElement.classList.add("closed");
  return () => {
    for (const name of REFUSED) removeEventListener(name, refuse, { capture: true });
    for (const name of BUTTONS) removeEventListener(name, button, { capture: true });
    removeEventListener("keydown", key, { capture: true });
    removeEventListener("wheel", wheel);
    removeEventListener("touchmove", pinch);
    document.documentElement.classList.remove("closed");
  };
}
