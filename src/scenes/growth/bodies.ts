/** A row of growing bodies, each with its tube and its own lower vein in section, all to one scale. */
import { Container, Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { BODY } from "../circuit/outlines.ts";
import { curve } from "../drawing/curve-drawing.ts";
import { lettering } from "../drawing/lettering.ts";
import { dashes } from "../drawing/plot.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
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
        points.map(({ request }) => request),
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
      const rings = Math.max(1, Math.min(step * 0.86, (box.height - foot) * 0.34));
      const tallest = Math.max(10, box.height - foot - rings - type);
      const figure = Math.min(tallest / (FIGURE.bottom - FIGURE.top), (step * 0.92) / FIGURE.width);
      const widest = Math.max(
        ...points.map(({ request }) => Math.max(pathwaySizes(request).trunk, pathwaySizes(request).ivc)),
      );
      shown.forEach((point, i) => {
        const size = figure * bodyScale(point.at, largest);
        const x = box.x + step * (i + 0.5);
        const ground = box.y + tallest;
        const here = Math.abs(point.at - now) < 0.06;
        for (const outline of BODY) {
          const line = curve(outline.points);
          const px = (k: number) => x + (entryAt(line.x, k) - 500) * size;
          const py = (k: number) => ground + (entryAt(line.y, k) - FIGURE.bottom) * size;
          const shownUntil = line.y.findIndex((y) => y > FIGURE.bottom);
          const last = shownUntil < 0 ? line.y.length : shownUntil;
          let open = false;
          for (let k = 0; k < last; k++) {
            if (entryAt(line.y, k) > FIGURE.bottom) continue;
            if (open) ink.lineTo(px(k), py(k));
            else ink.moveTo(px(k), py(k));
            open = true;
          }
          if (open)
            ink.stroke({ color: here ? colour.accent : colour.hair, width: here ? 3 : 1.8, cap: "round" });
        }
        const perMillimetre = rings / widest / 1.04;
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

/** The tube and the body's own lower vein in section, to one scale. */
function drawRings(
  ink: Graphics,
  { request }: SweepPoint,
  { x, y, perMillimetre, type }: RingPlace,
  { colour }: Theme,
): void {
  const { trunk, ivc } = pathwaySizes(request);
  ink
    .circle(x, y, (trunk / 2) * perMillimetre)
    .fill({ color: colour.lumen })
    .stroke({ color: colour.wallEdge, width: Math.max(3, type * 0.2) });
  const around: [number, number][] = Array.from({ length: 61 }, (_, k) => [
    x + (ivc / 2) * perMillimetre * Math.cos((k * Math.PI) / 30),
    y + (ivc / 2) * perMillimetre * Math.sin((k * Math.PI) / 30),
  ]);
  for (const piece of dashes(around, [type * 0.4, type * 0.3])) {
    ink.moveTo(...entryAt(piece, 0));
    for (const [px, py] of piece.slice(1)) ink.lineTo(px, py);
    ink.stroke({ color: colour.poor, width: Math.max(2.5, type * 0.16) });
  }
}
