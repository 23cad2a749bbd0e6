/** How much is left of a vessel towards an end: where it goes on out of the picture, and where it branches into a bed. */
import type { Vessel } from "./vessel.ts";

/** Part of its length over which it fades. */
const OVER = 0.32;

/** 0 gone .. 1 whole, at `fraction` of the length. */
export const fadeOf = ({ fades }: Pick<Vessel, "fades">, fraction: number): number =>
  fades ? Math.min(1, Math.max(0, (fades === "end" ? 1 - fraction : fraction) / OVER)) : 1;

/** Part of the width at `fraction` of the length. */
export const taperOf = (
  { tapers, narrows = 0.5 }: Pick<Vessel, "tapers" | "narrows">,
  fraction: number,
): number => (tapers ? 1 - narrows * (tapers === "end" ? fraction : 1 - fraction) ** 1.4 : 1);
