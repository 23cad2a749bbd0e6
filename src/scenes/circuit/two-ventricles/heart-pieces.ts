/** A heart with two ventricles as pieces that are painted apart because they move apart, back to front. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Anatomy } from "../../anatomy/chest-anatomy.ts";
import type { Tube } from "../../anatomy/great-vessels.ts";
import { hiatusOf, paintRim } from "../../anatomy/paint-abdomen.ts";
import { type Bounds, boundsOf, type Ink } from "../../anatomy/painted-sheet.ts";
import type { Theme } from "../../theme/theme.ts";
import {
  CONUS,
  EARS,
  LEFT_ATRIUM,
  LEFT_CAVITY,
  OUTFLOW,
  PIVOT,
  RIGHT_ATRIUM,
  RIGHT_CAVITY,
  SAC,
  VALVES,
  VENTRICLES,
} from "./heart-plan.ts";
import { downToDiaphragm, greatVessels } from "./heart-vessels.ts";
import { paintLeftAtrium, paintRightAtrium } from "./paint-atria.ts";
import {
  paintBed,
  paintCavity,
  paintConus,
  paintInside,
  paintLeftCavity,
  paintMuscle,
} from "./paint-chambers.ts";
import {
  type Carried,
  paintAorta,
  paintDescending,
  paintLiverVeins,
  paintRear,
  paintTrunk,
  paintVeins,
} from "./paint-great.ts";
import { planOf } from "./root.ts";

export const PIECES = [
  "descending",
  "liverVeins",
  "rear",
  "leftAtrium",
  "aorta",
  "rightAtrium",
  "veins",
  "leftBed",
  "leftCavity",
  "rightBed",
  "rightCavity",
  "conus",
  "muscle",
  "inside",
  "hiatus",
  "trunk",
] as const;
export type PieceName = (typeof PIECES)[number];

interface Piece {
  readonly bounds: Bounds;
  /** mm: what it swells about, near its valves, so that these keep their place */
  readonly pivot: Point;
  readonly paint: (ink: Ink) => void;
}

const NOTHING: Piece = { bounds: [0, 0, 1, 1], pivot: [0, 0], paint: () => undefined };

/** @param close heart and lungs fill the picture: what the whole body draws around them is painted too */
export function paintingOf(
  anatomy: Anatomy,
  carried: Carried,
  close: boolean,
  theme: Theme,
): Readonly<Record<PieceName, Piece>> {
  const vessels = greatVessels(anatomy);
  type Painter = (ink: Ink, bounds: Bounds, anatomy: Anatomy, carried: Carried, theme: Theme) => void;
  const part = (outline: readonly Point[], pivot: Point, paint: (ink: Ink) => void): Piece => ({
    bounds: boundsOf([outline], 4),
    pivot,
    paint,
  });
  const { ventricle: left, rightVentricle: right } = PIVOT;
  const fromLeft = vessels.returning.filter(({ name }) => name.startsWith("left"));
  const toLeft = [planOf(VALVES, "mitral")];
  const toRight = [planOf(VALVES, "tricuspid"), planOf(VALVES, "pulmonary")];
  const around = (drawn: readonly Pick<Tube, "line">[], paint: Painter): Piece => {
    const bounds = boundsOf(
      drawn.map(({ line }) => line),
      12,
    );
    return { bounds, pivot: [0, 0], paint: (ink) => paint(ink, bounds, anatomy, carried, theme) };
  };
  const tubes = (names: readonly (keyof typeof vessels)[], paint: Painter): Piece =>
    around(
      names.flatMap((name) => [vessels[name]].flat()),
      paint,
    );
  const descending = close ? vessels.descending : downToDiaphragm(vessels.descending);
  const upper = anatomy.veins
    .filter(({ group, name }) => group === "brachiocephalic" && name !== "superiorVenaCava")
    .map((tube) => ({ ...tube, dome: 0.2 }));
  const hiatus = hiatusOf(anatomy);
  const below = anatomy.veins.filter(({ group }) => group === "cava" || group === "hepatic");
  return {
    liverVeins: close ? around([...below, ...anatomy.abdomen.portal], paintLiverVeins) : NOTHING,
    descending: around([descending, { line: SAC }], (ink, bounds) =>
      paintDescending({ ink, bounds }, descending, carried, theme),
    ),
    rear: tubes(["returning", "rightArtery", "leftArtery"], paintRear),
    leftAtrium: part([...LEFT_ATRIUM, ...EARS.left], left, (ink) =>
      paintLeftAtrium(ink, fromLeft, carried.arterial, theme),
    ),
    aorta: around([vessels.aorta, ...vessels.branches, { line: OUTFLOW.flat() }], paintAorta),
    rightAtrium: part([...RIGHT_ATRIUM, ...EARS.right], [4, -42], (ink) =>
      paintRightAtrium(ink, carried.mixed, theme),
    ),
    veins: around([...(close ? upper : []), vessels.upperVein, vessels.lowerVein], (ink, bounds) =>
      paintVeins({ ink, bounds }, anatomy, carried, theme, close ? upper : []),
    ),
    hiatus: {
      bounds: boundsOf([hiatus.rim], 3),
      pivot: [0, 0],
      paint: (ink) => paintRim(ink, hiatus, 1, theme),
    },
    leftBed: part(VENTRICLES, left, (ink) => paintBed(ink, LEFT_CAVITY, toLeft, theme)),
    leftCavity: part(LEFT_CAVITY, left, (ink) => paintLeftCavity(ink, toLeft, carried.arterial, theme)),
    rightBed: part(VENTRICLES, left, (ink) => paintBed(ink, RIGHT_CAVITY, toRight, theme)),
    rightCavity: part(RIGHT_CAVITY, right, (ink) =>
      paintCavity(ink, RIGHT_CAVITY, toRight, carried.mixed, theme),
    ),
    conus: part(CONUS, left, (ink) => paintConus(ink, carried.mixed, theme)),
    muscle: part(VENTRICLES, left, (ink) => paintMuscle(ink, carried.arterial, theme)),
    inside: part(VENTRICLES, left, (ink) => paintInside(ink, theme)),
    trunk: tubes(["trunk", "leftArtery"], paintTrunk),
  };
}
