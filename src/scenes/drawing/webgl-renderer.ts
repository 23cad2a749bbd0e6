/** Drawing by WebGL, without code made from text: the page's policy forbids that. */
import "pixi.js/unsafe-eval";

export { WebGLRenderer } from "pixi.js";
