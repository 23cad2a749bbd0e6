/** Tracers without shaders: the processor paints them into a picture of what they cover, pixel on pixel of the screen. */
import { DOMAdapter, Sprite, Texture } from "pixi.js";
import { present } from "../../sim/checked/present.ts";
import type { Tracers } from "../../sim/tracers/tracers.ts";
import { type Head, type Joint, type Paint, paintHead, paintTail } from "../drawing/comets.ts";
import { comet, MIN_SIZE, noComet, sizeOf, type TracerLayer } from "./tracer-layer.ts";

/** Opacity of a tail where it leaves its head, as a root: the painter squares it; likewise at its joint. */
const STRONG = Math.sqrt(0.6);
const JOINT = 0.69 * STRONG;
/** Half widths of a tail at head, joint and end, in those of the head. */
const WIDE = [0.8, 0.68, 0.16] as const;
/** px by which the picture grows at a time */
const STEP = 64;

export function tracerPicture(): TracerLayer {
  const view = new Sprite();
  const now = noComet();
  // Reused for each tracer: thousands of new records per drawing would burden the garbage collector.
  const head: Head = { x: 0, y: 0, dx: 0, dy: 0, half: 0, shape: 0 };
  const front: Joint = { x: 0, y: 0, wide: 0, strong: STRONG };
  const joint: Joint = { x: 0, y: 0, wide: 0, strong: JOINT };
  const end: Joint = { x: 0, y: 0, wide: 0, strong: 0 };
  const paint: Paint = { colour: 0, alpha: 1 };
  let texture: Texture | null = null;
  let canvas: HTMLCanvasElement;
  let ink: CanvasRenderingContext2D;
  let image: ImageData;
  let colours: Uint32Array;

  const make = (width: number, height: number) => {
    if (texture && width <= canvas.width && height <= canvas.height) return;
    const grown = (size: number, had = 0) => Math.max(had, STEP * Math.ceil(size / STEP));
    canvas = DOMAdapter.get().createCanvas(
      grown(width, texture?.width),
      grown(height, texture?.height),
    ) as HTMLCanvasElement;
    ink = present(canvas.getContext("2d"));
    image = ink.createImageData(canvas.width, canvas.height);
    colours = new Uint32Array(image.data.buffer);
    texture?.destroy(true);
    texture = Texture.from(canvas, true);
    view.texture = texture;
  };

  return {
    view,
    draw(tracers, { colours: dyes, half, longest, share, alpha, at, seen, dense }) {
      const count = Math.floor(tracers.count * share);
      const [left, low, right, high] = boundsOf(tracers, count);
      const scale = at.scale * dense;
      const room = longest + 2 * half;
      // px of the screen that the picture covers
      const x0 = Math.floor(dense * Math.max(seen.x, at.x + at.scale * (left - room)));
      const x1 = Math.ceil(dense * Math.min(seen.x + seen.width, at.x + at.scale * (right + room)));
      const y0 = Math.floor(dense * Math.max(seen.y, at.y - at.scale * (high + room)));
      const y1 = Math.ceil(dense * Math.min(seen.y + seen.height, at.y - at.scale * (low - room)));
      view.visible = x1 > x0 && y1 > y0;
      if (!view.visible) return;
      make(x1 - x0, y1 - y0);
      view.position.set((x0 / dense - at.x) / at.scale, (at.y - y0 / dense) / at.scale);
      view.scale.set(1 / scale, -1 / scale);
      const pixels = { width: canvas.width, height: canvas.height, colours };
      colours.fill(0);
      paint.alpha = alpha;
      const originX = at.x * dense - x0;
      const originY = at.y * dense - y0;
      for (let i = 0; i < count; i++) {
        const part = sizeOf(dyes[i]!);
        if (part < MIN_SIZE) continue;
        comet(tracers, i, part * half, part * longest, now);
        const h = now.half * scale;
        paint.colour = dyes[i]! & 0xffffff;
        front.x = head.x = originX + now.x * scale;
        front.y = head.y = originY - now.y * scale;
        joint.x = head.x - now.hx * now.back * scale;
        joint.y = head.y + now.hy * now.back * scale;
        end.x = joint.x - now.tx * now.reach * scale;
        end.y = joint.y + now.ty * now.reach * scale;
        front.wide = WIDE[0] * h;
        joint.wide = WIDE[1] * h;
        end.wide = WIDE[2] * h;
        head.dx = now.hx;
        head.dy = -now.hy;
        head.half = h;
        head.shape = tracers.origin[i]!;
        paintTail(pixels, joint, end, paint);
        paintTail(pixels, front, joint, paint);
        paintHead(pixels, head, paint);
      }
      ink.putImageData(image, 0, 0);
      present(texture).source.update();
    },
    release() {
      view.destroy();
      texture?.destroy(true);
    },
  };
}

/** mm: left, lower, right and upper edge of where the first `count` tracers are */
function boundsOf({ position }: Tracers, count: number): readonly [number, number, number, number] {
  let [left, low, right, high] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (let i = 0; i < count; i++) {
    left = Math.min(left, position[2 * i]!);
    right = Math.max(right, position[2 * i]!);
    low = Math.min(low, position[2 * i + 1]!);
    high = Math.max(high, position[2 * i + 1]!);
  }
  return [left, low, right, high];
}
