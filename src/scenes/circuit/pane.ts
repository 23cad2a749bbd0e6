/** One state of the circulation as a schematic with its numbers. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { PATHWAY_STAGES } from "../../sim/request.ts";
import { lettering } from "../drawing/lettering.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { vesselsOf } from "./anatomy.ts";
import { drawBody, drawVessel } from "./body-drawing.ts";
import { type Laid, layVessels } from "./dots.ts";
import { flowing } from "./flowing.ts";
import { drawHeart } from "./heart.ts";
import { drawPlates, type PaneContents, type Standing } from "./plates-drawing.ts";

export interface Pane {
  readonly view: Container;
  draw(contents: PaneContents, box: Box, floor: number, theme: Theme): void;
  /** the place whose plate lies under a point of the canvas */
  pick(x: number, y: number): string | null;
  release(): void;
}

/** A hole between pathway and atrium is drawn where there is one and blood passes it. */
export const fenestrated = ({ request, flows }: Circulation): boolean =>
  (PATHWAY_STAGES as readonly string[]).includes(request.stage) && Math.abs(flows.fenestration) > 1e-6;

export function pane(): Pane {
  const view = new Container();
  const plane = new Container();
  const leaders = new Graphics();
  const words = lettering();
  const blood = flowing();
  const [back, heart, front] = [new Graphics(), new Graphics(), new Graphics()];
  plane.addChild(back, blood.behind, heart, front, blood.front);
  view.addChild(plane, leaders, words.view);

  let drawn = "";
  let known: Circulation | null = null;
  let laid: readonly Laid[] = [];
  let shape = "";
  let standing: readonly Standing[] = [];

  const drawStill = (contents: PaneContents, box: Box, floor: number, theme: Theme): void => {
    const { circulation } = contents;
    const wanted = `${circulation.request.stage} ${fenestrated(circulation)}`;
    if (shape !== wanted) {
      shape = wanted;
      laid = layVessels(vesselsOf(circulation.request.stage, fenestrated(circulation)));
    }
    blood.follow(laid, circulation);
    back.clear();
    front.clear();
    drawBody(back, theme);
    for (const each of laid) drawVessel(each.vessel.behind ? back : front, each, circulation, theme);
    const plates = drawPlates(words, leaders, contents, box, floor, theme);
    standing = plates.standing;
    plane.scale.set(plates.fit.scale);
    plane.position.set(plates.fit.x, plates.fit.y);
  };

  return {
    view,
    draw(contents, box, floor, theme) {
      const { circulation, against, compared, labels, focus } = contents;
      const language = theme.say("further.place.svc");
      const signature = JSON.stringify([
        box,
        floor,
        theme.name,
        language,
        labels,
        focus,
        compared,
        against?.pressures,
      ]);
      if (known !== circulation || signature !== drawn) {
        known = circulation;
        drawn = signature;
        drawStill(contents, box, floor, theme);
      }
      drawHeart(heart, circulation, contents.time, theme);
      blood.move(contents.time, contents.still, theme);
    },
    pick: (x, y) =>
      standing.find(
        (each) => x >= each.x && x <= each.x + each.width && y >= each.y && y <= each.y + each.height,
      )?.name ?? null,
    release: () => blood.release(),
  };
}
