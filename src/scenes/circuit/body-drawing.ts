/** The still part of the schematic: organs, and vessels with wall and lumen in the colour of their blood. */
import type { Graphics } from "pixi.js";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { roundOf, tissue } from "../anatomy/tones.ts";
import { curve, type Spot, traceCurve } from "../drawing/curve-drawing.ts";
import { bloodColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationAlong } from "./circuit-blood.ts";
import { type Laid, spread } from "./dots.ts";
import { dimOf, type Emphasis, NO_EMPHASIS } from "./emphasis.ts";
import { ORGANS, type Outline, PAINTED } from "./outlines.ts";
import { drawLiverBefore } from "./silhouette.ts";

/** Plane units by which the light around what is pointed at stands out. */
const HALO = 7;
/** Part of their own colour that organs behind the vessels keep. */
const FLESH = 0.5;
/** Strokes of which a vessel's round is made. */
const BANDS = 5;
const STRANDS = [-0.36, -0.18, 0, 0.18, 0.36];
/** A sampled curve bends so little at each point that a mitre is round; a round join would cost ten times the vertices. */
const JOIN = "miter";

const isClosed = ({ points }: Outline): boolean => {
  const [first, last] = [entryAt(points, 0), lastOf(points)];
  return first[0] === last[0] && first[1] === last[1];
};

/** `lit`: names of the organs that are pointed at. */
export function drawBody(ink: Graphics, lit: ReadonlySet<string>, theme: Theme): void {
  const { stage, accent } = theme.colour;
  const flesh = tissue("atrium", theme);
  const [body, edge] = [mix(stage, flesh.body, FLESH), mix(stage, flesh.edge, FLESH)];
  for (const outline of ORGANS) {
    // The painted ones need a line only where they are pointed at.
    if (PAINTED.includes(outline) && !lit.has(outline.name)) continue;
    const closed = isClosed(outline);
    if (outline.width) {
      drawBowel(ink, outline.points, outline.width, lit.has(outline.name) ? accent : edge, body);
      continue;
    }
    traceCurve(ink, curve(outline.points));
    if (closed) ink.closePath();
    if (closed && !PAINTED.includes(outline)) ink.fill({ color: body });
    ink.stroke(
      lit.has(outline.name)
        ? { color: accent, width: HALO, cap: "round", join: JOIN }
        : { color: edge, width: 2, cap: "round", join: JOIN },
    );
  }
}

/** A soft tube: its edge, and its round lighter towards the middle. */
function drawBowel(ink: Graphics, points: readonly Spot[], width: number, edge: string, body: string): void {
  for (const [part, color] of [
    [1, edge],
    [0.88, body],
    [0.4, mix(body, edge, 0.25)],
  ] as const) {
    traceCurve(ink, curve(points));
    ink.stroke({ color, width: width * part, cap: "round", join: "round" });
  }
}

/** Vessels from the back to the front; those that join are drawn as one, where the first of them lies. */
export function drawVessels(
  ink: Graphics,
  laid: readonly Laid[],
  circulation: Circulation,
  theme: Theme,
  emphasis: Emphasis = NO_EMPHASIS,
): void {
  const groups = new Map<string, Laid[]>();
  for (const each of laid) {
    const { name, joins, bed, painted } = each.vessel;
    if (painted) continue;
    const alone = bed || !joins || emphasis.lit.has(name);
    const key = alone ? name : `joined ${joins}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  for (const group of groups.values()) {
    const first = entryAt(group, 0);
    if (first.vessel.bed) drawBed(ink, first, circulation, theme, emphasis);
    else drawTubes(ink, group, circulation, theme, emphasis);
  }
}

/** A bed as strands that change colour along the way. */
function drawBed(
  ink: Graphics,
  { vessel, line }: Laid,
  circulation: Circulation,
  { colour }: Theme,
  emphasis: Emphasis,
): void {
  const lit = emphasis.lit.has(vessel.name);
  const strand = (fraction: number) => {
    const blood = bloodColour(colour, saturationAlong(circulation, vessel, fraction));
    return mix(mix(colour.lumen, blood, lit ? 0.9 : 0.6), colour.stage, dimOf(emphasis, vessel.name));
  };
  for (const across of STRANDS) drawStrand(ink, { vessel, line }, across, strand);
}

/** Dark gap, wall, lumen in the colour of the blood, each of all before the next. What is pointed at has a light in place of its gap. */
function drawTubes(
  ink: Graphics,
  tubes: readonly Laid[],
  circulation: Circulation,
  theme: Theme,
  emphasis: Emphasis,
): void {
  const { colour } = theme;
  const looks = tubes.map(({ vessel, line }) => {
    const saturation = saturationAlong(circulation, vessel, 0);
    const back = (color: string) => mix(color, colour.stage, dimOf(emphasis, vessel.name));
    const lit = emphasis.lit.has(vessel.name);
    return { vessel, line, saturation, back, lit, round: roundOf(saturation, theme) };
  });
  for (const { vessel, line, lit } of looks) {
    traceCurve(ink, line);
    const [color, wider] = lit ? [colour.accent, 4 + 2 * HALO] : [colour.stage, 10];
    ink.stroke({ color, width: vessel.width + wider, join: JOIN, cap: "butt" });
  }
  for (const { vessel, line, saturation, back } of looks) {
    traceCurve(ink, line);
    const color = back(mix(colour.wall, bloodColour(colour, saturation), 0.35));
    ink.stroke({ color, width: vessel.width + 4, join: JOIN, cap: "butt" });
  }
  // Round: lighter towards its middle.
  for (let k = 0; k < BANDS; k++) {
    const depth = k / (BANDS - 1);
    for (const { vessel, line, back, round } of looks) {
      traceCurve(ink, line);
      const color = back(
        depth < 0.5
          ? mix(round.edge, round.body, 2 * depth)
          : mix(round.body, round.light, 1.2 * (depth - 0.5)),
      );
      ink.stroke({ color, width: vessel.width * (1 - 0.78 * depth), join: JOIN, cap: "round" });
    }
  }
  for (const { vessel, lit } of looks)
    if (vessel.under && !lit) drawLiverBefore(ink, vessel.points, vessel.width, theme);
}

function drawStrand(
  ink: Graphics,
  { vessel, line }: Laid,
  across: number,
  tint: (fraction: number) => string,
): void {
  const last = line.x.length - 1;
  const PIECE = 4;
  for (let i = 0; i < last; i += PIECE) {
    // Each piece reaches a little into the next, so that no crack shows where they bend.
    for (let k = i; k <= Math.min(i + PIECE + 1, last); k++) {
      const near = Math.min(k, last - 1);
      const dx = entryAt(line.x, near + 1) - entryAt(line.x, near);
      const dy = entryAt(line.y, near + 1) - entryAt(line.y, near);
      const step = Math.hypot(dx, dy) || 1;
      const side = across * vessel.width * spread(vessel, k / last);
      const x = entryAt(line.x, k) - (dy / step) * side;
      const y = entryAt(line.y, k) + (dx / step) * side;
      if (k === i) ink.moveTo(x, y);
      else ink.lineTo(x, y);
    }
    ink.stroke({
      color: tint((i + PIECE / 2) / last),
      width: Math.max(2.4, vessel.width * 0.1),
      join: JOIN,
      cap: "butt",
    });
  }
}
