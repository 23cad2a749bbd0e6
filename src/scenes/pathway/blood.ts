/** What moves inside the walls: the field's map and the tracers, coloured as the view asks. */
import { Container } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import type { FieldShape, FlowField } from "../../sim/field/flow-field.ts";
import type { Opening } from "../../sim/geometry/geometry.ts";
import type { Overlay, View } from "../../state/scene-state.ts";
import { lossMap } from "../layers/loss.ts";
import { overlayLayer } from "../layers/overlay.ts";
import { nearlyLargest, niceCeiling, tint } from "../layers/tint.ts";
import type { TracerLayer } from "../layers/tracer-layer.ts";
import { tracerPicture } from "../layers/tracer-picture.ts";
import { tracerLayer } from "../layers/tracers.ts";
import type { Setting } from "../scene.ts";
import { rgb } from "../theme/colour.ts";
import { type MapName, packed } from "../theme/maps.ts";
import type { Theme } from "../theme/theme.ts";
import type { Projection } from "./layout.ts";

export interface Blood {
  readonly view: Container;
  readonly scale: { readonly least: number; readonly most: number };
  draw(pane: Pane, view: View, still: boolean, at: Projection, setting: Setting, theme: Theme): void;
  release(): void;
}

/** s between two looks of the map: the eye needs no more, the processor has other work. */
const MAP_EVERY = 0.1;
/** Share of the lumen that heads may cover: more would be a coat of paint, in which no motion shows. */
const COVER = 0.4;
/** Longest tail, in half widths of a head. */
const TAIL = 9;
/** Tracers over a map: what stands out from most of it. */
const OVER_MAP = { speed: "#ffffff", pressure: "#000814", loss: "#ffffff" } as const;
/** mPa.s, of blood with a usual haematocrit */
const USUAL_VISCOSITY = 3.5;

export function blood(): Blood {
  const view = new Container();
  const map = overlayLayer();
  view.addChild(map.view);
  let tracers: TracerLayer | null = null;
  let room = 0;
  let colours = new Uint32Array(0);
  let sinceMap = Number.POSITIVE_INFINITY;
  let mapped: unknown = null;
  let mappedName: string | undefined;
  let least = 0;
  let most = 1;
  let shownScale = "";
  let measuredShape: FieldShape | null = null;
  let lumen = 0;

  const rescale = (key: string, value: number, floor = 0) => {
    const before = key === shownScale ? most : undefined;
    shownScale = key;
    least = floor;
    most = niceCeiling(value, before);
  };

  const drawMap = (
    shape: FieldShape,
    openings: readonly Opening[],
    field: FlowField,
    overlay: Exclude<Overlay, "none">,
    viscosity: number,
  ) => {
    const values = measured(shape, field, overlay, viscosity);
    if (overlay === "pressure") {
      const [low, high] = range(values, shape);
      const step = niceCeiling((high - low) / 4);
      least = Math.floor(low / step) * step;
      most = Math.ceil(high / step) * step;
      shownScale = overlay;
    } else rescale(overlay, nearlyLargest(inside(values, shape), inside(values, shape).length));
    map.draw(shape, openings, values, overlay as MapName, least, most);
  };

  return {
    view,
    get scale() {
      return { least, most };
    },
    draw(pane, asked, still, at, setting, theme) {
      const { shape, field, tracers: moved } = pane;
      const { overlay } = asked;
      map.view.visible = overlay !== "none" && shape !== null && field !== null;
      sinceMap += Number.isFinite(setting.elapsed) ? setting.elapsed : MAP_EVERY;
      const key = `${overlay} ${field?.time} ${field?.shapeId}`;
      if (
        overlay !== "none" &&
        shape &&
        field &&
        field.u.length > 0 &&
        key !== mapped &&
        (pane.geometry?.name !== mappedName || sinceMap >= MAP_EVERY)
      ) {
        sinceMap = 0;
        mapped = key;
        mappedName = pane.geometry?.name;
        drawMap(shape, pane.geometry?.openings ?? [], field, overlay, pane.viscosity ?? USUAL_VISCOSITY);
      }

      if (!moved || moved.count === 0) {
        if (tracers) tracers.view.visible = false;
        return;
      }
      const capacity = moved.origin.length;
      if (!tracers || capacity > room) {
        tracers?.release();
        tracers = setting.meshes ? tracerLayer(capacity) : tracerPicture();
        room = capacity;
        colours = new Uint32Array(capacity);
        view.addChild(tracers.view);
      }
      if (overlay === "none") {
        if (asked.colouring === "speed") rescale("speed", nearlyLargest(moved.speed, moved.count));
        if (asked.colouring === "age") rescale("age", nearlyLargest(moved.age, moved.count));
        tint(
          moved,
          asked.colouring,
          { speed: most, age: most },
          pane.circulation,
          theme,
          pane.washOut !== null,
          colours,
        );
      } else colours.fill(packed(rgb(OVER_MAP[overlay])));
      const half = headSize(setting, at);
      if (shape !== measuredShape) {
        measuredShape = shape;
        lumen = lumenArea(shape);
      }
      const share = Math.min(1, (COVER * lumen) / (moved.count * Math.PI * half * half));
      tracers.draw(moved, {
        colours,
        half,
        longest: TAIL * half,
        share,
        alpha: overlay === "none" ? (still && !asked.paused ? 0.6 : 1) : asked.streamlines ? 0.2 : 0.5,
        at,
        seen: setting.full,
        dense: setting.dense,
      });
    },
    release() {
      tracers?.release();
      map.release();
    },
  };
}

/** mm, half width of a head: 3 px or more at 1080 lines, in proportion elsewhere. */
export const headSize = ({ full }: Setting, { scale }: Projection): number =>
  Math.max(1.2, full.height * 0.0016) / scale;

/** The field's scalar in the key's unit: m/s, mmHg, W/m3. */
function measured(
  shape: FieldShape,
  field: FlowField,
  overlay: Exclude<Overlay, "none">,
  viscosity: number,
): Float32Array {
  switch (overlay) {
    case "speed":
      return field.u.map((u, k) => Math.hypot(u, field.v[k]!));
    case "pressure":
      return field.pressure;
    case "loss":
      return lossMap(shape, field, viscosity);
  }
}

const inside = (values: Float32Array, shape: FieldShape): Float32Array =>
  values.filter((_, k) => shape.distance[k]! < 0);

/** mm2 of blood in the plane */
function lumenArea(shape: FieldShape | null): number {
  if (!shape) return 0;
  let cells = 0;
  for (const distance of shape.distance) if (distance < 0) cells++;
  return cells * shape.cell * shape.cell;
}

function range(values: Float32Array, shape: FieldShape): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < values.length; k++) {
    if (shape.distance[k]! >= -shape.cell) continue;
    low = Math.min(low, values[k]!);
    high = Math.max(high, values[k]!);
  }
  return low < high ? [low, high] : [0, 1];
}
