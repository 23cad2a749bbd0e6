/** Drawing by the processor. It makes no code from text; the library's check for that is meant for its other renderers. */
import { CanvasRenderer } from "pixi.js";

Object.assign(CanvasRenderer.prototype, { _unsafeEvalCheck() {} });

export { CanvasRenderer };
