/** One pathway: its layers from back to front, drawn in mm under one projection. */
import { Container, Graphics } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import { present } from "../../sim/checked/present.ts";
import type { PathwayGeometry, Point } from "../../sim/geometry/geometry.ts";
import { keptPicture } from "../drawing/kept-picture.ts";
import { drawClots } from "../layers/clots.ts";
import { contextLines } from "../layers/context.ts";
import { drawnPlane, type Plane } from "../layers/drawn-plane.ts";
import { ghostLayer } from "../layers/ghost.ts";
import { type Occupied, occupied } from "../layers/occupied.ts";
import { elementAt, spotsOf } from "../layers/spots.ts";
import { type VeilLayer, veilLayer } from "../layers/veil.ts";
import { wallLayer } from "../layers/wall.ts";
import { type Box, WITH_ALL } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationsOf } from "../theme/unsolved.ts";
import { paneCamera } from "./camera.ts";
import { chestView } from "./chest-view.ts";
import type { Moment } from "./moment.ts";
import { blood } from "./pathway-blood.ts";
import { onPlane, onScreen, type Projection, type Sight } from "./pathway-layout.ts";
import { tracedLines } from "./traced-lines.ts";

/** Where a pathway lies, CSS px. */
export interface Room {
  readonly box: Box;
  /** Where another pathway lies in the same box: what is seen of this one, and what both cameras look at. */
  readonly shared?: { readonly side: Box; readonly sight: Sight } | undefined;
}

export interface PaneView {
  readonly view: Container;
  readonly projection: Projection | null;
  readonly geometry: PathwayGeometry | null;
  /** mm: how far a point of the plane is from the wall, negative in the blood; null until drawn */
  readonly plane: Plane | null;
  /** all that lies around the pathway is painted */
  readonly whole: boolean;
  /** what no plate may cover */
  readonly occupied: Occupied | null;
  /** @param due what moves slowly, heart and breath, goes on in this drawing */
  draw(pane: Pane, room: Room, moment: Moment, theme: Theme, due: boolean): void;
  toScreen(point: readonly [number, number]): readonly [number, number] | null;
  pick(x: number, y: number): string | null;
  release(): void;
}

/** What a pane is drawn with, from the back to the front. */
function paneLayers() {
  const [view, all, frame, clots] = [new Container(), new Container(), new Graphics(), new Graphics()];
  const planes = [new Container(), new Container(), new Container()] as const;
  const chest = chestView();
  const wall = wallLayer();
  const inside = blood();
  const lines = tracedLines();
  const ghost = ghostLayer();
  const veil: VeilLayer = veilLayer();
  planes[0].addChild(chest.behind, wall.below, chest.hidden);
  planes[1].addChild(inside.view, inside.beyond, lines.view, clots);
  planes[2].addChild(wall.above, chest.before, ghost.view, veil.view);
  const kept = [keptPicture(planes[0]), keptPicture(planes[2])] as const;
  all.addChild(kept[0].view, planes[1], kept[1].view);
  view.addChild(all, frame);
  return { view, all, frame, planes, kept, chest, wall, inside, lines, clots, ghost, veil };
}

export function paneView(): PaneView {
  const { view, all, frame, planes, kept, chest, wall, inside, lines, clots, ghost, veil } = paneLayers();
  const keepTo = clipper(all, frame);
  const camera = paneCamera();

  let geometry: PathwayGeometry | null = null;
  let outline: Plane | null = null;
  let taken: Occupied | null = null;
  let outlines: readonly (readonly Point[])[] = [];
  let linesOf: PathwayGeometry | null = null;
  let drawnFor = "";
  let whole = false;

  const look = (pane: Pane, theme: Theme) => {
    if (pane.geometry === geometry && theme.name === drawnFor) return;
    geometry = pane.geometry;
    drawnFor = theme.name;
    if (!geometry) return;
    outline = drawnPlane(geometry);
    taken = null;
    wall.set(geometry, outline, theme);
  };

  return {
    view,
    get projection() {
      return camera.projection;
    },
    get geometry() {
      return geometry;
    },
    get plane() {
      return outline;
    },
    get whole() {
      return whole;
    },
    get occupied() {
      if (geometry && outline) taken ??= occupied(geometry, outline);
      return taken;
    },
    draw(pane, { box, shared }, shown, theme, due) {
      look(pane, theme);
      view.visible = geometry !== null && shared?.side.width !== 0;
      if (!geometry || !view.visible) return;
      const moment = shared ? seenIn(shared.side, shown) : shown;
      const { view: asked, viewport, compared } = moment;
      const before = camera.projection;
      const at = camera.aim(geometry, box, moment, shared?.sight);
      for (const plane of planes) {
        plane.position.set(at.x, at.y);
        plane.scale.set(at.scale, -at.scale);
      }
      keepTo(shared?.side ?? (compared && asked.camera !== "whole" ? box : null));
      // Painting the walls once more would keep the first blood waiting.
      if (!moment.first) wall.fill(saturationsOf(pane.circulation));
      wall.keep(at.scale * viewport.dense);
      const seen = chest.draw(pane, present(outline), at.scale, moment, theme);
      whole = seen !== null;
      inside.draw(pane, moment, at, seen, theme);
      lines.draw(geometry, pane, moment, at.scale, theme);
      drawClots(clots, pane.clots, theme);
      ghost.draw(pane.before?.geometry ?? null, geometry, at.scale, theme);
      const lit = spotsOf(geometry, asked.focus);
      if (lit.length > 0 && linesOf !== geometry) {
        linesOf = geometry;
        outlines = contextLines(geometry, present(outline));
      }
      veil.draw({ lit, dims: !compared, outlines, pxPerMm: at.scale }, viewport.elapsed, theme);
      // What changes by itself, or is cut off, is drawn as it is.
      const rests =
        Number.isFinite(viewport.elapsed) &&
        !all.mask &&
        !veil.view.visible &&
        chest.arrived &&
        before?.scale === at.scale &&
        before.x === at.x &&
        before.y === at.y;
      if ((due || !rests) && !moment.first) chest.move(pane, moment);
      for (const each of kept) each.draw(rests ? viewport : null, due);
    },
    toScreen: (point) => (camera.projection && geometry ? onScreen(camera.projection, point) : null),
    pick: (x, y) =>
      camera.projection && geometry ? elementAt(geometry, onPlane(camera.projection, x, y)) : null,
    release() {
      for (const each of kept) each.release();
      inside.release();
      chest.release();
      wall.release();
      view.destroy(WITH_ALL);
    },
  };
}

/** What lies beyond an edge need not be drawn. */
const seenIn = (side: Box, moment: Moment): Moment => ({
  ...moment,
  viewport: { ...moment.viewport, full: side },
});

/** A camera that has come close would carry this pathway into its neighbours' boxes: null where there is none to keep to. */
export function clipper(plane: Container, frame: Graphics): (box: Box | null) => void {
  let framed = "";
  frame.visible = false;
  return (box) => {
    const key = box ? Object.values(box).join() : "";
    if (key === framed) return;
    framed = key;
    frame.visible = box !== null;
    plane.mask = box ? frame : null;
    frame.clear();
    if (box) frame.rect(box.x, box.y, box.width, box.height).fill(0xffffff);
  };
}
