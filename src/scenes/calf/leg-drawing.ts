/** The lower leg's tissues at one moment: skin, the muscle around the vein, the vein's wall and the leaflets of its valves. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { curve, type Spot, spots, traceCurve } from "../drawing/curve-drawing.ts";
import { bloodColour, groundColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { CALF, halfWidth, leaflets, PLANE, VALVES } from "./vein.ts";

/** From behind the knee over calf and heel to the toes, and up the shin over the kneecap. */
const SKIN = spots(
  "138 -30, 144 60, 126 150, 90 260, 78 400, 98 530, 142 650, 178 750, 182 812, 160 862, 142 912, 156 962, 210 986, 330 980, 460 988, 580 990, 652 974, 660 938, 610 902, 520 864, 454 812, 436 740, 446 620, 472 440, 494 300, 498 200, 520 130, 524 60, 506 -30",
);
/** Thigh bone, shin bone and heel, behind the vein. */
const BONES = [
  "420 -30, 420 40, 404 84, 430 116, 470 112, 494 84, 474 40, 470 -30",
  "402 140, 440 132, 482 140, 476 176, 456 240, 440 420, 424 600, 416 760, 430 806, 380 812, 372 780, 388 620, 404 420, 416 240, 404 176, 402 140",
  "504 62, 516 82, 516 112, 502 132, 492 112, 492 80, 504 62",
  "196 860, 240 838, 320 846, 400 834, 450 846, 520 890, 600 934, 596 956, 500 944, 400 922, 300 916, 220 950, 182 930, 196 860",
].map(spots);
/** Where the vein's branches come from in the foot. */
const FOOT_VEINS = [
  "316 880, 340 934, 420 954, 540 962",
  "300 880, 312 940, 360 964, 440 970",
  "284 880, 272 926, 246 950, 206 950",
].map(spots);

/** Where fibres run, as parts of the way from the muscle's inner border to its outer one. */
const FIBRES = [0.3, 0.6];

export function drawSkin(ink: Graphics, saturation: number, theme: Theme): void {
  const { colour } = theme;
  ink.clear();
  traceCurve(ink, curve(SKIN));
  ink.fill({ color: mix(colour.stage, colour.clot, 0.12) });
  traceCurve(ink, curve(SKIN));
  ink.stroke({ color: mix(colour.backdropEdge, colour.clot, 0.3), width: 3.5, cap: "round" });
  for (const bone of BONES) {
    traceCurve(ink, curve(bone));
    ink.fill({ color: mix(colour.stage, colour.wallEdge, 0.3) });
    traceCurve(ink, curve(bone));
    ink.stroke({ color: mix(colour.stage, colour.wallEdge, 0.5), width: 2 });
  }
  for (const [wider, shade] of [
    [12, mix(colour.wall, bloodColour(colour, saturation), 0.35)],
    [0, groundColour(colour, saturation)],
  ] as const) {
    for (const vein of FOOT_VEINS) {
      traceCurve(ink, curve(vein));
      ink.stroke({ color: shade, width: 22 + wider, cap: "round" });
    }
    ink
      .circle(PLANE.middle, PLANE.height - 12, halfWidth(PLANE.height, 0) + wider / 4)
      .fill({ color: shade });
  }
}

/** The borders of the muscle on one side (-1, 1), downward, at the same heights: the inner follows the vein, the outer bulges. */
function bordersOf(side: number, squeeze: number): { readonly inner: Spot[]; readonly outer: Spot[] } {
  const inner: Spot[] = [];
  const outer: Spot[] = [];
  for (let y = CALF.top - 40; y <= CALF.bottom + 40; y += 10) {
    const along = (y - CALF.top + 40) / (CALF.bottom - CALF.top + 80);
    const belly = Math.sin(Math.PI * along);
    const near = halfWidth(y, squeeze) + 9;
    inner.push([PLANE.middle + side * near, y]);
    // Muscle thickens as it shortens.
    outer.push([
      PLANE.middle + side * (near + (side < 0 ? 118 : 74) * belly ** 0.8 * (1 + 0.16 * squeeze)),
      y,
    ]);
  }
  return { inner, outer };
}

export function drawMuscle(ink: Graphics, squeeze: number, { colour }: Theme): void {
  const edge = mix(colour.backdropEdge, colour.clot, 0.4);
  for (const side of [-1, 1]) {
    const { inner, outer } = bordersOf(side, squeeze);
    ink
      .poly([...inner, ...outer.toReversed()].flat(), true)
      .fill({ color: mix(colour.backdrop, colour.clot, 0.3) })
      .stroke({ color: edge, width: 2.5 });
    for (const part of FIBRES) {
      const fibre = inner.map(([x, y], i): Spot => [x + (entryAt(outer, i)[0] - x) * part, y]);
      ink.poly(fibre.flat(), false).stroke({ color: edge, width: 1.5, alpha: 0.6 });
    }
  }
}

/** @param saturation percent, of the blood in it */
export function drawVein(ink: Graphics, squeeze: number, saturation: number, { colour }: Theme): void {
  const wall: number[] = [];
  for (let y = -24; y <= PLANE.height + 24; y += 8) wall.push(PLANE.middle - halfWidth(y, squeeze), y);
  for (let y = PLANE.height + 24; y >= -24; y -= 8) wall.push(PLANE.middle + halfWidth(y, squeeze), y);
  ink.poly(wall).fill({ color: groundColour(colour, saturation) });
  ink.stroke({ color: mix(colour.wall, bloodColour(colour, saturation), 0.35), width: 6, join: "miter" });
}

/** @param open 0..1, by VALVES */
export function drawValves(ink: Graphics, open: readonly number[], theme: Theme): void {
  ink.clear();
  VALVES.forEach((valve, i) => {
    for (const { hinge, tip } of leaflets(valve.y, entryAt(open, i))) {
      const bow = (hinge[0] - PLANE.middle) * 0.18 * entryAt(open, i);
      ink
        .moveTo(...hinge)
        .quadraticCurveTo((hinge[0] + tip[0]) / 2 - bow, (hinge[1] + tip[1]) / 2 + 8, ...tip)
        .stroke({ color: theme.colour.wallEdge, width: 9, cap: "round" });
    }
  });
}
