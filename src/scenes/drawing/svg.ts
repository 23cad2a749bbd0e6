/** A drawn scene as SVG 1.1: shapes and words stay shapes and words at any size; what is painted pixel by pixel is embedded. */
import { type Container, Graphics, graphicsContextToSvg, Matrix, Sprite, type Texture } from "pixi.js";
import { inMarkup } from "../../i18n/markup.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import { saidBy } from "./written.ts";

interface Collected {
  /** definitions: pictures and clips */
  readonly defs: string[];
  /** `id` of an embedded picture by texture and tint */
  readonly pictures: Map<string, string>;
  /** shapes that only clip others */
  readonly clips: Set<Container>;
}

/** Digits behind the point: a hundredth of a millimetre or of a pixel. */
const DIGITS = 2;
const number = (value: number): string => String(Number(value.toFixed(4)));

const placed = ({ a, b, c, d, tx, ty }: Matrix): string => {
  const parts = [a, b, c, d, tx, ty].map(number).join(" ");
  return parts === "1 0 0 1 0 0" ? "" : ` transform="matrix(${parts})"`;
};

/** The shapes of a Graphics without the element around them. */
const shapes = (graphics: Graphics): string =>
  graphicsContextToSvg(graphics, DIGITS)
    .replace(/^<svg[^>]*>/, "")
    .replace(/<\/svg>$/, "");

/** @returns the `id` of the sprite's picture, defined once for each texture and tint */
function picture(collected: Collected, texture: Texture, tint: number): string {
  const key = `${texture.uid} ${tint}`;
  const known = collected.pictures.get(key);
  if (known) return known;
  const id = `picture-${collected.pictures.size}`;
  collected.pictures.set(key, id);
  const source = texture.source.resource as HTMLCanvasElement;
  const canvas = document.createElement("canvas");
  canvas.width = source.width;
  canvas.height = source.height;
  const ink = present(canvas.getContext("2d"));
  ink.drawImage(source, 0, 0);
  if (tint !== 0xffffff) {
    ink.globalCompositeOperation = "source-in";
    ink.fillStyle = `#${tint.toString(16).padStart(6, "0")}`;
    ink.fillRect(0, 0, canvas.width, canvas.height);
  }
  collected.defs.push(
    `<image id="${id}" width="${number(texture.width)}" height="${number(texture.height)}" preserveAspectRatio="none" href="${canvas.toDataURL()}"/>`,
  );
  return id;
}

function sprite(collected: Collected, { texture, tint, anchor }: Sprite): string {
  if (texture.width <= 1 && texture.height <= 1) return "";
  const [x, y] = [-anchor.x * texture.width, -anchor.y * texture.height];
  const at = x || y ? ` x="${number(x)}" y="${number(y)}"` : "";
  return `<use href="#${picture(collected, texture, tint)}"${at}/>`;
}

/** Lines keep the width they were laid out with, also in another face. */
function words({ laid, colour }: NonNullable<ReturnType<typeof saidBy>>): string {
  const { hand, lines, widths, height, baseline } = laid;
  const rows = lines.map(
    (line, i) =>
      `<tspan x="0" y="${number(baseline + (i * height) / lines.length)}" textLength="${number(entryAt(widths, i))}" lengthAdjust="spacingAndGlyphs">${inMarkup(line)}</tspan>`,
  );
  return `<text font-family="${inMarkup(hand.family)}, sans-serif" font-size="${number(hand.size)}" font-weight="${hand.bold ? 700 : 400}" fill="${colour}">${rows.join("")}</text>`;
}

function clip(collected: Collected, masked: Container, mask: Graphics): string {
  const id = `clip-${collected.defs.length}`;
  collected.clips.add(mask);
  // The clip's own place, relative to that of the clipped group.
  const place = masked.parent ? masked.parent.getGlobalTransform(new Matrix(), false).invert() : new Matrix();
  place.append(mask.getGlobalTransform(new Matrix(), false));
  const paths = shapes(mask).replaceAll("<path ", `<path${placed(place)} `);
  collected.defs.push(`<clipPath id="${id}">${paths}</clipPath>`);
  return ` clip-path="url(#${id})"`;
}

function element(collected: Collected, container: Container): string {
  if (!container.visible || !container.renderable || container.alpha < 0.005) return "";
  const { mask } = container;
  const clipped = mask instanceof Graphics ? clip(collected, container, mask) : "";
  if (collected.clips.has(container)) return "";
  const said = saidBy(container);
  const own =
    container instanceof Graphics
      ? shapes(container)
      : said
        ? words(said)
        : container instanceof Sprite
          ? sprite(collected, container)
          : "";
  const inside = own + container.children.map((child) => element(collected, child)).join("");
  if (!inside) return "";
  container.updateLocalTransform();
  const faint = container.alpha < 1 ? ` opacity="${number(container.alpha)}"` : "";
  const group = `<g${placed(container.localTransform)}${faint}>${inside}</g>`;
  return clipped ? `<g${clipped}>${group}</g>` : group;
}

/** @param view drawn by a scene that uses no shaders */
export function sceneAsSvg(view: Container): string {
  const collected: Collected = { defs: [], pictures: new Map(), clips: new Set() };
  const body = element(collected, view);
  return `<defs>${collected.defs.join("")}</defs>${body}`;
}
