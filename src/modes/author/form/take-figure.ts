/** A picture from a file as a figure of the lesson: an SVG cleaned, any other drawn anew, so that nothing but the picture is kept. */
import DOMPurify from "dompurify";
import {
  bytesOf,
  FIGURE_LIMITS,
  figureFault,
  type LessonFigure,
  totalBytes,
} from "../../../lesson/own/own-figures.ts";
import { newId } from "../../../lesson/read/new-id.ts";
import type { Fault } from "../../../sim/faults.ts";

export type TakenFigure =
  | { readonly ok: true; readonly figure: LessonFigure }
  | { readonly ok: false; readonly fault: Omit<Fault, "path"> };

/** bytes of a file that is opened at all */
const MAX_FILE = 20_000_000;
/** px of the longer side: what a hall's screen shows of it */
const LONGEST_SIDE = 1600;
/** Tried in turn until the picture is small enough. */
const TRIES = [
  { type: "image/png", scale: 1 },
  { type: "image/jpeg", scale: 1, quality: 0.9 },
  { type: "image/jpeg", scale: 0.75, quality: 0.8 },
  { type: "image/jpeg", scale: 0.5, quality: 0.75 },
] as const;

const no = (found: string, allowed: string): TakenFigure => ({ ok: false, fault: { found, allowed } });

export async function takeFigure(file: File, others: readonly LessonFigure[]): Promise<TakenFigure> {
  if (file.size > MAX_FILE)
    return no(`${file.name}: ${Math.round(file.size / 1e6)} MB`, `at most ${MAX_FILE / 1e6} MB`);
  const stem = newId(
    file.name.replace(/\.[^.]*$/, ""),
    others.map(({ name }) => name.replace(/\.[^.]*$/, "")),
  );
  const svg = file.type === "image/svg+xml" || /\.svg$/i.test(file.name);
  const taken = svg ? await cleanSvg(file) : await drawnAnew(file);
  if (!taken) return no(file.name, "a picture: SVG, PNG or JPEG");
  const figure = { name: `${stem}.${taken.ending}`, data: taken.data };
  const fault = figureFault(figure, totalBytes([...others, figure]), others);
  return fault ? { ok: false, fault } : { ok: true, figure };
}

interface Taken {
  readonly ending: "svg" | "png" | "jpg";
  readonly data: string;
}

/** Left out before it is parsed: declarations, remarks, and handlers, of which a parser would complain. */
const NOT_DRAWN =
  /<\?xml[^>]*\?>|<!DOCTYPE[^>[]*(\[[^\]]*\])?>|<!--[\s\S]*?-->|\son[a-z]+\s*=\s*("[^"]*"|'[^']*')/gi;

/** Without scripts; what a style would load from elsewhere no picture loads. */
const cleanSvgText = (text: string): string | null =>
  asSvg(
    DOMPurify.sanitize(text, {
      USE_PROFILES: { svg: true, svgFilters: true },
      FORBID_TAGS: ["a", "image"],
    }),
  );

/** Links within the drawing stay: a gradient, a marker. */
const LINK_ELSEWHERE = /\s(?:[\w-]+:)?href="\s*[^"#\s][^"]*"/gi;

/** A cleaned drawing, written as HTML, as an SVG file without links to elsewhere; null where it is no drawing. */
export function asSvg(html: string): string | null {
  if (!/^\s*<svg[\s>]/i.test(html)) return null;
  // A name that HTML has for the no-break space and SVG has not.
  const svg = html.replace(LINK_ELSEWHERE, "").replaceAll("&nbsp;", "&#160;");
  return svg.includes("xmlns=") ? svg : svg.replace(/<svg/i, '<svg xmlns="http://www.w3.org/2000/svg"');
}

async function cleanSvg(file: File): Promise<Taken | null> {
  const text = (await file.text()).replace(/^\uFEFF/, "").replace(NOT_DRAWN, "");
  const clean = cleanSvgText(text.trim());
  return clean === null ? null : { ending: "svg", data: base64Of(new TextEncoder().encode(clean)) };
}

async function drawnAnew(file: File): Promise<Taken | null> {
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return null;
  const fit = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  let last: Taken | null = null;
  for (const { type, scale, ...rest } of TRIES) {
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(picture.width * fit * scale));
    canvas.height = Math.max(1, Math.round(picture.height * fit * scale));
    const pen = canvas.getContext("2d");
    if (!pen) return null;
    // JPEG knows no transparency: what is clear becomes white.
    if (type === "image/jpeg") {
      pen.fillStyle = "#fff";
      pen.fillRect(0, 0, canvas.width, canvas.height);
    }
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const [, data = ""] = canvas.toDataURL(type, "quality" in rest ? rest.quality : undefined).split(",");
    last = { ending: type === "image/png" ? "png" : "jpg", data };
    if (bytesOf(last) <= FIGURE_LIMITS.bytes) break;
  }
  picture.close();
  return last;
}

function base64Of(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
