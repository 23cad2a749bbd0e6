/** One pathway: its layers from back to front, drawn in mm under one projection. */
import { Container, Graphics } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import type { FieldShape } from "../../sim/flow-field/flow-field.ts";
import { streamlines } from "../../sim/flow-field/streamlines.ts";
import type { PathwayGeometry, Point } from "../../sim/geometry/geometry.ts";
import type { View } from "../../state/scene-state.ts";
import { backdropLayer } from "../layers/backdrop-layer.ts";
import { drawClots } from "../layers/clots.ts";
import { contextLines } from "../layers/context.ts";
import { drawnPlane, type Plane } from "../layers/drawn-plane.ts";
import { type Occupied, occupied } from "../layers/occupied.ts";
import { spotsOf } from "../layers/spots.ts";
import { drawStreamlines, upTo } from "../layers/streamline-layer.ts";
import { type VeilLayer, veilLayer } from "../layers/veil.ts";
import { veinStream } from "../layers/vein-stream.ts";
import { wallLayer } from "../layers/wall.ts";
import { type Box, type Viewport, WITH_ALL } from "../scene.ts";
import { ease } from "../theme/motion.ts";
import type { Theme } from "../theme/theme.ts";
import { blood, headSize } from "./pathway-blood.ts";
import { extent, onPlane, onScreen, type Projection, project } from "./pathway-layout.ts";

interface Moment {
  /** shown beside others: it keeps to its box and never dims */
  readonly compared: boolean;
  readonly view: View;
  readonly time: number;
  readonly still: boolean;
  readonly viewport: Viewport;
}

export interface PaneView {
  readonly view: Container;
  readonly projection: Projection | null;
  readonly geometry: PathwayGeometry | null;
  /** mm: how far a point of the plane is from the wall, negative in the blood; null until drawn */
  readonly plane: Plane | null;
  /** what no plate may cover */
  readonly occupied: Occupied | null;
  draw(pane: Pane, box: Box, moment: Moment, theme: Theme): void;
  toScreen(point: readonly [number, number]): readonly [number, number] | null;
  pick(x: number, y: number): string | null;
  release(): void;
}

/** s between traced sets of streamlines while blood moves. */
const TRACE_EVERY = 0.5;
/** mm between streamlines */
const APART = 5;
/** How near a "close" camera comes, times the whole. */
const CLOSE = 2.4;

export function paneView(): PaneView {
  const view = new Container();
  const plane = new Container();
  const frame = new Graphics();
  const backdrop = backdropLayer();
  const stream = veinStream();
  const wall = wallLayer();
  const inside = blood();
  const lines = new Graphics();
  const clots = new Graphics();
  const veil: VeilLayer = veilLayer();
  plane.addChild(
    backdrop.view,
    stream.view,
    wall.below,
    inside.view,
    inside.beyond,
    lines,
    clots,
    wall.above,
    veil.view,
  );
  view.addChild(plane, frame);
  frame.visible = false;

  let geometry: PathwayGeometry | null = null;
  let outline: Plane | null = null;
  let taken: Occupied | null = null;
  let outlines: readonly (readonly Point[])[] = [];
  let linesOf: PathwayGeometry | null = null;
  let framed = "";
  let drawnFor = "";
  let tracedName = "";
  let projection: Projection | null = null;
  let camera = "";
  let gliding = false;
  let sinceTraced = Number.POSITIVE_INFINITY;
  let tracedField: unknown = null;
  let linedFor: FieldShape | null = null;
  let lined: FieldShape | null = null;

  const look = (pane: Pane, theme: Theme) => {
    const arterial = Math.round(pane.circulation?.saturations.arterial ?? 0);
    const key = `${theme.name} ${arterial}`;
    if (pane.geometry === geometry && key === drawnFor) return;
    geometry = pane.geometry;
    drawnFor = key;
    if (!geometry) return;
    backdrop.set(geometry, pane.circulation, theme);
    outline = drawnPlane(geometry);
    taken = occupied(geometry, outline);
    wall.set(geometry, outline, theme);
  };

  /** A camera that has come close would carry this pathway into its neighbours' boxes. */
  const keepTo = (box: Box, within: boolean) => {
    const key = within ? Object.values(box).join() : "";
    if (key === framed) return;
    framed = key;
    frame.visible = within;
    plane.mask = within ? frame : null;
    frame.clear();
    if (within) frame.rect(box.x, box.y, box.width, box.height).fill(0xffffff);
  };

  const aim = (box: Box, moment: Moment) => {
    if (!geometry) return;
    const whole = project(box, extent(geometry));
    const place = geometry.places.find(({ name }) => name === moment.view.camera);
    const goal = place ? near(whole, box, place.at) : whole;
    const { elapsed } = moment.viewport;
    // Only a change of the camera glides; a new size or new lengths take their place at once.
    if (camera !== moment.view.camera && projection) gliding = true;
    camera = moment.view.camera;
    const wait = gliding ? elapsed : Number.POSITIVE_INFINITY;
    const from = projection ?? goal;
    projection = {
      scale: ease(from.scale, goal.scale, wait, 0.8),
      x: ease(from.x, goal.x, wait, 0.8),
      y: ease(from.y, goal.y, wait, 0.8),
    };
    gliding = projection.scale !== goal.scale || projection.x !== goal.x || projection.y !== goal.y;
    plane.position.set(projection.x, projection.y);
    plane.scale.set(projection.scale, -projection.scale);
  };

  return {
    view,
    get projection() {
      return projection;
    },
    get geometry() {
      return geometry;
    },
    get plane() {
      return outline;
    },
    get occupied() {
      return taken;
    },
    draw(pane, box, moment, theme) {
      look(pane, theme);
      view.visible = geometry !== null;
      if (!geometry) return;
      aim(box, moment);
      keepTo(box, moment.compared && moment.view.camera !== "whole");
      wall.keep(projection!.scale * moment.viewport.dense);
      const { view: asked, still, time, viewport } = moment;
      backdrop.move(pane.circulation, time, still);
      inside.draw(pane, asked, still, projection!, viewport, theme);
      stream.view.visible = asked.overlay === "none";
      if (stream.view.visible)
        stream.draw(
          geometry,
          pane.circulation,
          time,
          asked.colouring,
          headSize(viewport, projection!),
          theme,
        );

      const { shape, field } = pane;
      const wanted = (asked.streamlines || (still && !asked.paused)) && shape !== null && field !== null;
      lines.visible = wanted;
      sinceTraced += Number.isFinite(viewport.elapsed) ? viewport.elapsed : TRACE_EVERY;
      // Another pathway's lines may not stand a moment longer.
      const other = geometry.name !== tracedName;
      if (wanted && field !== tracedField && (other || sinceTraced >= TRACE_EVERY)) {
        sinceTraced = 0;
        tracedName = geometry.name;
        tracedField = field;
        const width = Math.max(0.35, 1.6 / projection!.scale);
        if (shape !== linedFor) lined = upTo(shape, geometry.openings);
        linedFor = shape;
        drawStreamlines(lines, streamlines(lined!, field, APART), lined!, field, width, theme);
      }
      drawClots(clots, pane.clots, theme);
      const lit = spotsOf(geometry, asked.focus);
      if (lit.length > 0 && linesOf !== geometry) {
        linesOf = geometry;
        outlines = contextLines(geometry, outline!);
      }
      veil.draw(lit, !moment.compared, projection!.scale, outlines, viewport.elapsed, theme);
    },
    toScreen: (point) => (projection && geometry ? onScreen(projection, point) : null),
    pick(x, y) {
      if (!projection || !geometry) return null;
      const [px, py] = onPlane(projection, x, y);
      let best: string | null = null;
      let nearest = 1;
      for (const { element, area } of geometry.path) {
        if (!area) continue;
        const distance = Math.hypot(px - area.centre[0], py - area.centre[1]) / area.radius;
        if (distance < nearest) {
          nearest = distance;
          best = element;
        }
      }
      return best;
    },
    release() {
      inside.release();
      view.destroy(WITH_ALL);
    },
  };
}

function near(whole: Projection, box: Box, at: readonly [number, number]): Projection {
  const scale = CLOSE * whole.scale;
  return { scale, x: box.x + box.width / 2 - scale * at[0], y: box.y + box.height / 2 + scale * at[1] };
}
