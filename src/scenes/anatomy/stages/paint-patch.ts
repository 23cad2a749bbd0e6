/** A lateral tunnel, opened from the front: the atrium's own free wall towards the patient's right, a baffle of fabric within the atrium towards the left. */
import { line as lineOf, spotAt } from "../../../sim/geometry/centreline.ts";
import type { Opening, Point } from "../../../sim/geometry/geometry.ts";
import type { Theme } from "../../theme/theme.ts";
import { beside, type Graft } from "../paint-graft.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { type Bounds, boundsOf, type Ink, strokes, trace } from "../painted-sheet.ts";
import { CLOTH, tissue } from "../tones.ts";
import { soften } from "./paint-tunnel-lining.ts";
import { aroundMouth, runningSuture } from "./running-suture.ts";
import { across, bowsAt, lineInFront } from "./tunnel-shape.ts";

/** mm of a 5-year-old: the free wall at its thickest. */
const FREE_WALL = 3;

export function paintPatch(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const { body, fold } = CLOTH[theme.name];
  paintFreeWall(ink, graft, size, theme);
  const inner = across(graft, 1, -0.1 * size);
  const outer = lineInFront(graft, size);
  trace(ink, [...outer, ...[...inner].reverse()], true);
  ink.fillStyle = body;
  ink.fill();
  ink.save();
  ink.clip();
  // A half pipe: it turns away from the light towards the atrium.
  soften(ink, outer, 5.4 * size, fold);
  soften(ink, outer, 2 * size, fold);
  ink.restore();
  // The fabric's own thickness where its front was cut away.
  strokes(ink, inner, size, [
    [1.9, fold],
    [1.4, body],
    [0.5, "#ffffff"],
  ]);
  runningSuture(ink, outer, size, theme);
  // Its upper end is sewn to the underside of the pulmonary artery.
  aroundMouth(ink, beside(graft, 1, -1), beside(graft, 1, 1), size, theme);
}

/** From the inferior to the superior vena cava it is the heart's right border, and goes over into both. */
function paintFreeWall(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const inner = across(graft, -1);
  const outer = inner.map((_, i): Point => {
    const along = i / (inner.length - 1);
    return beside(graft, along, -1, size * (2 + (FREE_WALL - 2) * Math.min(1, 5 * along, 5 * (1 - along))));
  });
  const bounds = boundsOf([outer, inner], 4 * size);
  const own = scratch(ink, bounds);
  trace(own, [...outer, ...[...inner].reverse()], true);
  own.fillStyle = look.body;
  own.fill();
  own.save();
  own.clip();
  soften(own, inner, 1.6 * size, look.shade);
  own.globalAlpha = 0.7;
  strokes(own, outer, size, [[1.5, look.light]]);
  own.restore();
  strokes(own, inner, size, [[0.6, look.light]]);
  strokes(own, outer, size, [[0.5, look.edge]]);
  clearEnds(own, bounds, 6 * size);
  laidOver(ink, own, bounds);
}

/** Its muscle ends on both veins without an edge. */
function clearEnds(ink: Ink, [left, bottom, right, top]: Bounds, reach: number): void {
  ink.globalCompositeOperation = "destination-out";
  for (const [from, to] of [
    [bottom + 0.5 * reach, bottom + 1.6 * reach],
    [top - 0.5 * reach, top - 1.6 * reach],
  ] as const) {
    const fall = ink.createLinearGradient(0, from, 0, to);
    fall.addColorStop(0, "#000");
    fall.addColorStop(1, "#0000");
    ink.fillStyle = fall;
    ink.fillRect(left, bottom, right - left, top - bottom);
  }
}

/** A hole punched in the baffle, through which the blood behind is seen. */
export function paintHole(ink: Ink, graft: Graft, hole: Opening, size: number, theme: Theme): void {
  const along = nearest(graft, hole.centre);
  const middle = beside(graft, along, 1, 0.5 * bowsAt(along, size));
  const { along: way } = spotAt(lineOf(graft.line), along);
  const turned = Math.atan2(way[1], way[0]);
  const oval = (more: number) => {
    ink.beginPath();
    ink.ellipse(
      middle[0],
      middle[1],
      hole.width / 2 + more,
      Math.min(hole.width / 2, 0.36 * bowsAt(along, size)) + more,
      turned,
      0,
      2 * Math.PI,
    );
  };
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  oval(0);
  ink.fill();
  ink.restore();
  oval(0.15 * size);
  ink.lineWidth = 0.45 * size;
  ink.strokeStyle = CLOTH[theme.name].fold;
  ink.stroke();
}

/** Part of the way at which a place lies beside it. */
function nearest({ line }: Graft, [x, y]: Point): number {
  const whole = lineOf(line);
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  for (let i = 0; i <= 100; i++) {
    const { at } = spotAt(whole, i / 100);
    const far = Math.hypot(at[0] - x, at[1] - y);
    if (far < least) [best, least] = [i / 100, far];
  }
  return best;
}
