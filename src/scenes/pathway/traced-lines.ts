/** Streamlines of a pane: traced again from time to time while blood moves, and at once where another pathway comes. */
import { Graphics } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import type { FieldShape, FlowField } from "../../sim/flow-field/flow-field.ts";
import { streamlines } from "../../sim/flow-field/streamlines.ts";
import type { PathwayGeometry } from "../../sim/geometry/geometry.ts";
import { drawStreamlines, upTo } from "../layers/streamline-layer.ts";
import type { Theme } from "../theme/theme.ts";
import type { Moment } from "./moment.ts";

/** s between traced sets of streamlines while blood moves. */
const TRACE_EVERY = 0.5;
/** mm between streamlines */
const APART = 5;

export interface TracedLines {
  readonly view: Graphics;
  /** @param scale CSS px of a millimetre */
  draw(geometry: PathwayGeometry, pane: Pane, moment: Moment, scale: number, theme: Theme): void;
}

export function tracedLines(): TracedLines {
  const view = new Graphics();
  let sinceTraced = Number.POSITIVE_INFINITY;
  let name = "";
  let traced: FlowField | null = null;
  let cutFor: FieldShape | null = null;
  let cut: FieldShape | null = null;
  return {
    view,
    draw(geometry, { shape, field }, { view: asked, still, viewport }, scale, theme) {
      sinceTraced += Number.isFinite(viewport.elapsed) ? viewport.elapsed : TRACE_EVERY;
      view.visible = (asked.streamlines || (still && !asked.paused)) && shape !== null && field !== null;
      if (!view.visible || !shape || !field || field === traced) return;
      // Another pathway's lines may not stand a moment longer.
      if (geometry.name === name && sinceTraced < TRACE_EVERY) return;
      sinceTraced = 0;
      name = geometry.name;
      traced = field;
      if (!cut || shape !== cutFor) cut = upTo(shape, geometry.openings);
      cutFor = shape;
      const width = Math.max(0.35, 1.6 / scale);
      drawStreamlines(view, streamlines(cut, field, APART), { shape: cut, field }, width, theme);
    },
  };
}
