/** One state of the circulation as a schematic with its numbers. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import { lettering } from "../drawing/lettering.ts";
import type { Fit } from "../drawing/split.ts";
import type { Box, Viewport } from "../scene.ts";
import { ease } from "../theme/motion.ts";
import type { Theme } from "../theme/theme.ts";
import { sizesIn } from "../theme/type.ts";
import { vesselsOf } from "./anatomy.ts";
import { CHEST, LOOK } from "./arrange.ts";
import { bodyPlane } from "./body-plane.ts";
import { type Laid, layVessels } from "./dots.ts";
import { partsOf } from "./parts.ts";
import { drawPlates, type PaneContents, type Standing } from "./plates-drawing.ts";
import { carried, proportionsOf } from "./proportions.ts";
import type { Vessel } from "./vessel.ts";

/** What a pane needs to know of the canvas that it is drawn on. */
export type Canvas = Pick<Viewport, "floor" | "elapsed" | "dense">;

export interface Pane {
  readonly view: Container;
  /** Says how the body lies in the box. */
  draw(contents: PaneContents, box: Box, on: Canvas, theme: Theme): Fit;
  /** the place whose plate lies under a point of the canvas */
  pick(x: number, y: number): string | null;
  release(): void;
}

/** A hole between pathway and atrium is drawn where there is one and blood passes it. */
export const fenestrated = ({ request, flows }: Circulation): boolean =>
  hasPathway(request.stage) && Math.abs(flows.fenestration) > 1e-6;

/** Whether any of a vessel is in sight of the enlarged part. */
const inLook = ({ points, between = [points, points] }: Vessel): boolean =>
  between.some((line) =>
    line.some(([x, y]) => x > LOOK.left && x < LOOK.right && y > LOOK.top && y < LOOK.bottom),
  );

/** How far all else draws back from what is pointed at. */
export const DIM = 0.45;

/** What the still part is drawn anew for, beside another circulation. */
const signatureOf = (contents: PaneContents, box: Box, { floor, dense }: Canvas, theme: Theme): string => {
  const { against, compared, labels, focus, extent, fit, key, apart } = contents;
  const language = theme.say("further.place.svc");
  return JSON.stringify([
    box,
    floor,
    dense,
    theme.name,
    language,
    labels,
    focus,
    compared,
    extent,
    fit,
    key,
    apart,
    against?.pressures,
  ]);
};

export function pane(): Pane {
  const view = new Container();
  const leaders = new Graphics();
  const words = lettering();
  const plane = bodyPlane();
  view.addChild(plane.view, leaders, words.view);

  let drawn = "";
  let known: Circulation | null = null;
  let laid: readonly Laid[] = [];
  let shape = "";
  let standing: readonly Standing[] = [];
  let fit: Fit = { scale: 1, x: 0, y: 0 };
  let dim = 0;
  let lit: ReadonlySet<string> = new Set();

  const drawStill = (contents: PaneContents, box: Box, { floor, dense }: Canvas, theme: Theme): void => {
    const { circulation, extent } = contents;
    const close = extent === CHEST;
    const proportions = proportionsOf(circulation);
    const wanted = `${circulation.request.stage} ${fenestrated(circulation)} ${close} ${proportions.body.top}`;
    if (shape !== wanted) {
      shape = wanted;
      const vessels = vesselsOf(circulation.request.stage, fenestrated(circulation), close).map((each) =>
        carried(each, proportions),
      );
      laid = layVessels(extent === LOOK ? vessels.filter(inLook) : vessels);
    }
    const sheet = { ink: leaders, words, sizes: sizesIn(box, floor), theme };
    const plates = drawPlates(sheet, contents, laid, box);
    standing = plates.standing;
    fit = plates.fit;
    plane.lay(extent, fit, { box, dense, proportions }, theme);
  };

  return {
    view,
    draw(contents, box, canvas, theme) {
      const { circulation, focus } = contents;
      const signature = signatureOf(contents, box, canvas, theme);
      const passed = known ? canvas.elapsed : Number.POSITIVE_INFINITY;
      const before = dim;
      const parts = partsOf(focus);
      // The light goes out with the last of the dark around it.
      if (parts.size > 0 || dim === 0) lit = parts;
      dim = ease(dim, parts.size > 0 ? DIM : 0, passed);
      const moved = plane.follow(circulation, passed);
      const isNew = known !== circulation || signature !== drawn;
      if (isNew) {
        known = circulation;
        drawn = signature;
        drawStill(contents, box, canvas, theme);
      }
      if (isNew || moved || dim !== before) plane.stand(laid, circulation, theme, { lit, dim });
      plane.move(contents, theme, { lit, dim });
      return fit;
    },
    pick: (x, y) =>
      standing.find(
        (each) => x >= each.x && x <= each.x + each.width && y >= each.y && y <= each.y + each.height,
      )?.name ?? null,
    release: () => plane.release(),
  };
}
