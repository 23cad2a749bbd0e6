/** A lateral tunnel: the atrium's own free wall on one side of the blood, a patch on the other. */
import type { Theme } from "../../theme/theme.ts";
import { beside, type Graft, stitches } from "../paint-graft.ts";
import { type Ink, trace } from "../painted-sheet.ts";
import { type Cloth, tissue } from "../tones.ts";

/** mm of a 5-year-old: the atrial wall beside a tunnel, and the gusset's width at its middle. */
const FREE_WALL = 3.2;
const GUSSET = 6;

/** A tunnel along the atrium's side: the atrium's own free wall towards the patient's right, a patch sewn to it towards the left. */
export function paintPatch(ink: Ink, graft: Graft, size: number, cloth: Cloth, theme: Theme): void {
  paintFreeWall(ink, graft, size, theme);
  const { body, fold, thread } = cloth;
  const places = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);
  /** the patch bows into the atrium, and its ends lie on the rims of both veins */
  const wide = (along: number) => size * (0.6 + GUSSET * Math.sin(Math.PI * along) ** 0.7);
  const inner = places.map((along) => beside(graft, along, 1, -0.1 * size));
  const outer = places.map((along) => beside(graft, along, 1, wide(along)));
  trace(ink, [...outer, ...[...inner].reverse()], true);
  ink.fillStyle = body;
  ink.fill();
  ink.save();
  ink.clip();
  // It turns away from the light towards its seam.
  ink.strokeStyle = fold;
  ink.globalAlpha = 0.08;
  trace(ink, outer);
  for (let k = 1; k <= 5; k++) {
    ink.lineWidth = 1.5 * k * size;
    ink.stroke();
  }
  ink.restore();
  ink.lineWidth = 0.35 * size;
  ink.strokeStyle = fold;
  trace(ink, inner);
  ink.stroke();
  trace(ink, outer);
  ink.lineWidth = 0.5 * size;
  ink.stroke();
  stitches(ink, outer, size, thread);
  // Its far edge lies on the atrium's back wall, seen through the blood.
  const far = Array.from({ length: 41 }, (_, i) => beside(graft, i / 40, 0.5, 0));
  trace(ink, far);
  ink.setLineDash([1.6 * size, 1.6 * size]);
  ink.strokeStyle = thread;
  ink.globalAlpha = 0.4;
  ink.stroke();
  ink.setLineDash([]);
  ink.globalAlpha = 1;
}

/** Steps along an edge. */
const STEPS = 60;

/** Nothing of the atrium lies outside it: from the inferior to the superior vena cava it is the heart's right border. */
function paintFreeWall(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const thick = (along: number) => size * (2 + (FREE_WALL - 2) * Math.min(1, 5 * along, 5 * (1 - along)));
  const along = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);
  const inner = along.map((at) => beside(graft, at, -1, 0));
  const outer = along.map((at) => beside(graft, at, -1, thick(at)));
  trace(ink, [...outer, ...[...inner].reverse()], true);
  ink.fillStyle = look.body;
  ink.fill();
  ink.save();
  ink.clip();
  trace(ink, outer);
  ink.lineWidth = 2 * size;
  ink.strokeStyle = look.shade;
  ink.stroke();
  ink.restore();
  for (const [line, width, colour] of [
    [inner, 0.7, look.light],
    [outer, 0.5, look.edge],
  ] as const) {
    trace(ink, line);
    ink.lineWidth = width * size;
    ink.strokeStyle = colour;
    ink.stroke();
  }
  // The ridges of its muscle, seen through the blood.
  for (let k = 4; k < STEPS - 8; k += 4) {
    trace(ink, [
      beside(graft, k / STEPS, -1),
      beside(graft, (k + 2) / STEPS, -0.45 - 0.2 * ((k * 7) % 3 === 0 ? 1 : 0)),
    ]);
    ink.lineWidth = 1.1 * size;
    ink.strokeStyle = look.body;
    ink.globalAlpha = 0.3;
    ink.stroke();
  }
  ink.globalAlpha = 1;
}
