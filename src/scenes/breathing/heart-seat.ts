/** The lower part of the pericardium, with which the heart lies on the diaphragm: it hides the aorta behind it. */
import type { Container } from "pixi.js";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Stage } from "../../sim/parameters/request.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { paintPericardium } from "../anatomy/paint-heart.ts";
import { boundsOf, eraseAlong, servesAt, sheet, trace } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import { CHEST_AT, chestFrame } from "../circuit/chest-plan.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { inMillimetres } from "./chest-wall.ts";

/** mm above its lower end: from the first height on it is lost bit by bit behind the heart, from the second on it is gone. */
const SEEN = { whole: 16, gone: 40 } as const;

/** mm */
const FLOOR = 2.6;

/** mm of its way before the sac. */
const VEIN: { readonly line: readonly Point[]; readonly width: number } = {
  line: [
    [0, -100],
    [0, -64],
    [0.4, -48],
  ],
  width: 11.2,
};

const floorOf = (theme: Theme): string => mix(tissue("sac", theme).body, theme.colour.stage, 0.5);

export interface HeartSeat {
  readonly view: Container;
  /** @param density device pixels a plane unit */
  paint(stage: Stage, density: number, theme: Theme): void;
  release(): void;
}

export function heartSeat(): HeartSeat {
  const seat = sheet();
  let painted: { readonly stage: Stage; readonly theme: Theme; readonly density: number } | null = null;
  return {
    view: inMillimetres(seat.view),
    paint(stage, density, theme) {
      if (painted?.theme === theme && painted.stage === stage && servesAt(painted.density, density)) return;
      painted = { stage, theme, density };
      const { pericardium, frame } = anatomyOf(chestFrame(stage));
      const bounds = boundsOf([pericardium], FLOOR + 1);
      const [, bottom] = bounds;
      seat.paint(bounds, density * CHEST_AT.scale, [0, 0], (ink) => {
        // Its floor has grown to the diaphragm's tendon, over which it reaches a little.
        ink.fillStyle = floorOf(theme);
        trace(
          ink,
          pericardium.map(([x, y]): Point => [x, y - FLOOR]),
          true,
        );
        ink.fill();
        paintPericardium(ink, pericardium, frame.scale, theme);
        eraseAlong(ink, [0, bottom + SEEN.whole], [0, bottom + SEEN.gone], bounds);
        ink.globalCompositeOperation = "destination-out";
        // The lower vein comes through it to a right atrium.
        trace(ink, VEIN.line);
        ink.lineWidth = VEIN.width;
        ink.lineCap = "butt";
        ink.strokeStyle = "#000";
        ink.stroke();
      });
    },
    release: () => seat.release(),
  };
}
