/** Members of the drawing library's classes that nothing in the kit calls, nor anything that it keeps of the library: left out of the page. */
import type { Plugin } from "vite";
import { parseAst } from "vite";

/** Module of the library -> its members, by name alone: getter and setter go together. */
export const UNCALLED: Readonly<Record<string, string>> = {
  "color/Color": "toRgba toRgbArray toLittleEndianNumber premultiply toPremultiplied",
  "maths/matrix/Matrix": "fromArray applyInverse equals",
  "maths/point/ObservablePoint": "equals",
  "maths/point/Point": "equals",
  "maths/shapes/Circle": "strokeContains",
  "maths/shapes/Ellipse": "strokeContains",
  "maths/shapes/Polygon": "isClockwise strokeContains startX startY",
  "maths/shapes/Rectangle": "strokeContains intersects enlarge",
  "maths/shapes/RoundedRectangle": "strokeContains",
  "rendering/mask/alpha/AlphaMask": "containsPoint",
  "rendering/mask/stencil/StencilMask": "containsPoint",
  "rendering/renderers/canvas/renderTarget/CanvasRenderTargetAdaptor": "copyToTexture copyDepthTexture",
  "rendering/renderers/gl/GlEncoderSystem": "setGeometry",
  "rendering/renderers/gl/context/GlContextSystem": "isLost forceContextLoss",
  "rendering/renderers/gl/renderTarget/GlRenderTargetAdaptor": "copyToTexture copyDepthTexture",
  "rendering/renderers/gl/texture/GlTextureSystem": "managedTextures",
  "rendering/renderers/gpu/shader/BindGroup": "_resourceKeys _touch",
  "rendering/renderers/shared/GCSystem": "addResource",
  "rendering/renderers/shared/buffer/Buffer": "dataInt32 static",
  "rendering/renderers/shared/geometry/Geometry": "getIndex getSize",
  "rendering/renderers/shared/renderTarget/RenderTarget": "ensureDepthStencilTexture",
  "rendering/renderers/shared/renderTarget/RenderTargetSystem":
    "renderSurface getBindState frontFaceInverted copyToTexture copyDepthTexture",
  "rendering/renderers/shared/shader/Shader": "addResource",
  "rendering/renderers/shared/state/State": "cullMode",
  "rendering/renderers/shared/system/AbstractRenderer": "lastObjectRendered",
  "rendering/renderers/shared/system/SystemRunner": "empty",
  "rendering/renderers/shared/texture/CanvasPool": "enableFullScreen",
  "rendering/renderers/shared/texture/Texture": "baseTexture",
  "rendering/renderers/shared/texture/TexturePool": "enableFullScreen getSameSizeTexture",
  "rendering/renderers/shared/texture/TextureStyle": "wrapMode",
  "rendering/renderers/shared/texture/sources/TextureSource": "repeatMode wrapMode",
  "scene/container/Container": "_didChangeId isRenderGroup disableRenderGroup getSize updateTransform culled",
  "scene/container/CustomRenderPipe": "destroyRenderable",
  "scene/container/RenderGroup":
    "enableCacheAsTexture updateCacheTexture getChildren _getChildren textureOffsetInverseTransform cacheToLocalTransform",
  "scene/container/bounds/Bounds": "applyMatrix fitBounds isPositive addVertexData containsPoint",
  "scene/container/container-mixins/cacheAsTextureMixin": "cacheAsTexture updateCacheTexture cacheAsBitmap",
  "scene/container/container-mixins/childrenHelperMixin":
    "removeChildAt getChildAt setChildIndex getChildIndex swapChildren reparentChild reparentChildAt replaceChild",
  "scene/container/container-mixins/findMixin": "getChildByName getChildByLabel getChildrenByLabel",
  "scene/container/container-mixins/getFastGlobalBoundsMixin":
    "getFastGlobalBounds _getGlobalBoundsRecursive",
  "scene/container/container-mixins/getGlobalMixin": "getGlobalAlpha getGlobalTint",
  "scene/container/container-mixins/toLocalGlobalMixin": "getGlobalPosition toGlobal toLocal",
  "scene/graphics/shared/Graphics":
    "containsPoint setFillStyle setStrokeStyle texture arc arcTo arcToSvg bezierCurveTo path regularPoly roundPoly roundShape filletRect chamferRect star svg rotateTransform scaleTransform translateTransform lineStyle beginFill endFill drawCircle drawEllipse drawPolygon drawRect drawRoundedRect drawStar",
  "scene/graphics/shared/GraphicsContext":
    "setFillStyle setStrokeStyle containsPoint texture arc arcTo arcToSvg bezierCurveTo path regularPoly roundPoly roundShape filletRect chamferRect star svg",
  "scene/graphics/shared/path/GraphicsPath":
    "addPath arc arcTo arcToSvg bezierCurveTo bezierCurveToShort quadraticCurveToShort regularPoly roundPoly roundShape filletRect chamferRect star",
  "scene/graphics/shared/path/ShapePath":
    "addPath arc arcTo arcToSvg bezierCurveTo regularPoly roundPoly roundShape filletRect chamferRect",
  "scene/mesh/shared/Mesh": "material containsPoint",
  "scene/sprite/Sprite": "sourceBounds getSize",
  "scene/view/ViewContainer": "containsPoint",
  "ticker/Ticker": "addOnce FPS minFPS maxFPS",
  "utils/data/ViewableBuffer": "int8View uint8View int16View int32View float64View bigUint64View sizeOf",
  "utils/pool/Pool": "totalSize totalFree totalUsed",
  "utils/pool/PoolGroup": "stats",
};

interface Syntax {
  readonly type: string;
  readonly start: number;
  readonly end: number;
}
type Member = Syntax & {
  readonly key?: { readonly name?: string };
  readonly value?: { readonly type: string } | null;
};
type Node = Syntax & {
  readonly body?: readonly Member[];
  readonly properties?: readonly Member[];
  readonly expression?: { readonly callee?: { readonly name?: string } };
};

/** Every part of a module's syntax. */
function* below(node: unknown): Generator<Node> {
  if (typeof node !== "object" || node === null) return;
  if ("type" in node) yield node as Node;
  for (const part of Object.values(node)) yield* below(part);
}

/** What the library says to those who call it by an earlier version's names. */
const isAdvice = ({ type, expression }: Node): boolean =>
  type === "ExpressionStatement" && expression?.callee?.name === "deprecation";

/** Methods of a class, or of an object from which a class takes them. */
const methodsOf = ({ type, body, properties }: Node): readonly Member[] =>
  (type === "ClassBody" ? body : type === "ObjectExpression" ? properties : undefined)?.filter(
    ({ value }) => value?.type === "FunctionExpression",
  ) ?? [];

/** The module without these members and without advice. @throws where it has no member of such a name */
export function without(code: string, names: readonly string[]): string {
  const cuts: Syntax[] = [];
  const missing = new Set(names);
  for (const node of below(parseAst(code))) {
    if (isAdvice(node)) cuts.push(node);
    for (const member of methodsOf(node)) {
      const name = member.key?.name ?? "";
      if (!names.includes(name)) continue;
      missing.delete(name);
      cuts.push(member);
    }
  }
  if (missing.size > 0) throw new Error(`the drawing library has no member ${[...missing].join(", ")}`);
  let rest = "";
  let from = 0;
  for (const { start, end } of cuts.toSorted((a, b) => a.start - b.start)) {
    if (start < from) continue;
    rest += code.slice(from, start);
    from = code[end] === "," ? end + 1 : end;
  }
  return rest + code.slice(from);
}

const PIXI = "/node_modules/pixi.js/lib/";
/** Drawing into a canvas has methods of the same names as these classes. */
const SHAPES = "scene/graphics/";

/** The first member that this code mentions after all; undefined where it mentions none. */
export function mentioned(code: string): string | undefined {
  const names = Object.entries(UNCALLED).flatMap(([module, list]) =>
    module.startsWith(SHAPES) ? [] : list.split(" "),
  );
  return new RegExp(`\\.(${names.join("|")})\\b`).exec(code)?.[1];
}

/** @param judges whether the pieces are judged: in one piece, names of everything else would be taken for calls, and the pieces hold the same code */
export function uncalled(judges: boolean): Plugin {
  return {
    name: "uncalled",
    apply: "build",
    transform(code, id) {
      const [, module] = id.split(PIXI);
      if (!module) return null;
      const names = UNCALLED[module.replace(/\.mjs$/, "")]?.split(" ") ?? [];
      if (names.length === 0 && !code.includes("deprecation(")) return null;
      return { code: without(code, names), map: null };
    },
    generateBundle(_options, bundle) {
      if (!judges) return;
      for (const file of Object.values(bundle)) {
        if (file.type !== "chunk") continue;
        const drawn = file.moduleIds.some((id) => id.includes(PIXI) || id.includes("/src/scenes/"));
        const name = drawn && mentioned(file.code);
        if (name)
          this.error(`${file.fileName} mentions .${name}, which scripts/left-out-members.ts leaves out`);
      }
    },
  };
}
