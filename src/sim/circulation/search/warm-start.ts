/** What one search leaves for the next: the point found, and how its map changes. */

import { type Point, SEARCHED } from "../network/compartments.ts";
import { MEMORY, type Secant } from "./anderson.ts";

/** A place to begin the next search from. */
export interface WarmStart {
  readonly point: Point;
  readonly secants: readonly Secant[];
}

/** Numbers that one warm start takes. */
export const BLOCK = SEARCHED + MEMORY * 2 * SEARCHED;

/** [BLOCK] numbers in SI: point, then secants. */
export function pack({ point, secants }: WarmStart): number[] {
  const block = [...point];
  for (const { residual, image } of secants) block.push(...residual, ...image);
  while (block.length < BLOCK) block.push(0);
  return block;
}

/** What {@link pack} was given, or the bare point from [SEARCHED] numbers in SI; undefined where their number is neither. */
export function unpack(block: readonly number[]): WarmStart | undefined {
  if (block.length !== BLOCK && block.length !== SEARCHED) return undefined;
  const part = (from: number) => Float64Array.from(block.slice(from, from + SEARCHED));
  const secants: Secant[] = [];
  for (let at = SEARCHED; at < block.length; at += 2 * SEARCHED) {
    const residual = part(at);
    if (residual.some((value) => value !== 0)) secants.push({ residual, image: part(at + SEARCHED) });
  }
  return { point: part(0) as Point, secants };
}
