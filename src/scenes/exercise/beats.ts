/** The ventricle's volume over a few seconds, from empty to as full as either of two states becomes: how often it beats, how far it fills and what it throws out. */
import type { Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** s that are drawn, and points on them. */
export const SECONDS = 3;
const POINTS = 90;

interface Moment {
  /** s of blood time at the right end */
  readonly time: number;
  readonly still: boolean;
}

/** mL; null where the model gives none. */
const volumeOf = ({ traces }: Circulation): Float64Array | null => traces.volumes.ventricle ?? null;

/** The greatest volume of all of them. */
export const fullest = (states: readonly Circulation[]): number =>
  Math.max(0, ...states.flatMap((state) => volumeOf(state)?.reduce((a, b) => Math.max(a, b)) ?? []));

/** @param full volume at the box's top */
export function drawBeats(
  ink: Graphics,
  { state, full }: { readonly state: Circulation; readonly full: number },
  { x, y, width, height }: Box,
  { time, still }: Moment,
  { colour }: Theme,
): void {
  const volume = volumeOf(state);
  if (!volume || full <= 0) return;
  const from = still ? 0 : time - SECONDS;
  const foot = y + height;
  const line = Array.from({ length: POINTS + 1 }, (_, i): readonly [number, number] => {
    const at = valueAt(state.traces, volume, from + (SECONDS * i) / POINTS);
    return [x + (width * i) / POINTS, foot - (height * at) / full];
  });
  ink.poly([x, foot, ...line.flat(), x + width, foot], true).fill({
    color: mix(colour.rich, colour.stage, 0.72),
  });
  line.forEach(([px, py], i) => {
    if (i === 0) ink.moveTo(px, py);
    else ink.lineTo(px, py);
  });
  ink.stroke({ color: colour.rich, width: 1.6, join: "round" });
  ink
    .moveTo(x, foot)
    .lineTo(x + width, foot)
    .stroke({ color: colour.hair, width: 1 });
}
