/** The renderer of a stage: the code of the one that draws is fetched, and none of the other's. */
import { isWebGLSupported, Matrix, type Renderer, type RendererOptions } from "pixi.js";
import type { PaintInto, Viewport } from "../scene.ts";
import { canvasForProcessor, hasGraphicsChip } from "./by-processor.ts";

export type Way = "webgl" | "canvas";

/** How this device draws, unless it is told how. Each question makes a context, slowly where no chip answers. */
export function wayOf(asked?: Way): Way {
  const webgl = asked ? asked === "webgl" : hasGraphicsChip();
  return webgl && isWebGLSupported() ? "webgl" : "canvas";
}

export const fetchRenderer = {
  webgl: () => import("./webgl-renderer.ts"),
  canvas: () => import("./canvas-renderer.ts"),
} as const;

/** What draws, and what it draws tracers with. */
export interface Started {
  readonly renderer: Renderer;
  readonly meshes: Viewport["meshes"];
  readonly paintInto?: PaintInto;
}

/** Rejects where nothing can be drawn that way. */
export async function startRenderer(way: Way, options: Partial<RendererOptions>): Promise<Started> {
  // No pointer, no filter, no loader of the library's is used: all that is drawn comes from the Frame.
  const own = { ...options, skipExtensionImports: true };
  if (way === "webgl") {
    const { WebGLRenderer, tracerLayer } = await fetchRenderer.webgl();
    const renderer = new WebGLRenderer();
    await renderer.init(own);
    return { renderer, meshes: tracerLayer };
  }
  const { CanvasRenderer } = await fetchRenderer.canvas();
  const renderer = new CanvasRenderer();
  await renderer.init({ ...own, canvas: canvasForProcessor() });
  const paintInto: PaintInto = (container, target, x, y) =>
    renderer.render({ container, target, transform: new Matrix(1, 0, 0, 1, -x, -y), clear: true });
  return { renderer, meshes: null, paintInto };
}
