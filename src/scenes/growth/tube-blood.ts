/** Drops that rise through the tubes' windows as fast as the computed flow makes them in a tube so wide, slowed for the eye. */
import type { Container } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { RICH } from "../circuit/circuit-blood.ts";
import { GOLDEN } from "../drawing/curve-drawing.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import { markColour } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { speedIn, type TubePlace, tubeLayout } from "./tube-segment.ts";

/** Times slower than life, alike for all bodies. */
const SLOWED = 9;
const DROPS = 7;
export interface TubeBlood {
  readonly view: Container;
  /** @param time s of the running clock; `still`: darts in place of moving drops */
  draw(
    tubes: readonly (readonly [SweepPoint, TubePlace])[],
    time: number,
    still: boolean,
    theme: Theme,
  ): void;
  release(): void;
}

export function tubeBlood(): TubeBlood {
  const drops = streaks();
  return {
    view: drops.view,
    draw(tubes, time, still, theme) {
      const solved = tubes.flatMap(([point, place]) =>
        point.circulation ? [{ point, place, saturation: point.circulation.saturations.ivc }] : [],
      );
      drops.resize(solved.length * DROPS);
      solved.forEach(({ point, place, saturation }, tube) => {
        const { window } = tubeLayout(point, place);
        const width = Math.max(3, place.type * 0.34);
        const [low, high] = [window.bottom, window.top + width];
        const speed = (speedIn(point) * place.perMillimetre) / SLOWED;
        for (let k = 0; k < DROPS; k++) {
          const across = 2 * (((k + 1) * GOLDEN) % 1) - 1;
          const way = low - high;
          const risen = (((k + 0.5) / DROPS) * way + (still ? 0 : time * speed)) % way;
          const near = Math.min(risen, way - risen) / (1.5 * width);
          drops.set(tube * DROPS + k, {
            x: place.x + 0.8 * window.half * across,
            y: low - risen + 0.25 * window.half,
            angle: -Math.PI / 2,
            length: still ? 2.2 * width : width * (1 + Math.min(1.6, speed / 60)),
            width: still ? 1.6 * width : width,
            colour: Number.parseInt(markColour(theme.colour, saturation).slice(1), 16),
            shape: shapeOf(saturation >= RICH, still),
            alpha: still && k % 2 === 1 ? 0 : Math.min(1, near),
          });
        }
      });
    },
    release: () => drops.release(),
  };
}
