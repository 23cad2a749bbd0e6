/** Canvases that the processor paints: where there is no graphics chip, imitating one costs many times the picture. */
import { DOMAdapter } from "pixi.js";

let adapted = false;

/** Keeps a canvas where the processor can reach it: the first context asked of a canvas decides. */
function held(canvas: HTMLCanvasElement): HTMLCanvasElement {
  canvas.getContext("2d", { willReadFrequently: true });
  return canvas;
}

/** From now on the library's canvases are painted by the processor. @returns one for the stage */
export function canvasForProcessor(): HTMLCanvasElement {
  if (!adapted) {
    adapted = true;
    const browser = DOMAdapter.get();
    DOMAdapter.set({
      ...browser,
      createCanvas: (width, height) => held(browser.createCanvas(width, height) as HTMLCanvasElement),
    });
  }
  return DOMAdapter.get().createCanvas() as HTMLCanvasElement;
}

/** Whether a graphics chip draws for this page: WebGL that a program imitates is none. */
export function hasGraphicsChip(): boolean {
  const probe = document.createElement("canvas").getContext("webgl2");
  if (!probe) return false;
  const about = probe.getExtension("WEBGL_debug_renderer_info");
  const name = about ? String(probe.getParameter(about.UNMASKED_RENDERER_WEBGL)) : "";
  probe.getExtension("WEBGL_lose_context")?.loseContext();
  return !/swiftshader|llvmpipe|softpipe|software|basic render/i.test(name);
}
