/** A row of growing bodies, each with its tube or chamber and its own lower vein in section, all to one scale. */
import { Container, Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { lastOf } from "../../sim/checked/present.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { lettering } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { drawFigure } from "./figure-drawing.ts";
import { drawHeartAndTube } from "./heart-drawing.ts";
import { bodyScale, FIGURE, shownOf } from "./row.ts";
import { tubeBlood } from "./tube-blood.ts";
import { drawTubeSegment, type TubePlace } from "./tube-segment.ts";

export interface Bodies {
  readonly view: Container;
  draw(points: readonly SweepPoint[], moment: Moment, box: Box, type: number, theme: Theme): void;
  release(): void;
}

interface Moment {
  /** body surface of the state on the stage, m2 */
  readonly now: number;
  /** s of the running clock */
  readonly time: number;
  /** nothing moves */
  readonly still: boolean;
}

export function bodies(): Bodies {
  const view = new Container();
  const ink = new Graphics();
  const words = lettering();
  const blood = tubeBlood();
  view.addChild(ink, blood.view, words.view);
  let drawn = "";
  let tubes: readonly (readonly [SweepPoint, TubePlace])[] = [];
  return {
    view,
    draw(points, { now, time, still }, box, type, theme) {
      const signature = JSON.stringify([
        points.map(({ request, circulation }) => [
          request,
          circulation && Math.round(circulation.saturations.ivc),
        ]),
        now,
        box,
        type,
        theme.name,
        theme.say("further.axis.bsa"),
      ]);
      if (signature === drawn) {
        blood.draw(tubes, time, still, theme);
        return;
      }
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
      const placed: (readonly [SweepPoint, TubePlace])[] = [];
      shown.forEach((point, i) => {
        const size = figure * bodyScale(point.at, largest);
        const x = box.x + step * (i + 0.5);
        const ground = box.y + tallest;
        const here = Math.abs(point.at - now) < 0.06;
        const body = { x, ground, height: size };
        drawFigure(ink, point.request.body.ageYears, body, here, theme);
        if (hasPathway(point.request.stage)) {
          drawHeartAndTube(ink, point.request, body, figure, theme);
          const place = {
            x,
            top: box.y + tallest + type * 0.5,
            height: rings,
            perMillimetre: rings / widest / 1.12,
            type,
          };
          drawTubeSegment(ink, point, place, theme);
          placed.push([point, place]);
        }
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
      tubes = placed;
      blood.draw(tubes, time, still, theme);
    },
    release: () => blood.release(),
  };
}
