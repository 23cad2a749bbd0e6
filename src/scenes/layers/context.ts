/** What stays of heart, lungs and vessels where the veil lies: their outlines, quiet but plain to see, without motion. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { outlineDistance } from "../../sim/geometry/distance.ts";
import type { PathwayGeometry, Point } from "../../sim/geometry/geometry.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { contour } from "./contour.ts";
import { beyondOpening, inBlood, type Plane } from "./drawn-plane.ts";
import { WALL } from "./fade.ts";
import type { Lit } from "./spots.ts";

/** Share of the ink: the lines stand 2:1 from all that is veiled, and far behind what is lit. */
const INK = 0.42;
/** mm to either side of an opening at which a vessel goes on and no line is drawn */
const GOES_ON = 7;

export const contextColour = ({ colour }: Theme): string => mix(colour.stageDeep, colour.ink, INK);

/** Lines of what can be seen of each part from the front, mm. */
export function contextLines(geometry: PathwayGeometry, plane: Plane): Point[][] {
  const anatomy = anatomyOf(geometry.chest);
  const behindAll = anatomy.behind.map(({ name }) => name);
  const parts = anatomy.parts.map(({ name, ground, open, outline }) => ({
    // Of a vessel in the liver or behind all else only scraps would be seen.
    scrap: (ground && open) || behindAll.includes(name),
    // A vessel's outline runs up one side and back down the other: its ends stay open.
    sides: open
      ? [outline.slice(0, outline.length / 2), outline.slice(outline.length / 2)]
      : [[...outline, entryAt(outline, 0)]],
    distance: outlineDistance(outline),
  }));
  const vessels = contour(plane, plane.distance, WALL);
  const inVessel = ([x, y]: Point) =>
    inBlood(plane, x, y) ||
    [0, 1, 2, 3].some((k) =>
      inBlood(plane, x + WALL * entryAt([1, -1, 0, 0], k), y + WALL * entryAt([0, 0, 1, -1], k)),
    );
  const behind = (index: number) => (point: Point) =>
    inVessel(point) || parts.slice(index + 1).some(({ distance }) => distance(...point) < 0);
  return [
    ...parts.flatMap(({ scrap, sides }, index) =>
      scrap ? [] : sides.flatMap((side) => shownRuns(side, behind(index))),
    ),
    ...vessels.flatMap((loop) => {
      const points = Array.from(
        { length: loop.length / 2 },
        (_, i): Point => [entryAt(loop, 2 * i), entryAt(loop, 2 * i + 1)],
      );
      return shownRuns([...points, entryAt(points, 0)], ([x, y]) =>
        geometry.openings.some((opening) => beyondOpening(opening, x, y, GOES_ON)),
      );
    }),
  ];
}

/** The stretches of a line on which nothing hides it. */
function shownRuns(points: readonly Point[], hidden: (point: Point) => boolean): Point[][] {
  const runs: Point[][] = [];
  let run: Point[] = [];
  const end = () => {
    if (run.length > 1) runs.push(run);
    run = [];
  };
  for (const point of points) {
    if (hidden(point)) end();
    else run.push(point);
  }
  end();
  return runs;
}

/** Draws the lines outside the lights. `width` in mm. */
export function drawContext(
  ink: Graphics,
  lines: readonly (readonly Point[])[],
  lit: readonly Lit[],
  width: number,
  theme: Theme,
): void {
  const inLight = ([x, y]: Point) =>
    lit.some(({ centre, radius }) => Math.hypot(x - centre[0], y - centre[1]) < radius + LIGHT);
  for (const line of lines)
    for (const run of shownRuns(line, inLight))
      ink.poly(run.flat(), false).stroke({ width, color: contextColour(theme), join: "round", cap: "round" });
}

/** mm by which a light reaches over the radius of what it lights */
const LIGHT = 6;
