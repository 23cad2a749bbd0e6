/** Drawing by WebGL, without code made from text: the page's policy forbids that. */
import "pixi.js/unsafe-eval";

import {
  colorBitGl,
  compileHighShaderGlProgram,
  DefaultShader,
  generateTextureBatchBitGl,
  getBatchSamplersUniformGroup,
  roundPixelsBitGl,
  Shader,
} from "pixi.js";

/** The shader of sprites and shapes; the library would make it where the processor draws too (scripts/left-out.ts). */
const make = (maxTextures: number): DefaultShader => {
  const shader = new Shader({
    glProgram: compileHighShaderGlProgram({
      name: "batch",
      bits: [colorBitGl, generateTextureBatchBitGl(maxTextures), roundPixelsBitGl],
    }),
    resources: { batchSamplers: getBatchSamplersUniformGroup(maxTextures) },
  });
  return Object.assign(shader, { maxTextures });
};
Object.assign(DefaultShader, { make });

export { WebGLRenderer } from "pixi.js";
export { tracerLayer } from "../layers/tracer-mesh.ts";
