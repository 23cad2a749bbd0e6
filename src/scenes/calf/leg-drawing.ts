/** The lower leg's tissues at one moment: skin, the muscle around the vein, the vein's wall and the leaflets of its valves. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { curve, type Spot, spots, traceCurve } from "../drawing/curve-drawing.ts";
import { bloodColour, groundColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { CALF, halfWidth, leaflets, PLANE, VALVES } from "./vein.ts";

const SKIN = spots("120 0, 116 120, 92 260, 78 420, 104 600, 160 760, 176 900");
/** Where fibres run, as parts of the way from the muscle's inner border to its outer one. */
const FIBRES = [0.3, 0.6];

export function drawSkin(ink: Graphics, theme: Theme): void {
  ink.clear();
  for (const outline of [SKIN, SKIN.map(([x, y]): Spot => [622 - x * 0.46, y])]) {
    traceCurve(ink, curve(outline));
    ink.stroke({ color: theme.colour.backdropEdge, width: 3, cap: "round" });
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
