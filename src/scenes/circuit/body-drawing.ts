/** The still part of the schematic over the painted body: vessels with wall and lumen in the colour of their blood, and what is pointed at. */

import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { roundOf, tissue } from "../anatomy/tones.ts";
import type { Brush } from "../drawing/brush.ts";
import { type Curve, curve, traceCurve } from "../drawing/curve-drawing.ts";
import { bloodColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { drawBed } from "./bed-drawing.ts";
import { SEWN } from "./chest-plan.ts";
import { saturationAlong } from "./circuit-blood.ts";
import type { Laid } from "./dots.ts";
import { dimOf, type Emphasis, NO_EMPHASIS } from "./emphasis.ts";
import { fadeOf, taperOf } from "./fading.ts";
import { ORGANS, type Outline } from "./outlines.ts";
import { skinOf } from "./paint-figure.ts";
import { drawRings } from "./rings-drawing.ts";
import type { Vessel } from "./vessel.ts";

/** Plane units by which the light around what is pointed at stands out. */
const HALO = 7;
/** Strokes of which a vessel's round is made, and the plane units of width from which the steps between them would be seen. */
const BANDS = { small: 5, wide: 11, from: 20 } as const;
/** A sampled curve bends so little at each point that a mitre is round; a round join would cost ten times the vertices. */
const JOIN = "miter";
/** How much of its organ's colour a vessel deep in it takes. */
const DEEP = 0.4;
/** How dark a vessel's shadow on what it crosses is. */
const SHADOW = { dark: 0.3, light: 0.07 } as const;

const isClosed = ({ points }: Outline): boolean => {
  const [first, last] = [entryAt(points, 0), lastOf(points)];
  return first[0] === last[0] && first[1] === last[1];
};

/** A light around the organs that are pointed at. @param lit their names */
export function drawLit(ink: Brush, lit: ReadonlySet<string>, { colour }: Theme): void {
  for (const outline of ORGANS.filter(({ name }) => lit.has(name))) {
    traceCurve(ink, curve(outline.points));
    if (isClosed(outline)) ink.closePath();
    ink.stroke({
      color: colour.accent,
      width: HALO,
      alpha: outline.width ? 0.5 : 1,
      cap: "round",
      join: JOIN,
    });
  }
}

/** Vessels from the back to the front; those that join are drawn as one, where the first of them lies. */
export function drawVessels(
  ink: Brush,
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

/** Plane units of both walls of a vessel, and the width below which walls and shadow are less. */
const WALL = 4;
const SMALL = 10;
const slight = ({ width }: Pick<Vessel, "width">): number => Math.min(1, width / SMALL);

/** Shadow, wall, lumen in the colour of the blood, each of all before the next. What is pointed at has a light in place of its shadow. */
function drawTubes(
  ink: Brush,
  tubes: readonly Laid[],
  circulation: Circulation,
  theme: Theme,
  emphasis: Emphasis,
): void {
  const { colour } = theme;
  const liver = tissue("liver", theme).body;
  const looks = tubes.map(({ vessel, line }) => {
    const saturation = saturationAlong(circulation, vessel, 0);
    const flesh = (color: string) => (vessel.deep ? mix(color, liver, DEEP) : color);
    const back = (color: string) => mix(flesh(color), colour.stage, dimOf(emphasis, vessel.name));
    const lit = emphasis.lit.has(vessel.name);
    return { vessel, line, saturation, back, lit, round: roundOf(saturation, theme) };
  });
  for (const { vessel, line, lit } of looks) {
    if (lit) {
      traceCurve(ink, line);
      ink.stroke({ color: colour.accent, width: vessel.width + 4 + 2 * HALO, join: JOIN, cap: "butt" });
    } else if (!vessel.fades && !vessel.deep)
      for (const wider of [8, 12]) {
        strokePieces(
          ink,
          { vessel, line },
          { color: "#000000", width: vessel.width + wider * slight(vessel), cap: "butt" },
          SHADOW[theme.name],
        );
      }
  }
  for (const { vessel, line, saturation, back } of looks)
    strokeAlong(ink, { vessel, line }, theme, {
      color: back(mix(colour.wall, bloodColour(colour, saturation), 0.35)),
      width: vessel.width + WALL * slight(vessel),
      cap: "butt",
    });
  // Round: lighter towards its middle.
  const bands = tubes.some(({ vessel }) => vessel.width >= BANDS.from) ? BANDS.wide : BANDS.small;
  for (let k = 0; k < bands; k++) {
    const depth = k / (bands - 1);
    for (const { vessel, line, back, round } of looks)
      strokeAlong(ink, { vessel, line }, theme, {
        color: back(
          depth < 0.5
            ? mix(round.edge, round.body, 2 * depth)
            : mix(round.body, round.light, 1.2 * (depth - 0.5)),
        ),
        width: vessel.width * (1 - 0.78 * depth),
        cap: "round",
      });
  }
  for (const { vessel, line } of looks)
    if (vessel.name === "conduit") drawRings(ink, { vessel, line }, SEWN.extracardiac, theme);
}

interface Stroke {
  readonly color: string;
  readonly width: number;
  readonly cap: "butt" | "round";
}

/** Samples in a piece of one width, where a vessel tapers. */
const PIECE = 3;

/** Along the whole line; where it tapers in pieces, each narrower; where it fades, piece by piece nearer to the skin that fades beneath it. */
function strokeAlong(ink: Brush, { vessel, line }: Laid, theme: Theme, { color, width, cap }: Stroke): void {
  const last = line.x.length - 1;
  const skin = skinOf(theme).body;
  const gone = (i: number) => 1 - fadeOf(vessel, i / last);
  const whole = vessel.fades ? Array.from(line.x, (_, i) => i).filter((i) => gone(i) === 0) : null;
  if (!whole) {
    strokePieces(ink, { vessel, line }, { color, width, cap: vessel.tapers ? "round" : cap });
    return;
  }
  traceCurve(ink, part(line, entryAt(whole, 0), lastOf(whole) + 1));
  ink.stroke({ color, width, join: JOIN, cap: "butt" });
  for (let i = 0; i < last; i++) {
    const share = Math.max(0, gone(i + 0.5));
    if (gone(i) <= 0 && gone(i + 1) <= 0) continue;
    // One sample further than its piece, so that no seam shows.
    traceCurve(ink, part(line, i, Math.min(i + 2, last) + 1));
    ink.stroke({
      color: mix(color, mix(skin, theme.colour.stage, share), share),
      width,
      join: JOIN,
      cap: "butt",
    });
  }
}

/** Samples over which an end melts into what lies under it. */
const MELTS = 5;

/** As wide as the vessel is at each piece; in one piece where it does not taper. */
function strokePieces(ink: Brush, { vessel, line }: Laid, { color, width, cap }: Stroke, alpha = 1): void {
  const last = line.x.length - 1;
  const melts = Math.min(MELTS, last - 1);
  const begin = vessel.opens === "start" ? melts : 0;
  const end = vessel.opens === "end" ? last - melts : last;
  const stroke = (from: number, to: number, by: number, ends: Stroke["cap"]) => {
    traceCurve(ink, part(line, from, to + 1));
    const wide = width * taperOf(vessel, (from + to) / 2 / last);
    ink.stroke({ color, alpha: by * alpha, width: wide, join: JOIN, cap: ends });
  };
  const step = vessel.tapers ? PIECE : end - begin;
  for (let i = begin; i < end; i += step) {
    const to = Math.min(i + step, end);
    const melted = vessel.opens && (to === end || i === begin);
    stroke(i, to, 1, melted ? "butt" : cap);
  }
  // The other end is round all the same; samples lie 4 units apart.
  const round = Math.ceil(width / 8);
  if (vessel.opens && !vessel.tapers && cap === "round" && end - begin > round)
    stroke(begin && begin + round, begin ? end : end - round, 1, cap);
  for (let i = 0; i < begin; i++) stroke(i, i + 1, (i + 0.5) / begin, "butt");
  for (let i = end; i < last; i++) stroke(i, i + 1, 1 - (i - end + 0.5) / (last - end), "butt");
}

const part = ({ x, y }: Curve, from: number, to: number): Pick<Curve, "x" | "y"> => ({
  x: x.subarray(from, to),
  y: y.subarray(from, to),
});
