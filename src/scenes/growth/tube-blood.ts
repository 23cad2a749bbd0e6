/** Drops that rise in the chests' tubes, as fast as the computed flow makes them in a tube so wide, slowed for the eye. */
import type { Container } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { part, STEPS } from "../drawing/even-spread.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import { markColour, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type ChestPlace, longIn, risingIn } from "./chest-place.ts";
import { speedIn } from "./cross-section.ts";

/** Times slower than life, alike for all bodies. */
const SLOWED = 9;
const RISING = 5;
/** CSS px */
const MAX_DROP = 7;

interface Tube {
  readonly point: SweepPoint;
  readonly chest: ChestPlace;
}

export interface TubeBlood {
  readonly view: Container;
  /** @param time s of the running clock; `still`: darts in place of moving drops */
  draw(tubes: readonly Tube[], time: number, still: boolean, theme: Theme): void;
  release(): void;
}

export function tubeBlood(): TubeBlood {
  const drops = streaks();
  return {
    view: drops.view,
    draw(tubes, time, still, theme) {
      const solved = tubes.flatMap((tube) =>
        tube.point.circulation ? [{ ...tube, saturation: tube.point.circulation.saturations.ivc }] : [],
      );
      drops.resize(solved.length * RISING);
      let drop = 0;
      for (const { point, chest, saturation } of solved) {
        const colour = tintOf(markColour(theme.colour, saturation));
        // mm passed
        const passed = still ? 0 : (time * speedIn(point)) / SLOWED;
        const rising = risingIn(point.request, chest);
        for (let k = 0; k < RISING; k++) {
          const risen = part((k + 0.5) / RISING + passed / longIn(point.request));
          const { x, y, wide, angle } = rising(risen);
          const size = Math.max(2, Math.min(0.22 * wide, MAX_DROP));
          drops.set(drop++, {
            x: x + 0.25 * wide * (2 * part((k + 1) * STEPS[0]) - 1),
            y,
            angle,
            length: (still ? 2.4 : 1.6) * size,
            width: (still ? 1.7 : 1) * size,
            colour,
            shape: shapeOf(false, still),
            alpha: Math.min(1, 8 * Math.min(risen, 1 - risen)),
          });
        }
      }
    },
    release: () => drops.release(),
  };
}
