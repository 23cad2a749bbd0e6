/** The renderer of a stage: the code of the one that draws is fetched, and none of the other's. */
import { isWebGLSupported, type RendererOptions } from "pixi.js";
import { canvasForProcessor, hasGraphicsChip } from "./by-processor.ts";

export type Way = "webgl" | "canvas";

/** How this device draws, unless it is told how. */
export function wayOf(asked?: Way): Way {
  if (asked === "canvas" || !isWebGLSupported()) return "canvas";
  return asked ?? (hasGraphicsChip() ? "webgl" : "canvas");
}

/** Rejects where nothing can be drawn that way. */
export async function startRenderer(way: Way, options: Partial<RendererOptions>) {
  // No pointer, no filter, no loader of the library's is used: all that is drawn comes from the Frame.
  const own = { ...options, skipExtensionImports: true };
  if (way === "webgl") {
    const { WebGLRenderer } = await import("./webgl-renderer.ts");
    const renderer = new WebGLRenderer();
    await renderer.init(own);
    return renderer;
  }
  const { CanvasRenderer } = await import("./canvas-renderer.ts");
  const renderer = new CanvasRenderer();
  await renderer.init({ ...own, canvas: canvasForProcessor() });
  return renderer;
}
