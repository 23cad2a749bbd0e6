/** A head from the front, of an age: hair tied back, brows, eyes, nose and mouth, lower and larger in a child's face. */
import type { Point } from "../../sim/geometry/geometry.ts";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { CHIN } from "../circuit/figure-shape.ts";
import { curve, type Spot, spots, spotsOf } from "../drawing/curve-drawing.ts";
import { mix, seeThrough } from "../theme/colour.ts";

/** Carries spots of the grown figure's plane, y up. */
export type Carry = (spot: Spot) => Point;

/** Plane units: half a head's width, and its height from the chin. */
const [HALF, TALL] = [115, 297];

/**
 * Hundredths of half a head's width from its middle and of its height over the chin, in a grown face and by how much lower at five years: eyes lie
 * at half the height when grown, a child's brows near it, over a rounder cheek (guides to drawing heads; how round is from memory).
 */
const FACE_AT = { eye: 50, brow: 61, nose: 29, mouth: 19 } as const;
const LOWER = { eye: 7, brow: 7, nose: 5, mouth: 3 } as const;
const CHEEK = spots("0 0, 24 1, 52 9, 82 26, 97 44, 100 60, 96 78, 78 96, 42 109, 0 113");
const ROUND = spots("0 0, 30 1, 64 10, 92 25, 103 42, 102 60, 97 78, 79 96, 42 109, 0 113");
const HAIRLINE = spots("97 44, 93 62, 82 78, 50 89, 12 91");
const CROWN = spots("103 46, 108 66, 101 86, 80 104, 46 117, 0 121");

export interface HeadTones {
  readonly skin: Tissue;
  readonly hair: string;
  readonly dark: string;
}

/** @param youth 1 at five years .. 0 when grown */
export function paintHead(ink: Ink, carry: Carry, youth: number, { skin, hair, dark }: HeadTones): void {
  const at = ([u, v]: Spot): Point => carry([500 + (HALF * u) / 100, CHIN - (TALL * v) / 113]);
  const closed = (half: readonly Spot[]): Point[] => {
    const whole = [
      ...half,
      ...half
        .map(([u, v]): Spot => [-u, v])
        .toReversed()
        .slice(1),
    ];
    return smooth(whole.map(at));
  };
  const face = CHEEK.map(([u, v], i): Spot => {
    const [ru, rv] = ROUND[i] ?? [u, v];
    return [u + youth * (ru - u), v + youth * (rv - v)];
  });
  paintOrgan(ink, closed(face), skin, { depth: 9, edge: 1.8 });
  const level = (part: keyof typeof FACE_AT) => 1.13 * (FACE_AT[part] - youth * LOWER[part]);
  const line = (points: readonly Spot[], width: number, colour: string) => {
    trace(ink, smooth(points.map(at)));
    ink.lineWidth = width;
    ink.strokeStyle = colour;
    ink.stroke();
  };
  const large = 1 + 0.25 * youth;
  const [blush, lip] = [mix(skin.body, "#d2452f", 0.2), mix(skin.edge, "#b4453c", 0.6)];
  for (const side of [-1, 1]) {
    const x = side * 42;
    blob(ink, at([side * 56, level("nose") + 4]), [13, 9], seeThrough(blush, 0.7));
    blob(ink, at([x, level("eye")]), [6.6 * large, 3.9 * large], "#fdfaf6");
    blob(ink, at([x, level("eye")]), [3.4 * large, 3.8 * large], dark);
    line(
      [
        [x - 17 * large, level("eye") + 0.5],
        [x, level("eye") + 6 * large],
        [x + 17 * large, level("eye") + 0.5],
      ],
      1.9,
      dark,
    );
    line(
      [
        [x - 19, level("brow") - (side < 0 ? 2 : 0)],
        [x, level("brow") + 2],
        [x + 19, level("brow") - (side > 0 ? 2 : 0)],
      ],
      2.4 - 0.6 * youth,
      mix(hair, skin.body, 0.25),
    );
  }
  const [nose, mouth] = [level("nose"), level("mouth")];
  line(spots(`-11 ${nose + 1}, -5 ${nose - 2}, 5 ${nose - 2}, 11 ${nose + 1}`), 1.7, skin.edge);
  line(spots(`-24 ${mouth + 2}, -10 ${mouth - 1}, 10 ${mouth - 1}, 24 ${mouth + 2}`), 2.4, lip);
  paintHair(ink, at, hair);
}

function paintHair(ink: Ink, at: (spot: Spot) => Point, hair: string): void {
  const other = (points: readonly Spot[]) => points.map(([u, v]): Spot => [-u, v]);
  const cap = [
    ...CROWN,
    ...other(CROWN).toReversed().slice(1),
    ...other(HAIRLINE),
    ...HAIRLINE.toReversed(),
  ].map(at);
  const tones: Tissue = {
    shade: mix(hair, "#000000", 0.3),
    body: hair,
    light: mix(hair, "#ffffff", 0.14),
    edge: mix(hair, "#000000", 0.45),
  };
  paintOrgan(ink, smooth([...cap, cap[0] as Point]), tones, { depth: 7, edge: 1.4 });
  ink.strokeStyle = seeThrough(tones.edge, 0.5);
  ink.lineWidth = 0.9;
  // Combed back from the forehead.
  for (const u of [-70, -46, -22, 0, 22, 46, 70]) {
    trace(
      ink,
      smooth([at([0.95 * u, 88 - 0.0021 * u * u]), at([0.8 * u, 104 - 0.001 * u * u]), at([0.5 * u, 116])]),
    );
    ink.stroke();
  }
}

function blob(ink: Ink, [x, y]: Point, [wide, high]: Spot, colour: string): void {
  ink.beginPath();
  ink.ellipse(x, y, wide, high, 0, 0, 2 * Math.PI);
  ink.fillStyle = colour;
  ink.fill();
}

export const smooth = (points: readonly Point[]): Point[] => [...spotsOf(curve(points, 2))];
