/** Names, values and the keys of the slider pattern for the panel library's controls, which come without them. */
import { digitsOfStep, speakQuantity } from "../../i18n/index.ts";

interface Range {
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly unit: string;
}

interface Value {
  readonly read: () => number;
  readonly write: (value: number) => void;
}

/** Returns a function to call after each change of the value. */
export function nameControl(
  element: HTMLElement,
  label: string,
  range: Range | undefined,
  value: Value,
): () => void {
  for (const field of element.querySelectorAll("input, select")) field.setAttribute("aria-label", label);
  const track = element.querySelector<HTMLElement>(".tp-sldv_t");
  if (!track || !range) return () => {};
  const { min, max, step, unit } = range;
  track.setAttribute("role", "slider");
  track.tabIndex = 0;
  track.setAttribute("aria-label", label);
  track.setAttribute("aria-valuemin", String(min));
  track.setAttribute("aria-valuemax", String(max));
  const jumps: Readonly<Record<string, () => number>> = {
    PageUp: () => value.read() + 10 * step,
    PageDown: () => value.read() - 10 * step,
    Home: () => min,
    End: () => max,
  };
  track.addEventListener("keydown", (event) => {
    const jump = jumps[event.key];
    if (!jump) return;
    event.preventDefault();
    value.write(Math.min(max, Math.max(min, jump())));
  });
  return () => {
    track.setAttribute("aria-valuenow", String(value.read()));
    track.setAttribute("aria-valuetext", speakQuantity(value.read(), unit, digitsOfStep(step)));
  };
}
