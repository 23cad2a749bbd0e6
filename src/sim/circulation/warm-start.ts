/** What one search leaves for the next: the point found, the flows its pathway's law was taken at, and how its map changes. */
import { BRANCHES } from "../hydraulics/law.ts";
import type { FlowSplit } from "../hydraulics/loss-law/features.ts";
import { MEMORY, type Secant } from "./anderson.ts";
import { type Point, SEARCHED } from "./compartments.ts";

/** A place to begin the next search from. */
export interface WarmStart {
  readonly point: Point;
  /** m3/s; left out when the law was taken at no flow */
  readonly flows?: FlowSplit;
  readonly secants: readonly Secant[];
}

/** Numbers that one warm start takes. */
export const BLOCK = SEARCHED + BRANCHES.length + MEMORY * 2 * SEARCHED;

/** [BLOCK] numbers in SI: point, flows, then secants. */
export function pack({ point, flows, secants }: WarmStart): number[] {
  const block = [...point, ...BRANCHES.map((name) => flows?.[name] ?? 0)];
  for (const { residual, image } of secants) block.push(...residual, ...image);
  while (block.length < BLOCK) block.push(0);
  return block;
}

/** What {@link pack} was given; undefined where the number of numbers is not BLOCK. */
export function unpack(block: readonly number[]): WarmStart | undefined {
  if (block.length !== BLOCK) return undefined;
  const part = (from: number) => Float64Array.from(block.slice(from, from + SEARCHED));
  const kept = block.slice(SEARCHED, SEARCHED + BRANCHES.length);
  const flows = Object.fromEntries(BRANCHES.map((name, i) => [name, kept[i] ?? 0])) as unknown as FlowSplit;
  const secants: Secant[] = [];
  for (let at = SEARCHED + BRANCHES.length; at < BLOCK; at += 2 * SEARCHED) {
    const residual = part(at);
    if (residual.some((value) => value !== 0)) secants.push({ residual, image: part(at + SEARCHED) });
  }
  return { point: part(0) as Point, secants, ...(kept.some((flow) => flow !== 0) ? { flows } : {}) };
}
