/** How curves of several states are distinguished: by colour and by dash pattern. */
import type { Palette } from "./colour.ts";

export interface CurveLook {
  readonly colour: string;
  /** lengths on, off, ... in units of the type size; a whole line without it */
  readonly dash?: readonly number[];
}

/** Look of the curve of pane "0", "1" or "2"; the "reference" is dotted in soft ink. */
export function lookOf(name: string, palette: Palette): CurveLook {
  if (name === "reference") return { colour: palette.inkSoft, dash: [0.12, 0.42] };
  if (name === "1") return { colour: palette.origin[1], dash: [0.7, 0.4] };
  if (name === "2") return { colour: palette.ink, dash: [1.1, 0.35, 0.15, 0.35] };
  return { colour: palette.pressure };
}
