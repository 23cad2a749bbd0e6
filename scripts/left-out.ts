/** Parts of the drawing library that no picture uses and that it cannot be built without: left out of the page. Whatever calls one after all throws its name. */
import type { Plugin } from "vite";

const LIBRARY = "/pixi.js/lib/";
/** Module -> what it exports instead. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  // Shapes are drawn from the kit's own data, never read from SVG.
  "scene/graphics/shared/svg/SVGParser.mjs": refusing("SVGParser"),
  "scene/graphics/shared/svg/parseSVGPath.mjs": refusing("parseSVGPath"),
  // Nothing is fetched by the library: this module alone would register its loader of sprite sheets.
  "spritesheet/init.mjs": "export {};",
  // Labels have one style each.
  "scene/text/canvas/utils/measureTaggedText.mjs": refusing(
    "measureTaggedText",
    "tokenizeTaggedRuns",
    "wordWrapTaggedLines",
  ),
  "rendering/renderers/shared/texture/sources/VideoSource.mjs":
    'export class VideoSource { static extension = "texture-source"; static test() { return false; } }',
};

function refusing(...names: readonly string[]): string {
  return names
    .map(
      (name) =>
        `export const ${name} = () => { throw new Error("${name}: scripts/left-out.ts leaves it out"); };`,
    )
    .join("\n");
}

export function leftOut(): Plugin {
  const missing = new Set(Object.keys(LEFT_OUT));
  return {
    name: "left-out",
    apply: "build",
    load(id) {
      const module = id.split(LIBRARY)[1] ?? "";
      if (!Object.hasOwn(LEFT_OUT, module)) return null;
      missing.delete(module);
      return LEFT_OUT[module];
    },
    buildEnd(error) {
      if (!error && missing.size > 0) this.error(`the drawing library has no ${[...missing].join(", ")}`);
    },
  };
}
