/** The speaker's own stops as pages of a deck: their picture as large as the page holds it, or their words. */
import { type OwnStop, type Pictures, pictureOf } from "../own-stops.ts";
import type { OwnPage } from "./slide.ts";

interface Opened {
  readonly blob: Blob;
  readonly image: HTMLImageElement;
}

/** px: as wide as a full screen */
const MAX_WIDTH = 1920;

/** `as` gives the picture in the form that the file needs. A picture that cannot be read leaves the title. */
export async function ownPage<Picture>(
  stop: OwnStop,
  pictures: Pictures,
  as: (opened: Opened) => Promise<Picture>,
): Promise<OwnPage<Picture>> {
  const { title, notes } = stop;
  const page = {
    kind: "own",
    id: stop.kind,
    title,
    words: "words" in stop ? stop.words : "",
    notes,
  } as const;
  const blob = pictures.get(pictureOf(stop) ?? "");
  const image = blob && (await opened(blob));
  if (!blob || !image) return { ...page, picture: null };
  const { naturalWidth: width, naturalHeight: height } = image;
  return { ...page, picture: { data: await as({ blob, image }), width, height } };
}

async function opened(blob: Blob): Promise<HTMLImageElement | null> {
  const url = URL.createObjectURL(blob);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    return image;
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** A data address that every program for slides shows: WebP and SVG are not among them. */
export function drawnAs(image: HTMLImageElement): string {
  const scale = Math.min(1, MAX_WIDTH / image.naturalWidth);
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(image.naturalWidth * scale));
  canvas.height = Math.max(1, Math.round(image.naturalHeight * scale));
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/png");
}
