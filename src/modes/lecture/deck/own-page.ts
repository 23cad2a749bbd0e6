/** The speaker's own stops as pages of a deck: their picture as large as the page holds it, or their words. */
import { type OwnStop, type Pictures, pictureOf } from "../talk/own-stops.ts";
import { type Opened, opened } from "./opened-picture.ts";
import type { OwnPage } from "./slide.ts";

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
  const found = blob && (await opened(blob));
  if (!found) return { ...page, picture: null };
  const { naturalWidth: width, naturalHeight: height } = found.image;
  return { ...page, picture: { data: await as(found), width, height } };
}
