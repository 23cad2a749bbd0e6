/** A measured field as a map under the tracers: speed, pressure or loss, on a published scale. */
import { Container, DOMAdapter, Sprite, Texture } from "pixi.js";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { FieldShape } from "../../sim/flow-field/flow-field.ts";
import type { Opening } from "../../sim/geometry/geometry.ts";
import { WITH_ALL } from "../scene.ts";
import { type MapName, mapTable } from "../theme/maps.ts";
import { beyondOpening } from "./drawn-plane.ts";
import { mapStep } from "./scales.ts";

export interface OverlayLayer {
  readonly view: Container;
  /** `values` [ny*nx] in the unit of the map's scale. Nothing is drawn beyond `openings`. */
  draw(shape: FieldShape, openings: readonly Opening[], values: Float32Array, map: MapName): void;
  release(): void;
}

/** Cells drawn beyond the wall, which covers them, so that no dark edge shows. */
const RIM = 2;

export function overlayLayer(): OverlayLayer {
  const view = new Container();
  let known: FieldShape | undefined;
  let sprite: Sprite | undefined;
  let texture: Texture | undefined;
  let ink: CanvasRenderingContext2D | undefined;
  let image: ImageData | undefined;
  let texels = new Uint32Array(0);
  /** [k] cell whose value cell k shows; -1 for none */
  let source: Int32Array = new Int32Array(0);
  let table: Uint32Array = new Uint32Array(0);
  let tableName: MapName | undefined;

  const prepare = (shape: FieldShape, openings: readonly Opening[]) => {
    texture?.destroy(true);
    sprite?.destroy();
    const canvas = DOMAdapter.get().createCanvas(shape.nx, shape.ny) as HTMLCanvasElement;
    ink = present(canvas.getContext("2d"));
    image = ink.createImageData(shape.nx, shape.ny);
    texels = new Uint32Array(image.data.buffer);
    source = nearestInside(shape).map((from, k) => {
      const x = shape.originX + (k % shape.nx) * shape.dx;
      const y = shape.originY + Math.floor(k / shape.nx) * shape.dx;
      return openings.some((opening) => beyondOpening(opening, x, y, 0, 0)) ? -1 : from;
    });
    texture = Texture.from(canvas, true);
    texture.source.scaleMode = "linear";
    sprite = new Sprite(texture);
    // Texel centres are cell centres; row 0 is the lowest, as the plane counts.
    sprite.position.set(shape.originX - shape.dx / 2, shape.originY - shape.dx / 2);
    sprite.scale.set(shape.dx);
    view.addChild(sprite);
    known = shape;
  };

  return {
    view,
    draw(shape, openings, values, map) {
      if (shape !== known) prepare(shape, openings);
      if (tableName !== map) {
        table = mapTable(map);
        tableName = map;
      }
      for (let k = 0; k < texels.length; k++) {
        const from = entryAt(source, k);
        texels[k] = from < 0 ? 0 : entryAt(table, mapStep(map, entryAt(values, from)));
      }
      present(ink).putImageData(present(image), 0, 0);
      present(texture).source.update();
    },
    release() {
      texture?.destroy(true);
      view.destroy(WITH_ALL);
    },
  };
}

/** For each cell itself when in the blood, else the first blood cell within the rim, else -1. */
function nearestInside({ nx, ny, distance }: FieldShape): Int32Array {
  const source = Int32Array.from(distance, (value, k) => (value < 0 ? k : -1));
  for (let ring = 0; ring < RIM; ring++) {
    const before = source.slice();
    for (let j = 1; j < ny - 1; j++) {
      for (let i = 1; i < nx - 1; i++) {
        const k = j * nx + i;
        if (entryAt(before, k) >= 0) continue;
        for (const step of [1, -1, nx, -nx]) {
          if (entryAt(before, k + step) >= 0) {
            source[k] = entryAt(before, k + step);
            break;
          }
        }
      }
    }
  }
  return source;
}
