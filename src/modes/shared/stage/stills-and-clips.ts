/** Stills and clips of the stage, each with its numbers, cautions, version and date. */

import { t } from "../../../i18n/index.ts";
import { present } from "../../../sim/checked/present.ts";
import { figuresOf } from "../../../ui/figures.ts";
import { recordClip } from "../../../ui/take-away/clip.ts";
import { saveFile } from "../../../ui/take-away/save-file.ts";
import { drawSheet, pictureArea, type Sheet } from "../../../ui/take-away/sheet.ts";
import { svgSheet } from "../../../ui/take-away/svg-sheet.ts";
import { stateLink } from "../address/state-link.ts";
import type { Context } from "../mode.ts";
import { sceneReading } from "../words/scene-reading.ts";
import { themeNamed } from "./themes.ts";

const WIDE = 16 / 9;
const CLIP = { width: 1280, height: 720, seconds: 8 } as const;

function sheetOf({ session, theme }: Context): Sheet {
  const { colour, family } = themeNamed(theme.value);
  return {
    title: t(`stage.${session.scene.value.request.stage}`),
    figures: figuresOf(session.chain.circulations.value[0] ?? null),
    date: new Date().toISOString(),
    colours: { ground: colour.stage, ink: colour.ink, soft: colour.inkSoft },
    family,
  };
}

function canvasOf(width: number, height: number) {
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  return { canvas, context: present(canvas.getContext("2d")) };
}

/** px high, 16 to 9 */
export async function stillOf(context: Context, height: number): Promise<Blob> {
  const width = Math.round(height * WIDE);
  const area = pictureArea(width, height);
  const picture = await context.stage.snapshot(area.width, area.height);
  const sheet = canvasOf(width, height);
  drawSheet(sheet.context, picture, sheetOf(context));
  return new Promise((resolve, reject) =>
    sheet.canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture"))), "image/png"),
  );
}

export const saveStill = async (context: Context, height: number): Promise<void> =>
  saveFile("lungward.png", await stillOf(context, height));

/** CSS px of the drawing, 16 to 9: it has no size of its own, so only its words' share of it counts. */
const DRAWING = { width: 1280, height: 720 } as const;

export async function saveDrawing(context: Context): Promise<void> {
  const area = pictureArea(DRAWING.width, DRAWING.height);
  const drawing = await context.stage.drawing(area.width, area.height);
  const description = sceneReading(context).join(" ");
  const text = svgSheet(drawing, sheetOf(context), { ...DRAWING, description, link: stateLink(context) });
  saveFile("lungward.svg", text, "image/svg+xml");
}

export async function saveClip(
  context: Context,
  onProgress: (share: number) => void,
  cancel: AbortSignal,
): Promise<void> {
  const { canvas, context: drawing } = canvasOf(CLIP.width, CLIP.height);
  const clip = await recordClip({
    canvas,
    seconds: CLIP.seconds,
    eachFrame: (paint) => context.stage.afterFrame(paint),
    paint: () => {
      const picture = context.stage.canvas();
      // The page has laid the scene into what it leaves clear: the rest would be empty margin.
      if (picture) drawSheet(drawing, picture, sheetOf(context), context.stage.clear());
    },
    onProgress,
    cancel,
  });
  if (clip) saveFile(clip.type.includes("mp4") ? "lungward.mp4" : "lungward.webm", clip);
}
