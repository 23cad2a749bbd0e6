/** Veins too thin for marks, which lead to the deep one: those that stand still are painted, those that muscle moves are drawn. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import { curve, placeOn, type Spot } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { footTurn, turned } from "./foot.ts";
import { GREAT_SAPHENOUS, SMALL_SAPHENOUS, TIBIA, TRIBUTARIES } from "./leg-parts.ts";
import { bandsOf, ROUND, veinTones } from "./paint-vein.ts";
import { beforeVein, bent, bulge } from "./strip-ends.ts";
import { cuspOf, HALF, onCusp } from "./vein.ts";

interface ThinVein {
  readonly line: readonly Spot[];
  /** plane units: half its width where it begins and ends */
  readonly half: readonly [number, number];
  /** part of its way at which its wall bulges behind a valve's cusps */
  readonly valve?: number;
}

/** Plane units by which it bulges, and half the length of that. */
const SINUS = { wide: 2.4, long: 8 } as const;

/** Pieces of a cusp, and plane units of a piece of a vein. */
const CUSP_STEPS = 8;
const PIECE = 5;
/** Plane units by which its outside stands over its width, and its colours stay within it. */
const [OUTSIDE, INSIDE] = [1, -0.8];
const THINNEST = 0.05;

/** Its outlines, the lowest first. @param saturation percent */
function layersOf(
  { line: points, half: [from, to], valve }: ThinVein,
  saturation: number,
  theme: Theme,
): readonly { readonly outline: readonly Spot[]; readonly colour: string }[] {
  const line = curve(points);
  const tones = veinTones(saturation, theme);
  const steps = Math.round(line.length / PIECE);
  const at = new Float64Array(4);
  const bulges = (part: number): number =>
    valve === undefined
      ? 0
      : SINUS.wide * Math.exp(-((((part - valve) * line.length) / SINUS.long - 0.5) ** 2));
  const pass = (part: number, more: number, colour: string) => {
    const sides: [Spot[], Spot[]] = [[], []];
    for (let i = 0; i <= steps; i++) {
      placeOn(line, i / steps, at);
      const [x, y, dx, dy] = [entryAt(at, 0), entryAt(at, 1), entryAt(at, 2), entryAt(at, 3)];
      // Sides that crossed would be no outline.
      const reach = Math.max(THINNEST, part * (from + ((to - from) * i) / steps + bulges(i / steps)) + more);
      sides[0].push([x - dy * reach, y + dx * reach]);
      sides[1].push([x + dy * reach, y - dx * reach]);
    }
    return { outline: [...sides[0], ...sides[1].toReversed()], colour };
  };
  return [
    pass(1, OUTSIDE, tones.wall),
    ...ROUND.map((part, i) => pass(part, INSIDE, entryAt(bandsOf(tones), i))),
  ];
}

/** @param saturation percent */
export function paintThinVein(ink: Ink, vein: ThinVein, saturation: number, theme: Theme): void {
  for (const { outline, colour } of layersOf(vein, saturation, theme)) {
    trace(ink, outline, true);
    ink.fillStyle = colour;
    ink.fill();
  }
}

function drawThinVein(ink: Graphics, vein: ThinVein, saturation: number, theme: Theme): void {
  for (const { outline, colour } of layersOf(vein, saturation, theme))
    ink.poly(outline.flat(), true).fill({ color: colour });
}

/** In the fat behind the muscles: the belly moves it. @param pressed 0..1. @param saturation percent */
export function drawBehindMuscles(ink: Graphics, pressed: number, saturation: number, theme: Theme): void {
  const turn = footTurn(pressed);
  const line = SMALL_SAPHENOUS.line.map(([x, y]): Spot => turned([x - bulge(y, pressed), y], turn));
  drawThinVein(ink, { ...SMALL_SAPHENOUS, line }, saturation, theme);
}

/** Nearest to us, under the skin: it bends where the foot turns. @param pressed 0..1. @param saturation percent */
export function drawBeforeMuscles(ink: Graphics, pressed: number, saturation: number, theme: Theme): void {
  const line = GREAT_SAPHENOUS.line.map((spot) => turned(spot, footTurn(pressed)));
  drawThinVein(ink, { ...GREAT_SAPHENOUS, line }, saturation, theme);
}

/** Through the fascia into the deep vein, with its valve: like the lower one it lets blood into the calf. @param pressed,open 0..1. @param saturation percent */
export function drawPerforator(
  ink: Graphics,
  { pressed, open, saturation }: Readonly<Record<"pressed" | "open" | "saturation", number>>,
  theme: Theme,
): void {
  const { perforating } = TRIBUTARIES;
  const line = perforating.line.map((spot) => bent(beforeVein(TIBIA), spot, pressed));
  drawThinVein(ink, { ...perforating, line }, saturation, theme);
  const way = curve(line);
  const at = new Float64Array(4);
  placeOn(way, perforating.valve, at);
  const [x, y, dx, dy] = [entryAt(at, 0), entryAt(at, 1), entryAt(at, 2), entryAt(at, 3)];
  const [from, to] = perforating.half;
  const half = from + (to - from) * perforating.valve;
  const { body, edge } = tissue("valve", theme);
  const cusp = cuspOf(0, open);
  for (const [color, width] of [
    [edge, 2.6],
    [body, 1.5],
  ] as const)
    for (const side of [1, -1]) {
      const cut = Array.from({ length: CUSP_STEPS + 1 }, (_, k): Spot => {
        const [across, along] = onCusp(cusp, k / CUSP_STEPS).map((each) => (each * half) / HALF) as [
          number,
          number,
        ];
        return [x - along * dx - side * across * dy, y - along * dy + side * across * dx];
      });
      ink.poly(cut.flat(), false).stroke({ color, width, cap: "round", join: "round" });
    }
}
