/** How much is left of a vessel towards an end that goes on out of the picture. */
import type { Vessel } from "./vessel.ts";

/** Part of its length over which it fades. */
const OVER = 0.32;

/** 0 gone .. 1 whole, at `fraction` of the length. */
export const fadeOf = ({ fades }: Pick<Vessel, "fades">, fraction: number): number =>
  fades ? Math.min(1, Math.max(0, (fades === "end" ? 1 - fraction : fraction) / OVER)) : 1;
