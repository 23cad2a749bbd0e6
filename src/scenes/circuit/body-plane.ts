/** The body in its own plane: figure, organs, vessels and their blood in the one order in which they cross. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { type Bounds, type Ink, sheet } from "../anatomy/painted-sheet.ts";
import { lungsAt } from "../anatomy/standing.ts";
import type { Brush } from "../drawing/brush.ts";
import type { Fit } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import { seeThrough } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { drawAirways } from "./airways.ts";
import { CHEST, LOOK } from "./arrange.ts";
import { paintBehindPathway } from "./behind-pathway.ts";
import { drawLit, drawVessels } from "./body-drawing.ts";
import type { Laid } from "./dots.ts";
import { type DrawnLayer, drawnLayer, layingOf, turned } from "./drawn-layer.ts";
import { effort } from "./effort.ts";
import type { Emphasis } from "./emphasis.ts";
import { drawFace } from "./face-drawing.ts";
import { flowing, type Part } from "./flowing.ts";
import { paintFlush } from "./legs.ts";
import { paintedBody } from "./painted-body.ts";
import { overOrgans, paintedChest } from "./painted-chest.ts";
import { type Extent, GROWN, type Proportions, THIGHS } from "./proportions.ts";
import { drawThroughLiver, fillTrunk } from "./silhouette.ts";
import { descentAt, heartHung } from "./sinking.ts";
import { heartMarks, type Marks } from "./two-ventricles/heart-marks.ts";

/** Device pixels of a CSS pixel for which the moving organs are painted. */
const DENSE = 1.25;

/** CSS px that a mark of a plane unit's size would have, and how much larger or smaller than in the plane marks become. */
const GRAIN = { unit: 0.6, least: 0.7, most: 1.8 } as const;

/** Marks can be read at any size of the body, and go with the heart. A box around heart and lungs shows more than their extent beside it. */
const marksOf = (shown: Extent, whole: Extent, scale: number, { circulation, time, still }: Moved): Part => {
  const unit = Math.min(GRAIN.most, Math.max(GRAIN.least, GRAIN.unit / scale));
  const lungs = shown === CHEST ? 1 : lungsAt(circulation, time, still);
  const hung = heartHung(circulation.request.stage, lungs);
  return shown === LOOK
    ? { grain: LARGER.size * unit, number: LARGER.number, extent: LOOK, hung }
    : { grain: unit, extent: whole, hung };
};

/** What is enlarged has fewer and larger marks: they take most of a frame's time where the processor draws. */
const LARGER = { size: 1.2, number: 0.5 } as const;

interface Lies {
  readonly box: Box;
  readonly dense: number;
  readonly proportions: Proportions;
}

interface Moved {
  readonly circulation: Circulation;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
  readonly marks?: Marks;
}

/** Plane units by which the dome stands lower than at rest. */
const fallOf = ({ circulation, time, still }: Moved): number => descentAt(lungsAt(circulation, time, still));

export interface BodyPlane {
  readonly view: Container;
  /** Lays the plane into its box, and ends what of the body does not belong to the extent. */
  lay(extent: Extent, fit: Fit, on: Lies, theme: Theme): void;
  /** What stands: vessels and their walls. */
  stand(laid: readonly Laid[], circulation: Circulation, theme: Theme, emphasis: Emphasis): void;
  /** Goes towards the circulation's flows, in s of wall clock; whether what stands has to be drawn again. */
  follow(circulation: Circulation, elapsed: number): boolean;
  move(moved: Moved, theme: Theme, emphasis: Emphasis): void;
  release(): void;
}

/** What lies under the liver, behind the heart, and before it; what is pointed at lies over what it crosses. */
function inDepth(laid: readonly Laid[], lit: ReadonlySet<string>): Readonly<Record<Depth, readonly Laid[]>> {
  const shown = ({ vessel }: Laid) => lit.has(vessel.name);
  const depthOf = (each: Laid): Depth =>
    shown(each) ? "shown" : each.vessel.under ? "under" : each.vessel.behind ? "behind" : "before";
  const at = (depth: Depth) => laid.filter((each) => depthOf(each) === depth);
  return { under: at("under"), behind: at("behind"), before: at("before"), shown: at("shown") };
}
type Depth = "under" | "behind" | "before" | "shown";

/** Plane units over which thighs are lost in the ground; y up, as sheets are painted. */
const MIST: Bounds = [0, -THIGHS - 20, 1000, -THIGHS + 130];

function paintMist(ink: Ink, { colour: { stage } }: Theme): void {
  const [left, bottom, right, top] = MIST;
  const fall = ink.createLinearGradient(0, top, 0, bottom + 20);
  fall.addColorStop(0, seeThrough(stage, 0));
  fall.addColorStop(1, stage);
  ink.fillStyle = fall;
  ink.fillRect(left, bottom, right - left, top - bottom);
}

/** What of the plane a box shows. */
const seenIn = ({ x, y, width, height }: Box, fit: Fit): Extent => ({
  left: (x - fit.x) / fit.scale,
  top: (y - fit.y) / fit.scale,
  right: (x + width - fit.x) / fit.scale,
  bottom: (y + height - fit.y) / fit.scale,
});

export function bodyPlane(): BodyPlane {
  const [view, plane] = [new Container(), new Container()];
  const blood = flowing();
  const fine = heartMarks();
  const [under, back, front] = [drawnLayer(), drawnLayer(), drawnLayer()];
  const [lights, frame] = [drawnLayer(), new Graphics()];
  const [ends, red] = [sheet(), sheet()];
  const flush = turned(red);
  const mist = turned(ends);
  const [body, chest, streams] = [paintedBody(), paintedChest(), effort()];
  chest.underDiaphragm.addChild(under.view);
  const trunk = fillTrunk(new Graphics());
  plane.addChild(
    body.behind,
    flush,
    trunk,
    chest.organs,
    ...overOrgans(chest, { ...blood, fine: fine.view }, { behind: back.view, front: front.view }),
    body.before,
    lights.view,
    mist,
  );
  view.addChild(plane, frame);
  let close = false;
  let grown = GROWN;
  let shown = grown.body;
  let laying = layingOf(shown, { scale: 1, x: 0, y: 0 }, 1);
  return {
    view,
    lay(extent, fit, { box, dense, proportions }, theme) {
      grown = proportions;
      plane.scale.set(fit.scale);
      plane.position.set(fit.x, fit.y);
      close = extent === CHEST;
      shown = extent;
      laying = layingOf(close ? seenIn(box, fit) : extent, fit, dense);
      for (const part of [body.behind, body.before, trunk]) part.visible = !close;
      // A body holds its organs.
      chest.organs.mask = close ? null : trunk;
      mist.visible = extent === grown.thighs;
      if (mist.visible) ends.paint(MIST, 1, [0, 0], (ink) => paintMist(ink, theme));
      // Thighs end under the mist.
      frame.clear().visible = extent === grown.thighs;
      const height = fit.y + extent.bottom * fit.scale - box.y;
      if (frame.visible) frame.rect(box.x, box.y, box.width, Math.max(1, height)).fill(0xffffff);
      plane.mask = frame.visible ? frame : null;
    },
    stand(laid, circulation, theme, emphasis) {
      const wide = close ? laid : streams.widened(laid);
      blood.follow(wide, circulation);
      const draw = (layer: DrawnLayer, paint: (ink: Brush) => void) => layer.draw(laying, paint);
      lights.view.visible = !close && emphasis.lit.size > 0;
      if (lights.view.visible) draw(lights, (ink) => drawLit(ink, emphasis.lit, theme));
      // What is enlarged ends where the thighs begin.
      flush.visible = !close && shown !== LOOK && streams.flush() > 0;
      if (flush.visible)
        red.paint(laying.room, laying.density, [0, 0], (ink) =>
          paintFlush(ink, streams.flush(), grown, theme),
        );
      const depth = inDepth(wide, emphasis.lit);
      draw(under, (ink) => {
        if (!close) drawAirways(ink, theme);
        drawVessels(ink, depth.under, circulation, theme, emphasis);
      });
      draw(back, (ink) => {
        drawThroughLiver(ink, depth.under, circulation, theme);
        drawVessels(ink, depth.behind, circulation, theme, emphasis);
      });
      front.draw(
        laying,
        (ink) => {
          drawVessels(ink, [...depth.before, ...depth.shown], circulation, theme, emphasis);
          if (!close) drawFace(ink, grown, theme);
        },
        (ink) => paintBehindPathway(ink, laid, circulation, theme, emphasis),
      );
    },
    follow: (circulation, elapsed) => streams.follow(circulation, elapsed),
    move(moved, theme, emphasis) {
      const { circulation, time, still, marks } = moved;
      if (!close) body.draw(laying, { proportions: grown, fall: fallOf(moved) }, theme, emphasis);
      chest.draw({ circulation, time, still, close }, plane.scale.x * DENSE, theme, emphasis);
      const finely = close && !still && marks !== undefined;
      fine.view.visible = finely;
      for (const layer of [blood.behind, blood.front]) layer.visible = !finely;
      if (!finely) blood.move(time, still, theme, emphasis, marksOf(shown, grown.body, plane.scale.x, moved));
      else fine.draw(circulation, time, marks, { x: plane.x, y: plane.y, scale: plane.scale.x }, theme);
    },
    release() {
      for (const part of [blood, fine, chest, body, ends, red, under, back, front, lights]) part.release();
    },
  };
}
