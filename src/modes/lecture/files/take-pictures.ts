/** A file of the speaker's own as pictures of a talk: made safe and measured on this machine, never sent. */

import DOMPurify from "dompurify";
import { costFault } from "../../../lesson/own/figure-content.ts";
import { messageOf } from "../../../sim/checked/message-of.ts";
import type { Fault } from "../../../sim/faults.ts";
import { newPictureName } from "../talk/own-stops.ts";
import { MAX_STOPS } from "../talk/playlist.ts";
import { ENDINGS, isPdf, MAX_PICTURE, typeOfPicture } from "./picture-kinds.ts";

/** bytes */
const MAX_PDF = 200_000_000;
/** Bytes of an SVG, which is cleaned while the page waits. */
const MAX_SVG = 4_000_000;
/** px of a side */
const MAX_SIDE = 16_000;

interface TakenPicture {
  readonly name: string;
  readonly title: string;
  readonly blob: Blob;
}

export interface Taken {
  readonly pictures: readonly TakenPicture[];
  readonly faults: readonly Fault[];
}

/** `room`: how many pictures there is room for */
export async function takePictures(
  file: File,
  room: number,
  onPage: (page: number, of: number) => void,
): Promise<Taken> {
  const refuse = (found: string, allowed: string): Taken => ({
    pictures: [],
    faults: [{ path: file.name, found, allowed }],
  });
  const title = file.name.replace(/\.[a-z0-9]+$/i, "");
  if (room <= 0) return refuse(`${MAX_STOPS} stops before it`, `at most ${MAX_STOPS}`);
  const head = new Uint8Array(await file.slice(0, 2000).arrayBuffer());
  if (isPdf(head)) {
    if (file.size > MAX_PDF) return refuse(megabytes(file.size), `at most ${megabytes(MAX_PDF)}`);
    const { drawPages } = await import("./pdf-pages.ts");
    try {
      const drawn = await drawPages(file, room, onPage);
      const pictures = drawn.pictures.map((blob, index) => ({
        name: newPictureName("png"),
        title: `${title} ${index + 1}`,
        blob,
      }));
      const { faults } = refuse(`${drawn.count} pages`, `at most ${room} more stops`);
      return { pictures, faults: drawn.count > room ? faults : [] };
    } catch (reason) {
      return refuse(messageOf(reason), "PDF");
    }
  }
  const type = typeOfPicture(head);
  if (!type) return refuse(file.type || "?", "PNG, JPEG, SVG, WebP, PDF");
  const most = type === "image/svg+xml" ? MAX_SVG : MAX_PICTURE;
  if (file.size > most) return refuse(megabytes(file.size), `at most ${megabytes(most)}`);
  const svg = type === "image/svg+xml" ? cleanSvg(await file.text()) : null;
  const costly = svg === null ? null : costFault(file.name, svg);
  if (costly) return refuse(costly.found, costly.allowed);
  const blob = new Blob([svg ?? (await file.arrayBuffer())], { type });
  const size = await measure(blob);
  if (!size) return refuse(type, "PNG, JPEG, SVG, WebP");
  if (Math.max(...size) > MAX_SIDE) return refuse(`${size.join(" × ")} px`, `at most ${MAX_SIDE} px`);
  return { pictures: [{ name: newPictureName(ENDINGS[type]), title, blob }], faults: [] };
}

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;

/** Nothing in it runs, and nothing is fetched. */
const cleanSvg = (text: string): string => {
  const clean = DOMPurify.sanitize(text, { USE_PROFILES: { svg: true, svgFilters: true } });
  // Written as HTML would write it, which SVG does not know.
  const svg = clean.replaceAll("&nbsp;", "&#160;");
  return svg.includes("xmlns=") ? svg : svg.replace(/<svg/i, '<svg xmlns="http://www.w3.org/2000/svg"');
};

/** px; null for what no browser can show */
async function measure(blob: Blob): Promise<readonly [number, number] | null> {
  const url = URL.createObjectURL(blob);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    return [image.naturalWidth, image.naturalHeight];
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(url);
  }
}
