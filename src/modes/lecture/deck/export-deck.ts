/** Makes a file, or pages for the printer, of the stops of a talk. */
import { language, t } from "../../../i18n/index.ts";
import { VERSION } from "../../../ui/app-version.ts";
import { cautionSentences } from "../../../ui/cautions.tsx";
import { fileName } from "../../../ui/take-away/file-name.ts";
import { saveFile } from "../../../ui/take-away/save-file.ts";
import { stillOf } from "../../shared/stage/stills-and-clips.ts";
import { isDrawn } from "../talk/stops.ts";
import { type DrawOptions, drawSlides } from "./draw-slides.ts";
import { asAddress, asFile } from "./opened-picture.ts";
import type { DeckWords } from "./pptx.ts";
import { PICTURE } from "./slide.ts";

export const DECK_KINDS = ["pptx", "pdf", "stills"] as const;
export type DeckKind = (typeof DECK_KINDS)[number];

export interface ExportOptions extends Omit<DrawOptions<never>, "picture" | "as" | "reader"> {
  readonly title: string;
}

/** One for all exports: slides, pages and pictures of a talk have their answers in the same places. */
const READER = 1;

/** px */
const STILL_HEIGHT = 1080;

export async function exportDeck(kind: DeckKind, { title, ...options }: ExportOptions): Promise<void> {
  const lessons = options.stops
    .filter(isDrawn)
    .map((stop) => (stop.kind === "step" ? stop.found.lesson : null));
  const [lesson] = lessons;
  const oneLesson = lessons.every((each) => each?.id === lesson?.id);
  const subject = title || (oneLesson ? lesson?.title : "") || t("lecture.deck.talk");
  const written = (oneLesson && lesson?.language) || language();
  const name = (extension: string) => fileName(subject, written, new Date(), extension);
  if (kind === "stills") {
    const picture = () => stillOf(options.context, STILL_HEIGHT);
    const slides = await drawSlides({ ...options, reader: READER, picture, as: asFile });
    if (!slides) return;
    const { packStills } = await import("./stills.ts");
    return saveBytes(name("zip"), await packStills(slides, cautionSentences()), "application/zip");
  }
  const picture = async () => {
    const { width, height, floor } = PICTURE;
    const canvas = await options.context.stage.snapshot(width, height, { theme: "paper", floor });
    return canvas.toDataURL("image/png");
  };
  const slides = await drawSlides({ ...options, reader: READER, picture, as: asAddress });
  if (!slides) return;
  const words = deckWords(subject, written);
  if (kind === "pdf") {
    const { printSlides } = await import("./print.tsx");
    return printSlides(slides, words);
  }
  const { writePptx, PPTX_TYPE } = await import("./pptx.ts");
  saveBytes(name("pptx"), await writePptx(slides, words), PPTX_TYPE);
}

const saveBytes = (name: string, bytes: Uint8Array, type: string): void =>
  saveFile(name, new Blob([bytes as BlobPart], { type }));

const deckWords = (title: string, written: string): DeckWords => ({
  title,
  language: written,
  open: t("lecture.deck.open"),
  made: t("sheet.made", { version: VERSION, date: new Date().toISOString().slice(0, 10) }),
  cautions: cautionSentences(),
});
