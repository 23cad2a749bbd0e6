/** The lower leg's tissues: what stays as it is, and at one moment the vein's wall and the leaflets of its valves. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Round, roundOf, tissue } from "../anatomy/tones.ts";
import { curve, placeOn, type Spot, traceCurve } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import {
  ACHILLES_TENDON,
  BONES,
  CALCANEUS,
  DEEP_FLEXORS,
  FOOT_VEINS,
  GASTROCNEMIUS,
  KNEE_TENDONS,
  SKIN,
  SOLEUS,
  TIBIA,
} from "./leg-parts.ts";
import { legTissue } from "./leg-tones.ts";
import { along, drawRounded } from "./rounded.ts";
import { halfWidth, leafletBase, leaflets, PLANE, VALVES } from "./vein.ts";

/** Plane units of the vein's wall. */
const WALL = 6;
/** Parts of the vein's width, from its edge to its light. */
const ROUND = [1, 0.8, 0.5] as const;
/** Where fibres run, as parts of the way from one border of a muscle to the other. */
const FIBRES = [0.25, 0.5, 0.75];

export const drawSkin = (ink: Graphics, theme: Theme): void =>
  drawRounded(ink.clear(), SKIN, legTissue("skin", theme), 3.5);

export function drawMuscles(ink: Graphics, theme: Theme): void {
  const tones = tissue("muscle", theme);
  ink.clear();
  for (const muscle of [DEEP_FLEXORS, SOLEUS, GASTROCNEMIUS]) {
    drawRounded(ink, muscle, { ...tones, edge: theme.name === "dark" ? tones.shade : tones.edge }, 3);
    for (const share of FIBRES)
      ink
        .poly(
          along(muscle, share).flatMap((spot) => [...spot]),
          false,
        )
        .stroke({ color: tones.shade, width: 1.6, alpha: 0.55 });
  }
}

/** @param saturation percent, of the blood in the foot's veins */
export function drawBones(ink: Graphics, saturation: number, theme: Theme): void {
  const bone = legTissue("bone", theme);
  const tendon = legTissue("tendon", theme);
  ink.clear();
  for (const line of KNEE_TENDONS)
    for (const [width, color] of [
      [14, tendon.edge],
      [11, tendon.shade],
      [5, tendon.body],
    ] as const) {
      traceCurve(ink, curve(line));
      ink.stroke({ color, width });
    }
  for (const part of [TIBIA, ...BONES, CALCANEUS]) drawRounded(ink, part, bone, 2.5);
  drawRounded(ink, ACHILLES_TENDON, tendon, 2.5);
  for (const { line, half } of FOOT_VEINS.toReversed()) drawFootVein(ink, line, half, saturation, theme);
}

/** A vein that grows thin towards its end and is lost in the tissue there. */
function drawFootVein(
  ink: Graphics,
  points: readonly Spot[],
  [from, to]: readonly [number, number],
  saturation: number,
  theme: Theme,
): void {
  const line = curve(points);
  const tones = veinTones(saturation, theme);
  const steps = Math.round(line.length / 5);
  const at = new Float64Array(4);
  const pass = (part: number, more: number, colour: string) => {
    const sides: [Spot[], Spot[]] = [[], []];
    for (let i = 0; i <= steps; i++) {
      placeOn(line, i / steps, at);
      const [x, y, dx, dy] = [entryAt(at, 0), entryAt(at, 1), entryAt(at, 2), entryAt(at, 3)];
      const half = to + (from - to) * (1 - i / steps) ** 2.6;
      // A thin vessel has a thin wall.
      const reach = part * half + Math.max(-0.3 * half, Math.min(0.3 * half, more));
      sides[0].push([x - dy * reach, y + dx * reach]);
      sides[1].push([x + dy * reach, y - dx * reach]);
    }
    ink
      .poly(
        [...sides[0], ...sides[1].toReversed()].flatMap((spot) => [...spot]),
        true,
      )
      .fill({ color: colour });
  };
  pass(1, WALL / 2, tones.wall);
  ROUND.forEach((part, i) => {
    pass(part, -WALL / 2, entryAt(bandsOf(tones), i));
  });
}

const veinTones = (saturation: number, theme: Theme): Round => {
  const round = roundOf(saturation, theme);
  return { ...round, wall: mix(round.wall, theme.colour.wallEdge, 0.3) };
};

/** From the edge inward. The blood's marks stand on the last, so that it stays near to the ground. */
const bandsOf = ({ edge, body, light }: Round): readonly string[] => [edge, body, mix(body, light, 0.3)];

/** @param saturation percent, of the blood in it */
export function drawVein(ink: Graphics, squeeze: number, saturation: number, theme: Theme): void {
  const tones = veinTones(saturation, theme);
  const pass = (part: number, more: number, colour: string) => {
    const wall: number[] = [];
    const halfAt = (y: number) => part * halfWidth(y, squeeze) + more;
    for (let y = -24; y <= PLANE.height + 24; y += 8) wall.push(PLANE.middle - halfAt(y), y);
    for (let y = PLANE.height + 24; y >= -24; y -= 8) wall.push(PLANE.middle + halfAt(y), y);
    ink.poly(wall, true).fill({ color: colour });
  };
  pass(1, WALL / 2, tones.wall);
  ROUND.forEach((part, i) => {
    pass(part, -WALL / 2, entryAt(bandsOf(tones), i));
  });
}

/** @param open 0..1, by VALVES */
export function drawValves(ink: Graphics, open: readonly number[], theme: Theme): void {
  const { body, edge } = tissue("valve", theme);
  ink.clear();
  VALVES.forEach((valve, i) => {
    leaflets(valve.y, entryAt(open, i)).forEach(({ hinge, tip }, k) => {
      const [low, high] = leafletBase(valve.y, k === 0 ? -1 : 1);
      const [x, y] = [(hinge[0] + tip[0]) / 2, (hinge[1] + tip[1]) / 2];
      const inward = Math.sign(PLANE.middle - hinge[0]);
      // Thick where it grows out of the wall, thin at its free edge; blood from above fills its pocket.
      ink
        .moveTo(...low)
        .quadraticCurveTo(x + 3 * inward, y + 9, ...tip)
        .quadraticCurveTo(x - 2 * inward, y + 1, ...high)
        .closePath()
        .fill({ color: body })
        .stroke({ color: edge, width: 2, join: "round" });
    });
  });
}
