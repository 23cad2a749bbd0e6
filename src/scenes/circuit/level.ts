/** A venous pressure as the height of a column, beside the organ that feels it; the other state's height as a dashed line. */
import type { Graphics } from "pixi.js";
import type { Theme } from "../theme/theme.ts";

/** mmHg at the column's top */
const FULL = 20;

export interface Level {
  /** CSS px: left edge, middle and height of the column with its air */
  readonly x: number;
  readonly middle: number;
  readonly height: number;
  /** mmHg now, and in the state it is compared with */
  readonly value: number;
  readonly before: number | null;
}

export const levelWidth = (type: number): number => type * 2;

/** px above the column's foot, held inside the column. */
export const levelHeight = (value: number, height: number): number =>
  Math.min(1, Math.max(0, value / FULL)) * height;

export function drawLevel(ink: Graphics, level: Level, type: number, theme: Theme): void {
  const { colour } = theme;
  const width = type * 1.15;
  const x = level.x + (levelWidth(type) - width) / 2;
  const foot = level.middle + level.height / 2;
  ink
    .rect(x, foot - level.height, width, level.height)
    .fill({ color: colour.lumen })
    .stroke({ color: colour.hair, width: 1.2 });
  const filled = levelHeight(level.value, level.height);
  ink.rect(x, foot - filled, width, filled).fill({ color: colour.poor });
  ink.rect(x - 2, foot - filled - 1.5, width + 4, 3).fill({ color: colour.ink });
  for (let mark = 5; mark < FULL; mark += 5) {
    const y = foot - levelHeight(mark, level.height);
    ink
      .moveTo(x + width, y)
      .lineTo(x + width - type * 0.22, y)
      .stroke({ color: colour.hair, width: 1.2 });
  }
  if (level.before === null) return;
  const y = foot - levelHeight(level.before, level.height);
  for (let dash = x - type * 0.35; dash < x + width + type * 0.35; dash += type * 0.3)
    ink
      .moveTo(dash, y)
      .lineTo(dash + type * 0.17, y)
      .stroke({ color: colour.accent, width: 2.5 });
}
