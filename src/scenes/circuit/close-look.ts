/** The trunk's upper half enlarged beside the whole body, where the box has room for both. */
import { Container, Graphics } from "pixi.js";
import { type Fit, fitInto } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { BODY, LOOK } from "./arrange.ts";
import { pane } from "./circuit-pane.ts";
import type { PaneContents } from "./plates-drawing.ts";

/** CSS px of rounded corners, and parts of the box: room for the body's plates at each side, and the least width that is worth a look. */
const CORNER = 14;
const PLATES = 0.2;
const MIN_LOOK = 0.42;

interface Halves {
  readonly body: Box;
  readonly look: Box | null;
}

/** The body at the left with its plates, and at the right a part of it, enlarged as far as what is left allows. */
export function halvesOf(box: Box): Halves {
  const body = (BODY.right - BODY.left) * fitInto(box, BODY).scale + 2 * PLATES * box.height;
  const tall = (LOOK.bottom - LOOK.top) / (LOOK.right - LOOK.left);
  const width = Math.min(box.width - body, box.height / tall);
  if (width < MIN_LOOK * box.height) return { body: box, look: null };
  const height = width * tall;
  const look = { x: box.x + box.width - width, y: box.y + 0.4 * (box.height - height), width, height };
  return { body: { ...box, width: box.width - width }, look };
}

/** How the body lies, and where a part of it is enlarged; null: no room. */
interface Places {
  readonly fit: Fit;
  readonly box: Box | null;
}

export function closeLook() {
  const [view, inside, edge, window] = [new Container(), new Container(), new Graphics(), new Graphics()];
  /** Where it is taken from lies under the body's plates. */
  const from = new Graphics();
  const enlarged = pane();
  inside.addChild(enlarged.view);
  inside.mask = window;
  view.addChild(inside, window, edge);
  return {
    view,
    from,
    draw(contents: PaneContents, { fit, box }: Places, floor: number, elapsed: number, theme: Theme): void {
      view.visible = box !== null;
      from.visible = box !== null;
      if (!box) return;
      const { x, y, width, height } = box;
      const line = { width: 1.5, color: theme.colour.inkSoft };
      window.clear().roundRect(x, y, width, height, CORNER).fill(0xffffff);
      edge.clear().roundRect(x, y, width, height, CORNER).stroke(line);
      const [left, top] = [fit.x + LOOK.left * fit.scale, fit.y + LOOK.top * fit.scale];
      const [wide, tall] = [(LOOK.right - LOOK.left) * fit.scale, (LOOK.bottom - LOOK.top) * fit.scale];
      from.clear().roundRect(left, top, wide, tall, CORNER * (wide / width));
      for (const [down, to] of [
        [0, y + CORNER],
        [tall, y + height - CORNER],
      ] as const)
        from.moveTo(left + wide, top + down).lineTo(x, to);
      from.stroke({ ...line, width: 1, alpha: 0.35 });
      enlarged.draw({ ...contents, labels: false, titled: false, extent: LOOK }, box, floor, elapsed, theme);
    },
    release: () => enlarged.release(),
  };
}
