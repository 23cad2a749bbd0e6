/** The renderer of a stage: the code of the one that draws is fetched, and none of the other's. */
import { isWebGLSupported, type RendererOptions } from "pixi.js";
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

/** Rejects where nothing can be drawn that way. */
export async function startRenderer(way: Way, options: Partial<RendererOptions>) {
  // No pointer, no filter, no loader of the library's is used: all that is drawn comes from the Frame.
  const own = { ...options, skipExtensionImports: true };
  if (way === "webgl") {
    const { WebGLRenderer } = await fetchRenderer.webgl();
    const renderer = new WebGLRenderer();
    await renderer.init(own);
    return renderer;
  }
  const { CanvasRenderer } = await fetchRenderer.canvas();
  const renderer = new CanvasRenderer();
  await renderer.init({ ...own, canvas: canvasForProcessor() });
  return renderer;
}
