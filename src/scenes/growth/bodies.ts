/** A row of growing bodies, each with its tube and its own lower vein in section, all to one scale. */
import { Container, Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { drawFigure, standing } from "../drawing/figure.ts";
import { lettering } from "../drawing/lettering.ts";
import { dashes } from "../drawing/plot.ts";
import type { Box } from "../scene.ts";
import { bloodColour, groundColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { drawHeartAndTube } from "./heart-drawing.ts";
import { bodyScale, FIGURE, shownOf } from "./row.ts";

export interface Bodies {
  readonly view: Container;
  /** `now`: body surface of the state on the stage, m2 */
  draw(points: readonly SweepPoint[], now: number, box: Box, type: number, theme: Theme): void;
}

export function bodies(): Bodies {
  const view = new Container();
  const ink = new Graphics();
  const words = lettering();
  view.addChild(ink, words.view);
  let drawn = "";
  return {
    view,
    draw(points, now, box, type, theme) {
      const signature = JSON.stringify([
        points.map(({ request, circulation }) => [
          request,
          Math.round(circulation?.saturations.ivc ?? VENOUS),
        ]),
        now,
        box,
        type,
        theme.name,
        theme.say("further.axis.bsa"),
      ]);
      if (signature === drawn) return;
      drawn = signature;
      ink.clear();
      words.begin();
      const { colour } = theme;
      const shown = shownOf(points, box.width, type);
      const step = box.width / shown.length;
      const largest = lastOf(points).at;
      const foot = type * 1.6;
      const rings = Math.max(1, Math.min(step * 0.86, (box.height - foot) * 0.29));
      const tallest = Math.max(10, box.height - foot - rings - type);
      const figure = Math.min(tallest - 6, (step * 0.92) / FIGURE);
      const widest = Math.max(
        ...points.map(({ request }) => Math.max(pathwaySizes(request).trunk, pathwaySizes(request).ivc)),
      );
      shown.forEach((point, i) => {
        const size = figure * bodyScale(point.at, largest);
        const x = box.x + step * (i + 0.5);
        const ground = box.y + tallest;
        const here = Math.abs(point.at - now) < 0.06;
        const body = { x, ground, height: size };
        const person = standing(point.request.body.ageYears);
        drawFigure(ink, person, body, here ? colour.accent : colour.hair, 2);
        drawFigure(ink, person, body, mix(colour.stage, colour.hair, 0.16));
        if (hasPathway(point.request.stage)) drawHeartAndTube(ink, point.request, body, figure, theme);
        const perMillimetre = rings / widest / 1.08;
        const y = box.y + tallest + type * 0.5 + rings / 2;
        if (hasPathway(point.request.stage)) drawRings(ink, point, { x, y, perMillimetre, type }, theme);
        words.write(
          {
            lines: [
              {
                words: theme.say("further.growth.age", { age: point.request.body.ageYears }),
                size: type,
                colour: here ? colour.ink : colour.inkSoft,
                bold: here,
              },
            ],
            x,
            y: box.y + box.height,
            anchor: [0.5, 1],
            bare: true,
          },
          theme,
        );
      });
      words.end();
    },
  };
}

/** Centre, CSS px per mm, and size of type (CSS px). */
interface RingPlace {
  readonly x: number;
  readonly y: number;
  readonly perMillimetre: number;
  readonly type: number;
}

/** The tube with its blood, and the body's own lower vein, in section and to one scale. */
function drawRings(
  ink: Graphics,
  { request, circulation }: SweepPoint,
  { x, y, perMillimetre, type }: RingPlace,
  { colour, name }: Theme,
): void {
  const { trunk, ivc } = pathwaySizes(request);
  const radius = (trunk / 2) * perMillimetre;
  const saturation = circulation?.saturations.ivc ?? VENOUS;
  const ground = groundColour(colour, saturation);
  ink.circle(x, y, radius).fill({ color: name === "dark" ? mix(ground, "#000000", 0.25) : ground });
  // Round: lighter towards the middle.
  for (let part = 0.94; part > 0.2; part -= 0.06)
    ink.circle(x, y, radius * part).fill({ color: bloodColour(colour, saturation), alpha: 0.03 });
  // The tube's wall lies outside its lumen, so that a vein as wide as that lies within it.
  const wall = Math.max(3, type * 0.2);
  ink.circle(x, y, radius + wall / 2).stroke({ color: colour.wallEdge, width: wall });
  const width = Math.max(2.5, type * 0.16);
  const reach = (ivc / 2) * perMillimetre - width / 2;
  const around: [number, number][] = Array.from({ length: 61 }, (_, k) => [
    x + reach * Math.cos((k * Math.PI) / 30),
    y + reach * Math.sin((k * Math.PI) / 30),
  ]);
  const pieces = dashes(around, [type * 0.4, type * 0.3]);
  for (const [more, color] of [
    [3, colour.stage],
    [0, colour.poor],
  ] as const)
    for (const piece of pieces) {
      ink.moveTo(...entryAt(piece, 0));
      for (const [px, py] of piece.slice(1)) ink.lineTo(px, py);
      ink.stroke({ color, width: width + more });
    }
}

/** Percent, until the state is solved. */
const VENOUS = 65;
