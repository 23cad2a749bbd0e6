/** Where a pane's plane lies on the screen: whole, or from close by; a camera that changes glides. */
import type { PathwayGeometry } from "../../sim/geometry/geometry.ts";
import type { Box } from "../scene.ts";
import { ease } from "../theme/motion.ts";
import type { Moment } from "./moment.ts";
import { type Extent, extent, type Projection, project, type Sight } from "./pathway-layout.ts";

/** How near a "close" camera comes, times the whole. */
const CLOSE = 2.4;
/** Part of the lungs' width by which diaphragm and liver reach further to either side. */
const FLANK = 0.07;
/** s of a glide */
const GLIDE = 0.8;

export interface Camera {
  /** null until it has been aimed */
  readonly projection: Projection | null;
  /** @param shared what all panes look at; null: each at its own */
  aim(geometry: PathwayGeometry, box: Box, moment: Moment, shared?: Sight | null): Projection;
}

export function paneCamera(): Camera {
  let projection: Projection | null = null;
  let name = "";
  let gliding = false;
  return {
    get projection() {
      return projection;
    },
    aim(geometry, box, moment, shared) {
      const { view, viewport } = moment;
      const whole = project(box, shared?.extent ?? sight(geometry, moment));
      const place = (shared ?? geometry).places.find((each) => each.name === view.camera);
      const goal = onPixel(place ? near(whole, box, place.at) : whole, viewport.dense);
      // Only a change of the camera glides; a new size or new lengths take their place at once.
      if (name !== view.camera && projection) gliding = true;
      name = view.camera;
      const wait = gliding ? viewport.elapsed : Number.POSITIVE_INFINITY;
      const from = projection ?? goal;
      projection = {
        scale: ease(from.scale, goal.scale, wait, GLIDE),
        x: ease(from.x, goal.x, wait, GLIDE),
        y: ease(from.y, goal.y, wait, GLIDE),
      };
      gliding = projection.scale !== goal.scale || projection.x !== goal.x || projection.y !== goal.y;
      return projection;
    },
  };
}

/** Beside another pane or words of the page, and in a tall box, nothing reaches out of it. */
export function sight(
  geometry: Parameters<typeof extent>[0],
  { compared, viewport: { full, clear } }: Moment,
): Extent {
  const [left, bottom, right, top] = extent(geometry);
  const hemmed = compared || clear.width < full.width || clear.height > clear.width;
  const flank = hemmed ? FLANK * (right - left) : 0;
  return [left - flank, bottom, right + flank, top];
}

/** What is painted for this scale is then laid pixel on pixel. @param dense device pixels in a CSS pixel */
const onPixel = ({ scale, x, y }: Projection, dense: number): Projection => ({
  scale,
  x: Math.round(x * dense) / dense,
  y: Math.round(y * dense) / dense,
});

function near(whole: Projection, box: Box, at: readonly [number, number]): Projection {
  const scale = CLOSE * whole.scale;
  return { scale, x: box.x + box.width / 2 - scale * at[0], y: box.y + box.height / 2 + scale * at[1] };
}
