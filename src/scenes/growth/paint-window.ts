/** A round window in a person's chest: lungs, heart and great vessels where they lie, small. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../sim/geometry/pathways/index.ts";
import { type CirculationRequest, hasPathway, type Stage } from "../../sim/parameters/request.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import "../anatomy/stages/index.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { CLOTH, roundOf, tissue } from "../anatomy/tones.ts";
import { chestFrame } from "../circuit/chest-plan.ts";
import { skinOf } from "../circuit/paint-figure.ts";
import type { Theme } from "../theme/theme.ts";
import { lensOf } from "./lens-place.ts";
import type { Circle } from "./zoom.ts";

/** y up. */
export function paintWindow(
  ink: Ink,
  request: CirculationRequest,
  { svc, arterial }: Circulation["saturations"],
  { at, radius }: Circle,
  theme: Theme,
): void {
  const frame = pathwayGeometry(request)?.chest ?? chestFrame(request.stage);
  const { middle, reach } = lensOf(frame);
  ink.save();
  ink.beginPath();
  ink.arc(...at, radius, 0, 2 * Math.PI);
  ink.fillStyle = skinOf(theme).body;
  ink.fill();
  ink.lineWidth = 0.1 * radius;
  ink.strokeStyle = theme.colour.ink;
  ink.stroke();
  ink.clip();
  ink.translate(...at);
  ink.scale(radius / reach, radius / reach);
  ink.translate(-middle[0], -middle[1]);
  paintOrgans(ink, request.stage, frame, [roundOf(svc, theme).body, roundOf(arterial, theme).body], theme);
  ink.restore();
}

/** mm of a right atrium that lies beside the heart's outline where no pathway does: half its width and height. */
const RIGHT_ATRIUM = [15, 19] as const;

/** In the chest's mm. */
function paintOrgans(
  ink: Ink,
  stage: Stage,
  frame: ChestFrame,
  [blue, red]: readonly [string, string],
  theme: Theme,
) {
  const { lungs, heart, veins, before } = anatomyOf(frame);
  const { svc, ivc, left, right, graft, level, scale } = frame;
  const fill = (name: "lung" | "atrium" | "muscle", outline?: readonly Point[]) => {
    const { body, edge } = tissue(name, theme);
    if (outline) trace(ink, outline, true);
    ink.fillStyle = body;
    ink.fill();
    ink.lineWidth = 1.6 * scale;
    ink.strokeStyle = edge;
    ink.stroke();
  };
  const draw = (line: readonly Point[], wide: number, colour: string) => {
    trace(ink, line);
    ink.lineWidth = wide;
    ink.strokeStyle = colour;
    ink.stroke();
  };
  for (const { outline } of lungs) fill("lung", outline);
  for (const { line, from } of veins) draw(line, from, blue);
  if (!hasPathway(stage)) {
    // Both veins into the right atrium; at the Glenn stage the upper one into the arteries.
    draw([ivc.centre, [0, level]], ivc.width, blue);
    draw([svc.centre, stage === "glenn" ? [0, 0] : [0, level]], svc.width, blue);
    ink.beginPath();
    ink.ellipse(0, level, ...RIGHT_ATRIUM, 0, 0, 2 * Math.PI);
    fill("atrium");
  }
  fill("atrium", heart.atrium);
  fill("muscle", heart.ventricle);
  draw([right.centre, [0, 0], left.centre], right.width, blue);
  if (stage === "two-ventricle")
    draw(
      [
        [24, level - 10],
        [14, 0],
      ],
      1.3 * right.width,
      blue,
    );
  if (hasPathway(stage))
    draw([ivc.centre, graft ? entryAt(graft.line, 0) : [0, 0], svc.centre], ivc.width, blue);
  if (graft?.kind === "conduit") {
    const wide = Math.max(...graft.widths);
    draw(graft.line, wide + 3 * scale, CLOTH[theme.name].fold);
    draw(graft.line, wide, CLOTH[theme.name].body);
  }
  for (const { line, from } of before) draw(line, from, red);
}
