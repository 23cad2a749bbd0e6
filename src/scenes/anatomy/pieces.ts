/** The chest as pieces that are painted apart because they move apart, back to front. */
import { lastOf } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { descending, returning, type Tube } from "./great-vessels.ts";
import { joined, type Saturations } from "./joined.ts";
import { hiatusOf, paintDiaphragm, paintLiver, paintRim, paintTendon } from "./paint-abdomen.ts";
import { paintGraft, paintJunction } from "./paint-graft.ts";
import { paintAtrium, paintVentricleBed, paintVentricleCavity } from "./paint-heart.ts";
import { belowDiaphragm, paintInLiver } from "./paint-in-liver.ts";
import { paintLung } from "./paint-lung.ts";
import { mediastinum, paintMediastinum } from "./paint-mediastinum.ts";
import { paintMuscle } from "./paint-muscle.ts";
import { paintPassing } from "./paint-passing.ts";
import { paintTrunk } from "./paint-remains.ts";
import { paintRightAppendage, paintRightAtrium } from "./paint-right-atrium.ts";
import {
  paintBefore,
  paintBehind,
  paintHidden,
  paintVeins,
  type RoundOf,
  roomOf,
  underAorta,
} from "./paint-vessels.ts";
import { type Bounds, boundsOf, type Ink, type Outlines } from "./painted-sheet.ts";
import { roundOf } from "./tones.ts";

export const PIECES = [
  "ground",
  "rightLung",
  "leftLung",
  "back",
  "hidden",
  "shining",
  "abdomen",
  "inLiver",
  "atrium",
  "bed",
  "cavity",
  "muscle",
  "rightAtrium",
  "veins",
  "hiatus",
  "remains",
  "graft",
  "front",
  "passing",
] as const;
export type PieceName = (typeof PIECES)[number];

export interface Piece {
  readonly bounds: Bounds;
  /** mm: what it moves and swells about */
  readonly pivot: Point;
  readonly paint: (ink: Ink) => void;
  /** it lies in the ventricle's own lengths, from its base along its axis */
  readonly inVentricle?: true;
}

export function piecesOf(
  anatomy: Anatomy,
  saturations: Saturations,
  outlines: Outlines,
  theme: Theme,
): Readonly<Record<PieceName, Piece>> {
  const { heart, abdomen, frame } = anatomy;
  const s = frame.scale;
  const [sewnIn, hiddenIn, throughIn] = roomsOf(anatomy);
  const hiatus = hiatusOf(anatomy);
  const { svc, ivc } = saturations;
  // Before a Fontan the upper vein's blood alone goes there.
  const toLungs = frame.lowerVein ? svc : (svc + ivc) / 2;
  const round: RoundOf = (holds) =>
    roundOf(holds === "pulmonaryArtery" ? toLungs : saturations[holds], theme);
  const chambers = [heart.atrium, heart.appendage, frame.lowerVein ?? []];
  const [left, bottom, right, top] = boundsOf(chambers, 0);
  const middle: Point = [(left + right) / 2, (bottom + top) / 2];
  const own = { bounds: boundsOf([heart.outside], 3), pivot: [0, 0], inVentricle: true } as const;
  const remainsIn = boundsOf([heart.trunk.line], 14 * heart.size);
  const vessels = vesselsIn(anatomy);
  return {
    ground: still(boundsOf([mediastinum(anatomy)], 20 * s), (ink) => paintMediastinum(ink, anatomy, theme)),
    rightLung: lung(anatomy, 0, round, theme),
    leftLung: lung(anatomy, 1, round, theme),
    back: vessels([...anatomy.behind, { line: anatomy.pericardium }], (...at) =>
      paintBehind(...at, round, theme),
    ),
    hidden: still(hiddenIn, (ink) => {
      joined()?.lining(ink, hiddenIn, anatomy, { outlines, saturations, theme });
      paintHidden(ink, hiddenIn, anatomy, { round, theme });
    }),
    // They go down with what they lead to; lining and seams stay with the pathway.
    shining: still(throughIn, (ink) => {
      joined()?.through(ink, throughIn, anatomy, { outlines, saturations, theme });
    }),
    abdomen: {
      bounds: boundsOf([abdomen.liver, abdomen.diaphragm], 8 * s),
      pivot: [0, 0],
      paint(ink) {
        paintLiver(ink, abdomen, s, theme);
        paintDiaphragm(ink, abdomen, s, theme);
        paintTendon(ink, hiatus, s, theme);
      },
    },
    atrium: {
      bounds: boundsOf(chambers, 4 * heart.size),
      // A vein that enters its floor holds it there.
      pivot: frame.lowerVein ? [lastOf(frame.lowerVein)[0], middle[1]] : heart.base,
      paint(ink) {
        paintAtrium(ink, anatomy, saturations.arterial, theme);
        joined()?.within(ink, anatomy, saturations, theme);
      },
    },
    bed: { ...own, paint: (ink) => paintVentricleBed(ink, heart, theme) },
    cavity: { ...own, paint: (ink) => paintVentricleCavity(ink, heart, saturations.arterial, theme) },
    muscle: { ...own, paint: (ink) => paintMuscle(ink, heart, round("arterial"), theme) },
    inLiver: vessels([...belowDiaphragm(anatomy), ...abdomen.portal], (...at) =>
      paintInLiver(...at, saturations, theme),
    ),
    // It does not beat: beside the conduit's wall that would be seen as a gap that opens.
    rightAtrium: anatomy.rightAtrium
      ? still(boundsOf([anatomy.rightAtrium.outline], 6 * s), (ink) => paintRightAtrium(ink, anatomy, theme))
      : still(NOWHERE, () => {}),
    veins: vessels(
      anatomy.veins.filter(({ group }) => group === "brachiocephalic" || group === "atrium"),
      (...at) => {
        paintVeins(...at, saturations, theme);
        joined()?.floor(at[0], anatomy);
      },
    ),
    hiatus: still(boundsOf([hiatus.rim], 3 * s), (ink) => paintRim(ink, hiatus, s, theme)),
    remains: still(remainsIn, (ink) => {
      paintTrunk(ink, heart, theme);
      underAorta(ink, remainsIn, anatomy);
    }),
    graft: {
      bounds: sewnIn,
      pivot: [0, 0],
      paint(ink) {
        if (frame.graft?.kind === "conduit") paintGraft(ink, frame.graft, s, theme);
        joined()?.sewn(ink, sewnIn, anatomy, { outlines, saturations, theme });
        if (frame.junction) paintJunction(ink, frame.junction, s, theme);
        underAorta(ink, sewnIn, anatomy);
      },
    },
    front: vessels(anatomy.before, (...at) => {
      paintBefore(...at, { ...outlines, round, theme });
      paintRightAppendage(...at, theme);
    }),
    // Before a Fontan the ascending aorta hides all but one edge of them.
    passing: frame.lowerVein
      ? still(NOWHERE, () => {})
      : vessels([...returning(anatomy), ...descending(anatomy)], (...at) =>
          paintPassing(...at, round("arterial"), outlines.seen),
        ),
  };
}

/** Where nothing is painted. */
const NOWHERE: Bounds = [0, 0, 1, 1];

/** Where something is sewn, where that and what stays behind it show through the blood, and where veins do that pass behind it. */
function roomsOf(anatomy: Anatomy): readonly [sewnIn: Bounds, hiddenIn: Bounds, throughIn: Bounds] {
  const { chamber, graft, junction, scale: s } = anatomy.frame;
  const sewn = [
    ...(chamber ? [chamber, [-chamber[0], -chamber[1]] as const] : []),
    ...(graft?.line ?? []),
    ...(junction ? [junction.at] : []),
  ];
  const passing = [...returning(anatomy), ...anatomy.before].map(({ line }) => line);
  const hila = anatomy.lungs.map(({ hilum }) => hilum);
  return [
    sewn.length > 0 ? boundsOf([sewn], 20 * s) : NOWHERE,
    boundsOf([sewn, hila, ...passing], 12 * s),
    chamber || graft?.kind === "patch" ? roomOf(returning(anatomy), s) : NOWHERE,
  ];
}

const vesselsIn =
  (anatomy: Anatomy) =>
  (
    drawn: readonly Pick<Tube, "line">[],
    paint: (ink: Ink, bounds: Bounds, anatomy: Anatomy) => void,
  ): Piece => {
    const bounds = roomOf(drawn, anatomy.frame.scale);
    return still(bounds, (ink) => paint(ink, bounds, anatomy));
  };

const still = (bounds: Bounds, paint: Piece["paint"]): Piece => ({ bounds, pivot: [0, 0], paint });

function lung({ lungs, frame }: Anatomy, side: 0 | 1, round: RoundOf, theme: Theme): Piece {
  const shape = lungs[side];
  const bloods = { arteries: round("pulmonaryArtery"), veins: round("pulmonaryVein") };
  return {
    bounds: boundsOf([shape.outline], 10 * frame.scale),
    pivot: shape.hilum,
    paint: (ink) => paintLung(ink, shape, bloods, frame.scale, theme),
  };
}
