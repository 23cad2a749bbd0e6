/** The figures that stand in the words of a step, as a slide shows them beside the scene. */
import { bytesOfBase64 } from "../../../lesson/progress/base64.ts";
import type { Block } from "../../../lesson/prose.ts";
import type { DrawnStop } from "../talk/stops.ts";
import { type Opened, opened } from "./opened-picture.ts";
import type { SlideFigure } from "./slide.ts";

/** px of the longer side: an SVG has no size of its own */
const DRAWN = 1600;

/** A slide has the plain text alone, and so its figures. One that cannot be read has no picture, but its words. */
export async function figuresOfStep<Picture>(
  stop: DrawnStop,
  as: (opened: Opened) => Promise<Picture>,
): Promise<readonly SlideFigure<Picture>[]> {
  const blocks = stop.kind === "step" ? stop.found.step.plain.prose : [];
  return Promise.all(
    blocks.filter(isPicture).map(async ({ alt, src }) => {
      const found = await opened(blobOf(src));
      if (!found) return { alt, picture: null };
      const { naturalWidth: width, naturalHeight: height } = found.image;
      return { alt, picture: { data: await as(found), width, height } };
    }),
  );
}

const isPicture = (block: Block): block is Extract<Block, { kind: "picture" }> => block.kind === "picture";

function blobOf(address: string): Blob {
  const [, type = "", data = ""] = /^data:([^;]*);base64,(.*)$/.exec(address) ?? [];
  const bytes = bytesOfBase64(data);
  if (type !== "image/svg+xml") return new Blob([bytes], { type });
  return new Blob([withSize(new TextDecoder().decode(bytes))], { type });
}

/** In its own shape, as large as a slide can show: without a size some browsers draw nothing. */
export function withSize(svg: string): string {
  const [tag = ""] = /<svg[^>]*>/i.exec(svg) ?? [];
  const numberOf = (name: string) =>
    Number(new RegExp(`\\s${name}="\\s*([\\d.]+)(?:px)?\\s*"`).exec(tag)?.[1]);
  const box =
    /\sviewBox="([^"]*)"/i
      .exec(tag)?.[1]
      ?.trim()
      .split(/[\s,]+/)
      .map(Number) ?? [];
  const width = box[2] || numberOf("width") || 4;
  const height = box[3] || numberOf("height") || 3;
  const scale = DRAWN / Math.max(width, height);
  const viewBox = box.length === 4 ? "" : ` viewBox="0 0 ${width} ${height}"`;
  const bare = tag.replace(/\s(width|height)="[^"]*"/gi, "");
  const sized = bare.replace(
    /^<svg/i,
    `<svg width="${Math.round(width * scale)}" height="${Math.round(height * scale)}"${viewBox}`,
  );
  return svg.replace(tag, () => sized);
}
