/** Keys of a mode: one table that acts, and that the printable list is made from. */

export interface Key {
  /** `KeyboardEvent.key` values that do it, the first one shown in the list. */
  readonly keys: readonly string[];
  /** Message key of what it does. */
  readonly does: string;
  /** Gets the key that was pressed. */
  readonly run: (key: string) => void;
  readonly control?: boolean;
  readonly shift?: boolean;
  /** Acts even where a slider or a list would take the key: a presentation remote ignores the focus. */
  readonly always?: boolean;
}

/** Letters and signs can be switched off (they collide with speech input); named keys such as Escape can not. */
const isSingleSign = (key: string): boolean => key.length === 1 && key !== " ";

/** s: a held key repeats no faster than this */
const FASTEST_CYCLE = 0.25;

/** Listens until the returned function is called. `lettersOn` is asked at each press. */
export function listenForKeys(table: () => readonly Key[], lettersOn: () => boolean): () => void {
  let lastRepeat = 0;
  // Keys that always act are heard before whatever has the focus, all others after it.
  const press = (event: KeyboardEvent, early: boolean) => {
    if (event.defaultPrevented || event.altKey || event.isComposing || takesText(event)) return;
    const control = event.ctrlKey || event.metaKey;
    const found = table().find(
      (key) =>
        key.keys.some((name) => matches(name, event.key)) &&
        (key.control ?? false) === control &&
        (key.shift === undefined || key.shift === event.shiftKey),
    );
    if (!found || (found.always ?? false) !== early) return;
    if (isSingleSign(event.key) && !control && !lettersOn()) return;
    if (!early && ownsKey(event)) return;
    event.preventDefault();
    if (early) event.stopPropagation();
    if (event.repeat && event.timeStamp - lastRepeat < FASTEST_CYCLE * 1000) return;
    lastRepeat = event.timeStamp;
    found.run(event.key);
  };
  const before = (event: KeyboardEvent) => press(event, true);
  const after = (event: KeyboardEvent) => press(event, false);
  addEventListener("keydown", before, { capture: true });
  addEventListener("keydown", after);
  return () => {
    removeEventListener("keydown", before, { capture: true });
    removeEventListener("keydown", after);
  };
}

const matches = (name: string, key: string): boolean =>
  name === key || (name.length === 1 && name.toLowerCase() === key.toLowerCase());

/** Keys typed into a text field are its own; not function keys, nor in a single line PageUp and PageDown. */
function takesText({ target, key }: KeyboardEvent): boolean {
  if (!(target instanceof HTMLElement) || /^F\d/.test(key)) return false;
  if (target.isContentEditable || target instanceof HTMLTextAreaElement) return true;
  const line =
    target instanceof HTMLInputElement && ["text", "number", "search", "url"].includes(target.type);
  return line && !key.startsWith("Page");
}

const MOVES = ["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown", "PageUp", "PageDown", "Home", "End"];

/** A focused button keeps Space and Enter; a slider, a radio, a list and a toolbar keep the keys that move them. */
function ownsKey({ target, key }: KeyboardEvent): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (key === " " || key === "Enter")
    return target.closest("button, a, summary, input, select, label") !== null;
  if (!MOVES.includes(key)) return false;
  if (target.closest("[role=slider], input, select")) return true;
  return !key.startsWith("Page") && target.closest("[role=toolbar]") !== null;
}
