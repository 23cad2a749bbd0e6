/**
 * Tracers as comets: a head whose shape shows the origin (disc: upper body, ring: liver, diamond: legs) and a tail along
 * where it has been, so that a still reads as motion. One mesh, one buffer, refilled for each drawing.
 */
import { Buffer, BufferUsage, Geometry, Mesh, Shader } from "pixi.js";
import { comet, MIN_SIZE, noComet, sizeOf, type TracerLayer } from "./tracer-layer.ts";

/** vertices a tracer: two each ahead of the head, at mid-tail and at its end */
const VERTICES = 6;
/** words (4 bytes) a vertex: x, y, along, across + 10 x shape, colour */
const WORDS = 5;

const VERTEX = `#version 300 es
precision highp float;
in vec2 aPosition;
in vec2 aLocal;
in vec4 aColour;
uniform mat3 uProjectionMatrix;
uniform mat3 uWorldTransformMatrix;
uniform mat3 uTransformMatrix;
out vec2 vLocal;
out vec4 vColour;
void main() {
  mat3 place = uProjectionMatrix * uWorldTransformMatrix * uTransformMatrix;
  gl_Position = vec4((place * vec3(aPosition, 1.0)).xy, 0.0, 1.0);
  vLocal = aLocal;
  vColour = aColour;
}`;

const FRAGMENT = `#version 300 es
precision highp float;
in vec2 vLocal;
in vec4 vColour;
uniform float uAlpha;
out vec4 outColour;
// Share of the pixel within an edge that lies so far ahead.
float within(float ahead) { return clamp(0.5 + ahead / fwidth(ahead), 0.0, 1.0); }
void main() {
  float shape = floor(vLocal.y / 10.0 + 0.5);
  vec2 p = vec2(vLocal.x, vLocal.y - 10.0 * shape);
  float reach = shape > 1.5 ? abs(p.x) + abs(p.y) : length(p);
  float inHead = within(1.0 - reach);
  float beside = within(0.8 - abs(p.y));
  float hole = within(0.5 - reach);
  float tail = p.x < 0.0 ? vColour.a * vColour.a * 0.6 * beside : 0.0;
  if (shape > 0.5 && shape < 1.5) {
    inHead *= 1.0 - hole;
    tail *= 1.0 - hole;
  }
  float alpha = max(inHead, tail) * uAlpha;
  if (alpha < 0.02) discard;
  outColour = vec4(vColour.rgb * alpha, alpha);
}`;

/** Half widths of a tail at its joint and its end, in those of the head. */
const MIDDLE = 0.85;
const END = 0.2;

/** @param capacity most tracers that it can hold */
export function tracerLayer(capacity: number): TracerLayer {
  const data = new Float32Array(capacity * VERTICES * WORDS);
  const words = new Uint32Array(data.buffer);
  const index = new Uint32Array(capacity * 12);
  for (let i = 0; i < capacity; i++) {
    const v = i * VERTICES;
    index.set([v, v + 1, v + 2, v + 1, v + 3, v + 2, v + 2, v + 3, v + 4, v + 3, v + 5, v + 4], i * 12);
  }
  const buffer = new Buffer({ data, usage: BufferUsage.VERTEX | BufferUsage.COPY_DST, shrinkToFit: false });
  const stride = WORDS * 4;
  const geometry = new Geometry({
    attributes: {
      aPosition: { buffer, format: "float32x2", stride, offset: 0 },
      aLocal: { buffer, format: "float32x2", stride, offset: 8 },
      aColour: { buffer, format: "unorm8x4", stride, offset: 16 },
    },
    indexBuffer: index,
  });
  const shader = Shader.from({
    gl: { vertex: VERTEX, fragment: FRAGMENT },
    resources: { look: { uAlpha: { value: 1, type: "f32" } } },
  });
  const view = new Mesh({ geometry, shader });
  const now = noComet();

  /** The two vertices at word `o`, to either side of a point by (alongX, alongY) turned a quarter. */
  const place = (o: number, x: number, y: number, alongX: number, alongY: number): void => {
    data[o] = x - alongY;
    data[o + 1] = y + alongX;
    data[o + WORDS] = x + alongY;
    data[o + WORDS + 1] = y - alongX;
  };

  /** How the two vertices at word `o` are coloured: half width and place along the comet in half heads, and the shape's code. */
  const shade = (o: number, wide: number, along: number, code: number, colour: number): void => {
    data[o + 2] = data[o + WORDS + 2] = along;
    data[o + 3] = code + wide;
    data[o + WORDS + 3] = code - wide;
    words[o + 4] = words[o + WORDS + 4] = colour;
  };

  return {
    view,
    draw(tracers, { colours, half, longest, share, alpha }) {
      const count = Math.min(capacity, Math.floor(tracers.count * share));
      view.visible = count > 0;
      for (let i = 0, o = 0; i < count; i++, o += VERTICES * WORDS) {
        const part = Math.max(MIN_SIZE, sizeOf(colours[i]!));
        comet(tracers, i, part * half, part * longest, now);
        const { x, y, hx, hy, tx, ty, back, reach, half: h } = now;
        const bx = x - hx * back;
        const by = y - hy * back;
        const solid = colours[i]! | 0xff000000;
        const faint = (colours[i]! & 0xffffff) | 0xb0000000;
        const none = colours[i]! & 0xffffff;
        const code = 10 * tracers.origin[i]!;
        place(o, x + hx * h, y + hy * h, hx * h, hy * h);
        place(o + 2 * WORDS, bx, by, ((hx + tx) / 2) * h * MIDDLE, ((hy + ty) / 2) * h * MIDDLE);
        place(o + 4 * WORDS, bx - tx * reach, by - ty * reach, tx * h * END, ty * h * END);
        shade(o, 1, 1, code, solid);
        shade(o + 2 * WORDS, MIDDLE, -back / h, code, faint);
        shade(o + 4 * WORDS, END, -(back + reach) / h, code, none);
      }
      shader.resources.look.uniforms.uAlpha = alpha;
      geometry.indexCount = count * 12;
      buffer.update(count * VERTICES * WORDS * 4);
    },
    release() {
      view.destroy();
      geometry.destroy(true);
      shader.destroy();
    },
  };
}
