/** What moves inside the walls, and through the hole in them: the field's map and the tracers, coloured as the view asks. */
import { Container } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import { present } from "../../sim/checked/present.ts";
import type { FieldShape } from "../../sim/flow-field/flow-field.ts";
import type { FieldMeans } from "../../sim/flow-field/means.ts";
import type { Tracers } from "../../sim/tracers/tracers.ts";
import type { Overlay } from "../../state/scene-state.ts";
import { seenUnder } from "../anatomy/covers.ts";
import { among, DENSE, markDensity } from "../anatomy/mark-density.ts";
import { type SideFlow, sideFlow } from "../anatomy/side-streams.ts";
import { lungsAt } from "../anatomy/standing.ts";
import { fadeAtOpenings } from "../layers/fade-tracers.ts";
import { tracerJoiner } from "../layers/joined-tracers.ts";
import { overlayLayer } from "../layers/overlay.ts";
import { diluted, tint, tintRich } from "../layers/tint.ts";
import { type Brush, headSize, TAIL, tracerView } from "../layers/tracer-view.ts";
import { rgb } from "../theme/colour.ts";
import { packed } from "../theme/maps.ts";
import { ease } from "../theme/motion.ts";
import type { Theme } from "../theme/theme.ts";
import type { SeenChest } from "./chest-view.ts";
import { mapShown } from "./map-remarks.ts";
import type { Moment } from "./moment.ts";
import type { Projection } from "./pathway-layout.ts";

export interface Blood {
  /** within the walls */
  readonly view: Container;
  /** beyond them, before the atrium */
  readonly beyond: Container;
  /** @param chest once the vessels beyond the openings can be seen */
  draw(pane: Pane, moment: Moment, at: Projection, chest: SeenChest | null, theme: Theme): void;
  release(): void;
}

/** Share of the lumen that heads may cover: more would be a coat of paint, in which no motion shows. */
const COVER = 0.28;
/** The same over a map, which is what is to be read. */
const HINT = 0.05;
/** Tracers over a map: what stands out from most of it. */
const OVER_MAP = { speed: "#ffffff", pressure: "#000814", loss: "#ffffff" } as const;

/** The map under the tracers; its drawing answers whether one is shown. */
function mapView(view: Container) {
  const map = overlayLayer();
  map.view.alpha = 0;
  view.addChild(map.view);
  let mapped: FieldMeans | null = null;
  let mappedAs: Overlay = "none";
  let mappedShape: FieldShape | null = null;
  const draw = (pane: Pane, overlay: Overlay, elapsed: number) => {
    const shown = mapShown(pane, overlay);
    // A map of other walls goes at once; the flow's own come and go softly.
    const fits = pane.shape !== null && mappedShape === pane.shape;
    map.view.alpha = fits || shown ? ease(map.view.alpha, shown ? 1 : 0, elapsed) : 0;
    map.view.visible = map.view.alpha > 0;
    if (!shown || overlay === "none" || (pane.means === mapped && overlay === mappedAs)) return shown;
    mapped = present(pane.means);
    mappedAs = overlay;
    mappedShape = pane.shape;
    map.draw(present(pane.shape), pane.geometry?.openings ?? [], mapped[overlay], overlay);
    return shown;
  };
  return { draw, release: map.release };
}

export function blood(): Blood {
  const view = new Container();
  const beyond = new Container();
  const map = mapView(view);
  const inside = tracerView(view);
  const outside = tracerView(beyond);
  let measuredShape: FieldShape | null = null;
  let lumen = 0;
  const sides = sideFlow();
  const joiner = tracerJoiner();

  return {
    view,
    beyond,
    draw(pane, { view: asked, still, viewport, time }, at, chest, theme) {
      const { shape, tracers, throughHole: gone } = pane;
      const { overlay } = asked;
      const covered = map.draw(pane, overlay, viewport.elapsed);
      if (!tracers || tracers.count === 0) {
        inside.hide();
        outside.hide();
        return;
      }
      const half = headSize(viewport, at);
      if (shape !== measuredShape) {
        [measuredShape, lumen] = [shape, lumenArea(shape)];
      }
      const frame = pane.geometry?.chest;
      const mapOver = overlay !== "none";
      const cover = mapOver ? HINT : COVER * (frame ? markDensity(frame).plane : 1);
      const room = (cover * lumen) / (Math.PI * half * half);
      const taken = Math.floor(Math.min(tracers.count, room));
      // How long blood has been on its way is known in the field alone.
      const alone = !chest || mapOver || asked.colouring === "age";
      // The smaller a body is drawn, the larger its marks are against it.
      const full = (DENSE * Math.PI * half * half) / (chest?.frame.scale ?? 1) ** 2;
      const side = alone
        ? null
        : beside(sides, chest, pane, { time, still, kept: Math.min(1, COVER / full) });
      const together = joiner.join(tracers, taken, side?.marks ?? null);
      const brush: Brush = {
        half,
        longest: TAIL * half,
        share: 1,
        alpha: mapOver ? (asked.streamlines ? 0.2 : 0.4) : still && !asked.paused ? 0.6 : 1,
        at,
        seen: viewport.full,
        dense: viewport.dense,
      };
      const plain = overlay !== "none" && packed(rgb(covered ? OVER_MAP[overlay] : theme.colour.inkSoft));
      const tinting = {
        colouring: asked.colouring,
        circulation: pane.circulation,
        dyeing: pane.washOut !== null,
      };
      const paint = (moved: Tracers, colours: Uint32Array) => {
        if (plain !== false) colours.fill(plain);
        else tint(moved, tinting, theme, colours);
      };
      const openings = pane.geometry?.openings ?? [];
      const fading = (moved: Tracers, colours: Uint32Array) => {
        paint(moved, colours);
        if (side) tintRich(side, taken, tinting, theme, colours);
        const before = side && chest ? seenUnder(chest.frame, chest.plane) : null;
        const seen = frame ? among(frame, before) : before;
        if (!mapOver) fadeAtOpenings(moved, { taken, shown: side?.shown ?? null, openings, seen }, colours);
      };
      inside.draw(together, fading, brush, viewport);
      if (!gone) {
        outside.hide();
        return;
      }
      const mixing = (moved: Tracers, colours: Uint32Array) => {
        if (overlay === "none") paint(moved, colours);
        else colours.fill(packed(rgb(theme.colour.ink)));
        diluted(moved.count, gone.undiluted, pane.circulation, theme, colours);
      };
      outside.draw(gone.tracers, mixing, { ...brush, alpha: 1 }, viewport);
    },
    release() {
      inside.release();
      outside.release();
      map.release();
    },
  };
}

/** Marks beyond the openings, where the breath has moved them. */
function beside(
  sides: SideFlow,
  { frame, pathway }: SeenChest,
  { circulation, departing }: Pane,
  { time, still, kept }: Pick<Moment, "time" | "still"> & { readonly kept: number },
) {
  const lungs = lungsAt(circulation, time, still);
  return sides.at(frame, circulation, time, lungs, {
    pathway,
    departing: departing ?? null,
    kept,
  });
}

/** mm2 of blood in the plane */
function lumenArea(shape: FieldShape | null): number {
  if (!shape) return 0;
  let cells = 0;
  for (const distance of shape.distance) if (distance < 0) cells++;
  return cells * shape.dx * shape.dx;
}
