/** Lungs, heart and great veins within a standing figure: where in it the trunk above lies. */
import type { Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { roundOf, tissue } from "../anatomy/tones.ts";
import { chestFrame, onPlane } from "../circuit/chest-plan.ts";
import { type Spot, traceClosed } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationsOf } from "../theme/unsolved.ts";
import type { FigurePlace } from "./figure-drawing.ts";
import { carry } from "./grown-figure.ts";

/** CSS px of height from which they can be told. */
const TOLD = 90;
/** Of the outlines' many points each so many-th is enough. */
const EACH = 3;

export function drawOrgans(
  ink: Graphics,
  { request, circulation }: SweepPoint,
  { x, ground, height }: FigurePlace,
  theme: Theme,
): void {
  if (height < TOLD) return;
  const carried = carry(request.body.ageYears);
  const at = (point: Point): Spot => {
    const [px, py] = carried(onPlane(point));
    return [x + height * px, ground - height * py];
  };
  const frame = chestFrame(request.stage);
  const { lungs, heart, veins, before } = anatomyOf(frame);
  const fill = (outline: readonly Point[], name: "lung" | "atrium" | "muscle") => {
    const { body, edge } = tissue(name, theme);
    traceClosed(ink, outline.filter((_, i) => i % EACH === 0).map(at));
    ink.fill({ color: body }).stroke({ color: edge, width: 0.8 });
  };
  /** CSS px of a vessel's width in mm at its beginning */
  const wide = (line: readonly Point[], millimetres: number) => {
    const [px, py] = entryAt(line, 0);
    const [from, to] = [at([px, py]), at([px + millimetres, py])];
    return Math.max(1.2, Math.abs(to[0] - from[0]));
  };
  const draw = (line: readonly Point[], millimetres: number, color: string): void => {
    const [first, ...rest] = line.map(at) as [Spot, ...Spot[]];
    ink.moveTo(...first);
    for (const spot of rest) ink.lineTo(...spot);
    ink.stroke({ color, width: wide(line, millimetres), cap: "round", join: "round" });
  };
  for (const { outline } of lungs) fill(outline, "lung");
  fill(heart.atrium, "atrium");
  fill(heart.ventricle, "muscle");
  const { svc, arterial } = saturationsOf(circulation);
  for (const { line, from } of before) draw(line, from, roundOf(arterial, theme).body);
  const { body: blue } = roundOf(svc, theme);
  for (const { line, from } of veins) draw(line, from, blue);
  // The pathway, and the arteries that it reaches.
  const { svc: top, ivc: bottom, left, right } = frame;
  draw([bottom.centre, top.centre], bottom.width, blue);
  draw([right.centre, [0, 3], left.centre], right.width, blue);
}
