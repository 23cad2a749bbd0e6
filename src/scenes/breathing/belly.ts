/** What of the belly lies in the picture, as quiet as in the whole circulation: it goes down with the dome. */
import { Container } from "pixi.js";
import { servesAt, sheet, strokes } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import { upright } from "../circuit/paint-figure.ts";
import { paintOrgansBefore, paintOrgansBehind } from "../circuit/paint-organs.ts";
import { spots } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** Plane units, y up: under the dome, down to where the picture ends. */
const ROOM = [180, -820, 820, -500] as const;
/** The diaphragm's legs on both sides of the aorta, down to the third and second lumbar vertebra (textbook anatomy, from memory). */
const CRURA = [
  spots("540 560, 516 600, 510 650, 512 700, 516 744"),
  spots("548 560, 558 600, 560 650, 556 690, 552 716"),
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
        paintOrgansBehind(ink, theme);
        const { shade, body, light, edge } = tissue("diaphragm", theme);
        const quiet = (colour: string) => mix(colour, theme.colour.stage, 0.25);
        for (const crus of CRURA)
          strokes(
            ink,
            upright(crus),
            1,
            [
              [17, quiet(edge)],
              [15, quiet(shade)],
              [10, quiet(body)],
              [3, quiet(light)],
            ],
          );
      });
      front.paint(ROOM, density, [0, 0], (ink) => paintOrgansBefore(ink, theme));
    },
    move(fall) {
      for (const view of [behind, before]) view.y = fall;
    },
    release() {
      for (const each of [rear, front]) each.release();
    },
  };
}
