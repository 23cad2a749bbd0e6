/** What of the belly lies in the picture, as quiet as in the whole circulation: it goes down with the dome. */
import { Container } from "pixi.js";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { servesAt, sheet } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import { muted, upright } from "../circuit/paint-figure.ts";
import { paintOrgansBefore, paintOrgansBehind, paintStomach } from "../circuit/paint-organs.ts";
import { GROWN } from "../circuit/proportions.ts";
import { spots } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";

/** Plane units, y up: under the dome, down to where the picture ends. */
const ROOM = [180, -820, 820, -500] as const;
/** How much of what lies at the back, the kidneys above all, is lost in the body. */
const FADED = 0.42;
/** The diaphragm's legs on both sides of the aorta, down to the third and second lumbar vertebra (textbook anatomy, from memory). */
const CRURA = [
  spots("530 552, 512 600, 504 650, 504 700, 511 748, 517 716, 518 660, 522 600, 530 552"),
  spots("546 552, 562 596, 566 640, 560 690, 549 722, 546 690, 546 640, 547 596, 546 552"),
];

export interface Belly {
  /** behind the great vessels, and before them but behind the liver */
  readonly behind: Container;
  readonly before: Container;
  /** @param density device pixels a plane unit */
  paint(density: number, theme: Theme): void;
  /** @param fall plane units by which the dome stands lower */
  move(fall: number): void;
  release(): void;
}

export function belly(): Belly {
  const [rear, front] = [sheet(), sheet()];
  const [behind, before] = [new Container(), new Container()];
  for (const [view, { view: painted }] of [
    [behind, rear],
    [before, front],
  ] as const) {
    view.scale.y = -1;
    view.addChild(painted);
  }
  let painted: { readonly theme: Theme; readonly density: number } | null = null;
  return {
    behind,
    before,
    paint(density, theme) {
      if (painted?.theme === theme && servesAt(painted.density, density)) return;
      painted = { theme, density };
      rear.paint(ROOM, density, [0, 0], (ink) => {
        paintOrgansBehind(ink, GROWN, theme);
        const [left, bottom, right, top] = ROOM;
        ink.globalCompositeOperation = "destination-out";
        ink.globalAlpha = FADED;
        ink.fillRect(left, bottom, right - left, top - bottom);
        ink.globalCompositeOperation = "source-over";
        ink.globalAlpha = 1;
        const muscle = muted(tissue("diaphragm", theme), theme.colour.stage, 0.75);
        for (const crus of CRURA) paintOrgan(ink, upright(crus), muscle, { depth: 6, edge: 1.4 });
      });
      front.paint(ROOM, density, [0, 0], (ink) => {
        paintOrgansBefore(ink, theme, []);
        paintStomach(ink, theme);
      });
    },
    move(fall) {
      for (const view of [behind, before]) view.y = fall;
    },
    release() {
      for (const each of [rear, front]) each.release();
    },
  };
}
