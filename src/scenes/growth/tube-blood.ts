/** Drops that rise in the chests' tubes, and in their sections come towards us, as fast as the computed flow makes them in a tube so wide, slowed for the eye. */
import type { Container } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { GOLDEN } from "../drawing/curve-drawing.ts";
import { part, STEPS } from "../drawing/even-spread.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import { markColour, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type ChestPlace, longIn, risingIn } from "./chest-place.ts";
import { awayOf, dashWidth, type SectionPlace, sectionLayout, speedIn } from "./cross-section.ts";

/** Times slower than life, alike for all bodies. */
const SLOWED = 9;
const RISING = 5;
const COMING = 24;
/** mm of way that is seen into a section, and from where it is seen: what is near looks larger. */
const DEEP = 50;
const EYE = 130;

export interface Tube {
  readonly point: SweepPoint;
  readonly chest: ChestPlace;
  readonly section: SectionPlace;
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
      drops.resize(solved.length * (RISING + COMING));
      let drop = 0;
      for (const { point, chest, section, saturation } of solved) {
        const colour = tintOf(markColour(theme.colour, saturation));
        // mm passed
        const passed = still ? 0 : (time * speedIn(point)) / SLOWED;
        const rising = risingIn(point.request, chest);
        for (let k = 0; k < RISING; k++) {
          const risen = part((k + 0.5) / RISING + passed / longIn(point.request));
          const { x, y, wide, angle } = rising(risen);
          const size = Math.max(2, Math.min(0.22 * wide, 0.4 * section.type));
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
        const { half, vein } = sectionLayout(point, section);
        const wide = Math.min(0.6 * section.type, 0.14 * half);
        const room = { drop: 0.5 * wide + 1, line: 0.5 * (wide + dashWidth(section.type)) + 1.5 };
        for (let k = 0; k < COMING; k++) {
          const come = part((k + 1) * STEPS[0] + passed / DEEP);
          const near = EYE / (EYE + DEEP * (1 - come));
          const away = awayOf((k + 0.5) / COMING, [half, vein], room);
          const turn = 2 * Math.PI * k * GOLDEN;
          drops.set(drop++, {
            x: section.x + away * Math.cos(turn),
            y: section.y + away * Math.sin(turn),
            angle: 0,
            length: wide * near,
            width: wide * near,
            colour,
            shape: "drop",
            alpha: Math.min(1, 5 * Math.min(come, 1 - come)),
          });
        }
      }
    },
    release: () => drops.release(),
  };
}
