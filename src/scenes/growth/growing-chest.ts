/** A chest under a lens: the one anatomy around its own pathway, to scale. */
import { Container, Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { band } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, PathwayGeometry, Point } from "../../sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../sim/geometry/pathways/index.ts";
import { anatomyLayer } from "../anatomy/anatomy-layer.ts";
import "../anatomy/stages/index.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { beside } from "../anatomy/graft-course.ts";
import { paintGraft, paintJunction, paintSewnBehind } from "../anatomy/paint-graft.ts";
import { type Bounds, type Ink, servesAt, sheet, trace } from "../anatomy/painted-sheet.ts";
import { PIECES } from "../anatomy/pieces.ts";
import { standingAt } from "../anatomy/standing.ts";
import { CLOTH, inside, roundOf } from "../anatomy/tones.ts";
import { skinOf } from "../circuit/paint-figure.ts";
import type { Loop } from "../layers/contour.ts";
import { drawnPlane } from "../layers/drawn-plane.ts";
import { surfaceOf } from "../layers/surface.ts";
import { wallLayer } from "../layers/wall.ts";
import { mix, seeThrough } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { carriedOf, saturationsOf } from "../theme/unsolved.ts";
import { type LensPlace, lensOf } from "./lens-place.ts";

export interface GrowingChest {
  readonly view: Container;
  /** @returns whether it was painted anew, which takes a while */
  draw(point: SweepPoint, place: LensPlace, moment: Moment, theme: Theme): boolean;
  release(): void;
}

export interface Moment {
  /** s of the running clock */
  readonly time: number;
  /** nothing moves */
  readonly still: boolean;
  /** device pixels of a CSS pixel */
  readonly dense: number;
}

/** How much blood tints the lumen in which its marks move. */
const TINT = 0.75;
/** How much is left of what lies around heart and tube. */
const ASIDE = 0.55;
/** How much of the fabric hides the blood behind it. */
const CLOTHED = 0.8;
/** CSS px that a millimetre of fabric, rings and stitches takes at least, or they would not be seen. */
const BOLD = 1.6;

export function growingChest(): GrowingChest {
  const [view, plane] = [new Container(), new Container()];
  const [mask, ground] = [new Graphics(), new Graphics()];
  const trunk = new Container();
  const layer = anatomyLayer(PIECES.filter((name) => name !== "ground" && name !== "remains"));
  const wall = wallLayer();
  const [blood, sewn] = [sheet(), sheet()];
  const { pieces } = layer;
  for (const name of ["rightLung", "leftLung", "abdomen"] as const) pieces[name].alpha = ASIDE;
  for (const name of ["rightLung", "leftLung", "back", "abdomen", "inLiver", "atrium"] as const)
    trunk.addChild(pieces[name]);
  trunk.addChild(
    layer.ventricle,
    pieces.rightAtrium,
    pieces.veins,
    wall.below,
    pieces.hidden,
    pieces.shining,
  );
  trunk.addChild(blood.view, wall.above);
  trunk.addChild(pieces.hiatus, pieces.graft, sewn.view, pieces.front, pieces.passing, layer.valves);
  plane.addChild(ground, trunk, mask);
  trunk.mask = mask;
  view.addChild(plane);
  let [known, fine] = ["", 0];
  return {
    view,
    draw({ request, circulation }, place, { time, still, dense }, theme) {
      const density = place.perMillimetre * dense;
      const key = JSON.stringify([request, carriedOf(circulation), theme.name]);
      const anew = key !== known || !servesAt(fine, density);
      if (anew) {
        const geometry = present(pathwayGeometry(request));
        [known, fine] = [key, density];
        const outline = drawnPlane(geometry);
        const surface = surfaceOf(outline, density);
        layer.set(geometry.chest, circulation, surface, theme);
        wall.set(geometry, outline, theme);
        wall.keep(density);
        const { chest } = geometry;
        const { middle, reach } = lensOf(chest);
        mask
          .clear()
          .circle(...middle, reach)
          .fill(0xffffff);
        ground
          .clear()
          .circle(...middle, reach)
          .fill(skinOf(theme).body);
        const [x, y] = middle;
        const seen: Bounds = [x - reach, y - reach, x + reach, y + reach];
        const bold = { ...chest, scale: Math.max(chest.scale, BOLD / place.perMillimetre) };
        blood.paint(seen, density, [0, 0], (ink) => {
          paintBlood(ink, geometry, circulation, surface.lumen, theme);
          // Twice: a graft is to be told from a vein at a glance.
          for (const _ of [0, 1]) paintSewnBehind(ink, bold, theme);
        });
        // A conduit with its joint is painted here, bolder than the chest's own piece has it.
        const conduit = chest.graft?.kind === "conduit" ? chest.graft : null;
        pieces.graft.visible = conduit === null;
        sewn.paint(seen, density, [0, 0], (ink) => {
          if (!conduit) return;
          paintCloth(ink, conduit, place.perMillimetre, theme);
          paintGraft(ink, conduit, bold.scale, theme);
          if (chest.junction) paintJunction(ink, chest.junction, bold.scale, theme);
        });
        plane.pivot.set(...middle);
      }
      layer.move(standingAt(circulation, time, still));
      plane.scale.set(place.perMillimetre, -place.perMillimetre);
      plane.position.set(place.x, place.y);
      return anew;
    },
    release() {
      for (const each of [layer, wall, blood, sewn]) each.release();
    },
  };
}

/** So that fabric is told from vessels at a glance. */
function paintCloth(
  ink: Ink,
  graft: NonNullable<ChestFrame["graft"]>,
  perMillimetre: number,
  theme: Theme,
): void {
  const side = (way: 1 | -1) => Array.from({ length: 25 }, (_, i) => beside(graft, i / 24, way));
  trace(ink, [...side(1), ...side(-1).reverse()], true);
  ink.fillStyle = seeThrough(CLOTH[theme.name].body, CLOTHED);
  ink.fill();
  for (const [width, colour] of [
    [6, theme.colour.stage],
    [2.4, theme.colour.ink],
  ] as const) {
    ink.lineWidth = width / perMillimetre;
    ink.strokeStyle = colour;
    ink.stroke();
  }
}

/** The blood of the pathway and of the veins that feed it, from below upwards. */
function paintBlood(
  ink: Ink,
  { bounds: [, bottom, , top], chest }: PathwayGeometry,
  circulation: Circulation | null,
  lumen: readonly Loop[],
  theme: Theme,
): void {
  const { svc, ivc } = saturationsOf(circulation);
  const tint = ink.createLinearGradient(0, bottom, 0, top);
  const toneOf = (saturation: number) => mix(inside(theme).body, roundOf(saturation, theme).body, TINT);
  tint.addColorStop(0.4, toneOf(ivc));
  tint.addColorStop(0.9, toneOf(svc));
  const fill = (outline: readonly Point[], style: string | CanvasGradient) => {
    trace(ink, outline, true);
    ink.fillStyle = style;
    ink.fill();
  };
  for (const loop of lumen) fill(pointsOf(loop), tint);
  if (chest.chamber) showWithin(ink, chest.chamber);
  const { veins } = anatomyOf(chest);
  for (const { line, from, to } of veins.filter(({ group }) => group === "cava"))
    fill(band(line, from, to), tint);
  for (const { line, from, to, fades } of veins.filter(({ group }) => group === "brachiocephalic")) {
    // As its walls do, it is lost in the body.
    const whole = entryAt(line, Math.floor(FADES * (line.length - 1)));
    const fall = ink.createLinearGradient(...entryAt(line, 0), ...whole);
    fall.addColorStop(0, seeThrough(toneOf(svc), 0));
    fall.addColorStop(1, toneOf(svc));
    fill(band(line, from, to), fades ? fall : tint);
  }
}

/** Of an atrium that is the pathway the lining and the mouth that is sewn to the artery show through its blood. */
function showWithin(ink: Ink, [across, up]: Point): void {
  const clear = ink.createRadialGradient(0, 0, 0.78 * across, 0, 0, across);
  clear.addColorStop(0, "#000000b0");
  clear.addColorStop(1, "#00000000");
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  ink.scale(1, up / across);
  ink.fillStyle = clear;
  ink.fillRect(-across, -across, 2 * across, 2 * across);
  ink.restore();
}

/** Part of a vein's way over which it fades. */
const FADES = 0.4;

const pointsOf = (loop: Loop): readonly Point[] =>
  Array.from({ length: loop.length / 2 }, (_, i) => [entryAt(loop, 2 * i), entryAt(loop, 2 * i + 1)]);
