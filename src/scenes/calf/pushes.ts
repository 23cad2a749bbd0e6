/** Arrows from the muscles on both sides onto the deep vein, as long as their pressure flattens it. */
import type { Graphics } from "pixi.js";
import type { Theme } from "../theme/theme.ts";
import { halfWidth, placeInLeg } from "./vein.ts";

/** Plane units: where along the vein, how long at most, half the shaft and the head, and how far their tips stay off its wall. In front they begin beyond artery and second vein. */
const AT = [390, 470, 550] as const;
const LONG = { behind: 44, front: 58 } as const;
const SHAFT = 3;
const HEAD = { half: 8, long: 11 } as const;
const OFF = 3;
/** Under this part of the whole there is none. */
const FAINTEST = 0.08;

/** @param pressed 0..1 */
export function drawPushes(ink: Graphics, pressed: number, { colour }: Theme): void {
  if (pressed < FAINTEST) return;
  for (const at of AT)
    for (const [side, long] of [
      [-1, LONG.behind],
      [1, LONG.front],
    ] as const) {
      const wall = halfWidth(at, pressed) + OFF;
      const tail = wall + HEAD.long + long * pressed;
      const neck = wall + HEAD.long;
      const spot = (across: number, up: number) => placeInLeg(at + up, side * across).spot;
      ink
        .poly(
          [
            spot(wall, 0),
            spot(neck, HEAD.half),
            spot(neck, SHAFT),
            spot(tail, SHAFT),
            spot(tail, -SHAFT),
            spot(neck, -SHAFT),
            spot(neck, -HEAD.half),
          ].flat(),
        )
        .fill({ color: colour.ink })
        .stroke({ color: colour.stage, width: 2, join: "round" });
    }
}
