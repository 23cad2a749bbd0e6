/** The chest around a pathway in two layers: what lies behind its vessels, and the aorta before them. Painted once, moved by the circulation. */
import { Container } from "pixi.js";
import { lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import { type Anatomy, anatomyOf } from "./chest.ts";
import type { Holds, Tube } from "./great-vessels.ts";
import type { Standing } from "./motion.ts";
import { paintAbdomen, paintDiaphragm } from "./paint-abdomen.ts";
import { paintAtrium, paintMuscle, paintRoot, paintVentricleCavity } from "./paint-heart.ts";
import { paintLung } from "./paint-lung.ts";
import { laidOver, paintTube, scratch } from "./paint-tube.ts";
import { boundsOf, type Ink, type Painted, sheet, trace } from "./sheet.ts";
import { hollow, roundOf } from "./tones.ts";
import { valves } from "./valves.ts";

export interface Surface {
  /** closed lines (mm, x and y in turn) around the pathway's vessels, which the aorta lets through */
  readonly seen: readonly (readonly number[])[];
  /** device pixels a millimetre */
  readonly density: number;
}

export interface AnatomyLayer {
  /** behind the pathway's vessels, and before them */
  readonly behind: Container;
  readonly before: Container;
  set(frame: ChestFrame, circulation: Circulation | null, surface: Surface, theme: Theme): void;
  move(standing: Standing): void;
  release(): void;
}

/** mm of a 5-year-old: a great vessel's wall. */
const WALL = 1;
/** What stays of the aorta over the pathway's blood. */
const GLASS = 0.3;
/** mm of a 5-year-old by which the dome goes down for each part that the lungs widen, and part of it that its ends follow. */
const DESCENT = 75;
/** Part of a cavity's change that its muscle's outside follows: the wall keeps its volume. */
const OUTSIDE = 0.35;

export function anatomyLayer(): AnatomyLayer {
  const behind = new Container();
  const before = new Container();
  const ventricle = new Container();
  const sheets = {
    right: sheet(),
    left: sheet(),
    abdomen: sheet(),
    back: sheet(),
    atrium: sheet(),
    cavity: sheet(),
    muscle: sheet(),
    veins: sheet(),
    front: sheet(),
  };
  const leaflets = valves();
  const base = new Container();
  base.addChild(leaflets.view);
  ventricle.addChild(sheets.cavity.view, sheets.muscle.view);
  behind.addChild(
    sheets.right.view,
    sheets.left.view,
    sheets.back.view,
    sheets.abdomen.view,
    sheets.atrium.view,
    ventricle,
    sheets.veins.view,
  );
  before.addChild(sheets.front.view, base);
  let size = 1;

  return {
    behind,
    before,
    set(frame, circulation, surface, theme) {
      const anatomy = anatomyOf(frame);
      size = frame.scale;
      const saturation = (holds: Holds): number => circulation?.saturations[holds] ?? UNSOLVED[holds];
      const tubes = (ink: Ink, drawn: readonly Tube[]) => {
        for (const tube of drawn) paintTube(ink, tube, roundOf(saturation(tube.holds), theme), WALL * size);
      };
      paintLungs(sheets, anatomy, saturation, surface.density, theme);
      paintHeart(sheets, anatomy, saturation("arterial"), surface.density, theme);
      const { heart, abdomen } = anatomy;
      for (const part of [ventricle, base]) {
        part.position.set(...heart.base);
        part.rotation = heart.lean;
        part.scale.set(heart.size);
      }
      leaflets.set(theme);
      const low = boundsOf([abdomen.liver, abdomen.diaphragm, ...linesOf(abdomen.portal)], 8 * size);
      sheets.abdomen.paint(low, surface.density, middleOf(abdomen.diaphragm), (ink) => {
        paintAbdomen(ink, abdomen, saturation("ivc"), size, theme);
        paintDiaphragm(ink, abdomen, size, theme);
      });
      const over = (tubes: readonly Tube[]) => boundsOf(linesOf(tubes), 12 * size);
      sheets.back.paint(over(anatomy.behind), surface.density, [0, 0], (ink) => tubes(ink, anatomy.behind));
      sheets.veins.paint(over(anatomy.veins), surface.density, [0, 0], (ink) => {
        for (const vein of anatomy.veins) paintTube(ink, vein, hollow(theme), 2 * size);
      });
      sheets.front.paint(over(anatomy.before), surface.density, [0, 0], (ink) => {
        const own = scratch(ink);
        tubes(own, anatomy.before);
        paintRoot(own, lastOf(anatomy.before), saturation("arterial"), theme);
        letThrough(own, anatomy, surface.seen);
        laidOver(ink, own);
      });
    },
    move(standing) {
      const { lungs } = standing;
      for (const lung of [sheets.right.view, sheets.left.view]) lung.scale.set(lungs);
      sheets.abdomen.view.y = sheets.abdomen.view.pivot.y - (lungs - 1) * DESCENT * size;
      sheets.atrium.view.scale.set(standing.atrium);
      sheets.cavity.view.scale.set(standing.ventricle);
      sheets.muscle.view.scale.set(1 + (standing.ventricle - 1) * OUTSIDE);
      leaflets.move(standing);
    },
    release() {
      for (const each of Object.values(sheets)) each.release();
    },
  };
}

/** Percent until a circulation is solved. */
const UNSOLVED: Readonly<Record<Holds, number>> = { arterial: 75, pulmonaryVein: 96, svc: 60, ivc: 60 };

const linesOf = (tubes: readonly Tube[]) => tubes.map(({ line }) => line);

const middleOf = (line: readonly Point[]): Point => line[line.length >> 1] ?? [0, 0];

type Saturation = (holds: Holds) => number;

function paintLungs(
  sheets: Readonly<Record<"right" | "left", Painted>>,
  { lungs, frame }: Anatomy,
  saturation: Saturation,
  density: number,
  theme: Theme,
): void {
  const bloods = {
    arteries: roundOf((saturation("svc") + saturation("ivc")) / 2, theme),
    veins: roundOf(saturation("pulmonaryVein"), theme),
  };
  for (const lung of lungs)
    sheets[lung.side].paint(boundsOf([lung.outline], 10 * frame.scale), density, lung.hilum, (ink) =>
      paintLung(ink, lung, bloods, frame.scale, theme),
    );
}

function paintHeart(
  sheets: Readonly<Record<"atrium" | "cavity" | "muscle", Painted>>,
  { heart }: Anatomy,
  saturation: number,
  density: number,
  theme: Theme,
): void {
  const room = boundsOf([heart.atrium], 4 * heart.size);
  const middle: Point = [(room[0] + room[2]) / 2, (room[1] + room[3]) / 2];
  sheets.atrium.paint(room, density, middle, (ink) => paintAtrium(ink, heart, saturation, theme));
  const own = boundsOf([heart.muscle], 3);
  const fine = density * heart.size;
  sheets.cavity.paint(own, fine, [0, 0], (ink) => paintVentricleCavity(ink, heart, saturation, theme));
  sheets.muscle.paint(own, fine, [0, 0], (ink) => paintMuscle(ink, heart, theme));
}

/** Where the aorta passes the pathway it turns to glass; the vein from the left arm lies before its branches. */
function letThrough(ink: Ink, { veins, frame }: Anatomy, seen: Surface["seen"]): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  ink.beginPath();
  for (const loop of seen) {
    for (let i = 0; i < loop.length; i += 2)
      ink[i === 0 ? "moveTo" : "lineTo"](loop[i] ?? 0, loop[i + 1] ?? 0);
    ink.closePath();
  }
  ink.globalAlpha = 1 - GLASS;
  ink.fill();
  ink.globalAlpha = 1;
  for (const vein of veins.filter(({ name }) => /Brachio/.test(name))) {
    trace(ink, vein.line);
    ink.lineCap = "butt";
    ink.lineWidth = (vein.from + vein.to) / 2 + 2 * WALL * frame.scale;
    ink.stroke();
  }
  ink.restore();
}
