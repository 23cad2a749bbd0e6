/** The trunk from the neck to the bowel, enlarged beside the whole body, where the box has room for both. */
import { Container, Graphics } from "pixi.js";
import { type Fit, fitInto } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { LOOK, shownIn } from "./arrange.ts";
import { type Canvas, pane } from "./circuit-pane.ts";
import type { PaneContents } from "./plates-drawing.ts";
import type { Proportions } from "./proportions.ts";

/** CSS px of rounded corners, and parts of the box: room at each side for the body's plates or for its title alone, and how much larger than the body a part is at least. */
const CORNER = 14;
const PLATES = 0.2;
const TITLE = 0.13;
const MIN_LARGER = 1.2;

interface Halves {
  readonly body: Box;
  readonly look: Box | null;
}

/** The body at the left with its plates, and at the right a part of it, enlarged as far as what is left allows: where that is worth it, and all of the body stays. */
export function halvesOf(box: Box, proportions: Proportions, labels: boolean): Halves {
  const { body: whole } = proportions;
  const plates = labels ? PLATES : TITLE;
  const body = (whole.right - whole.left) * fitInto(box, whole).scale + 2 * plates * box.height;
  const tall = (LOOK.bottom - LOOK.top) / (LOOK.right - LOOK.left);
  const width = Math.min(box.width - body, box.height / tall);
  const beside = { ...box, width: box.width - width };
  const larger = width / (LOOK.right - LOOK.left) / fitInto(box, whole).scale;
  if (larger < MIN_LARGER || shownIn(beside, proportions) !== whole) return { body: box, look: null };
  const height = width * tall;
  // On whole pixels its edges are cut sharp.
  const look = {
    x: Math.round(box.x + box.width - width),
    y: Math.round(box.y + 0.5 * (box.height - height)),
    width: Math.round(width),
    height: Math.round(height),
  };
  return { body: beside, look };
}

/** How the body lies, and where a part of it is enlarged; null: no room. */
interface Places {
  readonly fit: Fit;
  readonly box: Box | null;
}

/** Of the corners beyond a round frame, which hides there what a straight edge has cut: a round one would cost the processor far more. */
function coverCorners(ink: Graphics, { x, y, width, height }: Box, color: string): void {
  for (const [px, sx] of [
    [x, 1],
    [x + width, -1],
  ] as const)
    for (const [py, sy] of [
      [y, 1],
      [y + height, -1],
    ] as const) {
      const arc = Array.from({ length: 9 }, (_, i): readonly [number, number] => {
        const turn = (Math.PI * i) / 16;
        return [px + sx * CORNER * (1 - Math.sin(turn)), py + sy * CORNER * (1 - Math.cos(turn))];
      });
      ink
        .poly([px - sx, py - sy, px + sx * CORNER, py - sy, ...arc.flat(), px - sx, py + sy * CORNER])
        .fill({ color });
    }
}

export function closeLook() {
  const [view, inside, edge, window] = [new Container(), new Container(), new Graphics(), new Graphics()];
  /** The way from the body lies under it, the frame of where that begins over it. */
  const [way, from] = [new Graphics(), new Graphics()];
  const enlarged = pane();
  inside.addChild(enlarged.view);
  inside.mask = window;
  view.addChild(inside, window, edge);
  return {
    view,
    way,
    from,
    draw(contents: PaneContents, { fit, box }: Places, canvas: Canvas, theme: Theme): void {
      for (const part of [view, way, from]) part.visible = box !== null;
      if (!box) return;
      const { colour } = theme;
      const { x, y, width, height } = box;
      const line = { width: 1.5, color: colour.inkSoft };
      window.clear().rect(x, y, width, height).fill(0xffffff);
      edge.clear();
      coverCorners(edge, box, colour.stage);
      edge.roundRect(x, y, width, height, CORNER).stroke(line);
      const [left, top] = [fit.x + LOOK.left * fit.scale, fit.y + LOOK.top * fit.scale];
      const [wide, tall] = [(LOOK.right - LOOK.left) * fit.scale, (LOOK.bottom - LOOK.top) * fit.scale];
      from
        .clear()
        .roundRect(left, top, wide, tall, CORNER * (wide / width))
        .stroke({ ...line, alpha: 0.7 });
      way.clear();
      // Round corners begin where the guides do.
      for (const [y0, y1] of [
        [top, y],
        [top + tall, y + height],
      ] as const)
        way.moveTo(left + wide - 4, y0).lineTo(x + 4, y1);
      way.stroke({ ...line, width: 1, alpha: 0.6 });
      enlarged.draw({ ...contents, labels: false, titled: false, extent: LOOK }, box, canvas, theme);
    },
    release: () => enlarged.release(),
  };
}
