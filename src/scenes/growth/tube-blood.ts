/** Drops that rise in the chests' tubes, and in their sections come towards us, as fast as the computed flow makes them in a tube so wide, slowed for the eye. */
import type { Container } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import { line, spotAt } from "../../sim/geometry/centreline.ts";
import { pathwayGeometry } from "../../sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import { GOLDEN } from "../drawing/curve-drawing.ts";
import { part, STEPS } from "../drawing/even-spread.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import { markColour, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type ChestPlace, middleOf, trunkOf } from "./chest-place.ts";
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
        const { way, widths, middle } = risingIn(point.request);
        const { perMillimetre } = chest;
        for (let k = 0; k < RISING; k++) {
          const risen = part((k + 0.5) / RISING + passed / lastOf(way.run));
          const { at, along } = spotAt(way, risen);
          const wide = entryAt(widths, Math.round(risen * (widths.length - 1))) * perMillimetre;
          const size = Math.max(2, Math.min(0.22 * wide, 0.4 * section.type));
          const aside = 0.25 * wide * (2 * part((k + 1) * STEPS[0]) - 1);
          drops.set(drop++, {
            x: chest.x + (at[0] - middle[0]) * perMillimetre + aside,
            y: chest.y - (at[1] - middle[1]) * perMillimetre,
            angle: -Math.atan2(along[1], along[0]),
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

const known = new WeakMap<CirculationRequest, ReturnType<typeof risenIn>>();

/** Where its blood rises, once for a body. */
function risingIn(request: CirculationRequest) {
  const made = known.get(request) ?? risenIn(request);
  known.set(request, made);
  return made;
}

function risenIn(request: CirculationRequest) {
  const { chest } = present(pathwayGeometry(request));
  const { line: points, widths } = trunkOf(chest);
  return { way: line(points), widths, middle: middleOf(chest) };
}
