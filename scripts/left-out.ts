/** Parts of the drawing library that no picture uses and that it cannot be built without: left out of the page. Whatever calls one after all throws its name. */
import type { Plugin } from "vite";

const NODE_MODULES = "/node_modules/";

const refusal = (name: string) => `throw new Error("${name}: scripts/left-out.ts leaves it out");`;

/** Functions that throw. */
const refusing = (...names: readonly string[]): string =>
  names.map((name) => `export const ${name} = () => { ${refusal(name)} };`).join("\n");

/** Classes of which none can be made; as parts of the renderer they are not registered with it. */
const unmade = (...names: readonly string[]): string =>
  names
    .map(
      (name) =>
        `export class ${name} { static extension = { type: [] }; constructor() { ${refusal(name)} } }`,
    )
    .join("\n");

/** Ways to send a texture to the graphics chip, which the renderer lists. */
const unsent = (name: string, id: string): string =>
  `export const ${name} = { id: "${id}", upload() { ${refusal(name)} } };`;

/** A table of what the graphics chip calls the few kinds of texture there are: colours of 8 bits, and a mask's stencil. */
const formats = (name: string, rgba: string, bgra: string, stencil: string): string =>
  `export const ${name} = (gl) => ({ rgba8unorm: gl.${rgba}, bgra8unorm: gl.${bgra}, "depth24plus-stencil8": gl.${stencil} });`;

/** A program that the chip refuses is reported in its own words. */
const PLAIN_ERROR = `
export const logProgramError = (gl, program, ...shaders) => {
  if (!gl.getProgramParameter(program, gl.LINK_STATUS))
    console.error(gl.getProgramInfoLog(program), ...shaders.map((shader) => gl.getShaderInfoLog(shader)));
};`;

/** The kit writes colours in one way, the library itself one by its name: what its reader of every CSS colour answers to these. */
const HEX_COLOURS = `
export const extend = () => {};
export function colord(text) {
  const hex = /^#(?:[\\da-f]{6}|[\\da-f]{8})$/i.test(text) ? text : text === "black" ? "#000000" : "";
  const part = (at) => Number.parseInt(hex.slice(at, at + 2) || "ff", 16);
  return { isValid: () => hex !== "", rgba: { r: part(1), g: part(3), b: part(5), a: part(7) / 255 } };
}`;

/** One shader for each way to draw; the library would write a second one, for WebGPU. */
const GL_PROGRAMS = `
import { GlProgram } from "../renderers/gl/shader/GlProgram.mjs";
import { compileHighShaderGl } from "./compiler/compileHighShader.mjs";
import { fragmentGlTemplate, vertexGlTemplate } from "./defaultProgramTemplate.mjs";
import { globalUniformsBitGl } from "./shader-bits/globalUniformsBit.mjs";
export const compileHighShaderGpuProgram = () => undefined;
export const compileHighShaderGlProgram = ({ bits, name }) => new GlProgram({
  name,
  ...compileHighShaderGl({
    template: { vertex: vertexGlTemplate, fragment: fragmentGlTemplate },
    bits: [globalUniformsBitGl, ...bits],
  }),
});`;

/** The shader of sprites and shapes, made by what src/scenes/drawing/webgl-renderer.ts sets, if a graphics chip draws. */
const NO_SHADER = `
export class DefaultShader {
  static make = (maxTextures) => ({ maxTextures });
  constructor(maxTextures) { return DefaultShader.make(maxTextures); }
}`;

/** Nothing drawn is read back within the same drawing: the screen itself is drawn on. */
const NO_BACK_BUFFER = `
import { ExtensionType } from "../../../extensions/Extensions.mjs";
export class GlBackBufferSystem {
  static extension = { type: [ExtensionType.WebGLSystem], name: "backBuffer", priority: 1 };
  useBackBuffer = false;
  constructor(renderer) { this.renderer = renderer; }
  renderEnd() { this.renderer.renderTarget.finishRenderPass(); }
  destroy() {}
}`;

/** Every browser that reads this page multiplies colours: the library would paint and read back three canvases to see. */
const BLENDS = "export const canUseNewCanvasBlendModes = () => true;";

const inPixi = (modules: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(modules).map(([name, text]) => [`pixi.js/lib/${name}.mjs`, text]));

/** Module -> what takes its place. */
export const LEFT_OUT: Readonly<Record<string, string>> = {
  "@pixi/colord/index.mjs": HEX_COLOURS,
  "@pixi/colord/plugins/names.mjs": "export default () => {};",
  ...inPixi({
    // Shapes are drawn from the kit's own data, never read from SVG, and filled with one colour.
    "scene/graphics/shared/svg/SVGParser": refusing("SVGParser"),
    "scene/graphics/shared/svg/parseSVGPath": refusing("parseSVGPath"),
    "scene/graphics/shared/buildCommands/buildArcToSvg": refusing("buildArcToSvg"),
    "scene/graphics/shared/path/roundShape": refusing("roundedShapeArc", "roundedShapeQuadraticCurve"),
    "scene/graphics/shared/fill/FillGradient": unmade("FillGradient"),
    "scene/graphics/shared/fill/FillPattern": unmade("FillPattern"),
    "rendering/renderers/canvas/utils/canUseNewCanvasBlendModes": BLENDS,
    // Words are pictures of the kit's own (src/scenes/drawing/written.ts).
    "scene/text/init": "export {};",
    // Nothing is fetched by the library: this module alone would register its loader of sprite sheets.
    "spritesheet/init": "export {};",
    // What it would fetch for pages that let it: pointers, names for screen readers, filters.
    "environment-browser/browserAll": "export {};",
    "environment-webworker/webworkerAll": "export {};",
    "rendering/renderers/gl/GlBackBufferSystem": NO_BACK_BUFFER,
    // Pictures are canvases; masks are shapes.
    "rendering/renderers/shared/texture/sources/VideoSource":
      'export class VideoSource { static extension = "texture-source"; static test() { return false; } }',
    "rendering/renderers/gl/texture/uploaders/glUploadVideoResource": unsent(
      "glUploadVideoResource",
      "video",
    ),
    "rendering/renderers/gl/texture/uploaders/glUploadCompressedTextureResource": unsent(
      "glUploadCompressedTextureResource",
      "compressed",
    ),
    "rendering/renderers/gl/texture/uploaders/glUploadCubeTextureResource":
      "export const createGlUploadCubeTextureResource = () => ({});",
    "rendering/renderers/gl/texture/utils/mapFormatToGlInternalFormat": formats(
      "mapFormatToGlInternalFormat",
      "RGBA",
      "RGBA8",
      "DEPTH24_STENCIL8",
    ),
    "rendering/renderers/gl/texture/utils/mapFormatToGlFormat": formats(
      "mapFormatToGlFormat",
      "RGBA",
      "RGBA",
      "DEPTH_STENCIL",
    ),
    "rendering/renderers/gl/texture/utils/mapFormatToGlType": formats(
      "mapFormatToGlType",
      "UNSIGNED_BYTE",
      "UNSIGNED_BYTE",
      "UNSIGNED_INT_24_8",
    ),
    "rendering/renderers/gl/shader/program/logProgramError": PLAIN_ERROR,
    "rendering/mask/alpha/AlphaMaskPipe": unmade("AlphaMaskPipe"),
    "scene/particle-container/shared/ParticleBuffer": unmade("ParticleBuffer"),
    "unsafe-eval/particle/generateParticleUpdatePolyfill": refusing("generateParticleUpdatePolyfill"),
    // It greets nobody, and what it keeps for callers of its earlier names has none.
    "rendering/renderers/shared/startup/HelloSystem": unmade("HelloSystem"),
    "rendering/renderers/shared/texture/TextureGCSystem": unmade("TextureGCSystem"),
    "rendering/renderers/shared/texture/RenderableGCSystem": unmade("RenderableGCSystem"),
    // The processor draws without a shader.
    "rendering/batcher/shared/DefaultShader": NO_SHADER,
    // WebGL alone draws with a graphics chip, by uniforms that no buffer holds, and makes no code from text.
    "rendering/high-shader/compileHighShaderToProgram": GL_PROGRAMS,
    "rendering/renderers/gpu/shader/GpuProgram": unmade("GpuProgram"),
    "rendering/renderers/gpu/GpuUboSystem": unmade("GpuUboSystem"),
    "rendering/renderers/gl/GlUboSystem": unmade("GlUboSystem"),
    "rendering/renderers/shared/shader/UboSystem": unmade("UboSystem"),
    "unsafe-eval/ubo/generateUboSyncPolyfill": refusing(
      "generateUboSyncPolyfillSTD40",
      "generateUboSyncPolyfillWGSL",
    ),
    "rendering/renderers/gl/shader/utils/generateUniformsSync": refusing("generateUniformsSync"),
    "rendering/renderers/gl/shader/GenerateShaderSyncCode": refusing("generateShaderSyncCode"),
  }),
};

export function leftOut(): Plugin {
  const missing = new Set(Object.keys(LEFT_OUT));
  return {
    name: "left-out",
    apply: "build",
    load(id) {
      const module = id.split(NODE_MODULES).at(-1) ?? "";
      if (!Object.hasOwn(LEFT_OUT, module)) return null;
      missing.delete(module);
      return LEFT_OUT[module];
    },
    buildEnd(error) {
      if (!error && missing.size > 0) this.error(`the drawing library has no ${[...missing].join(", ")}`);
    },
  };
}
