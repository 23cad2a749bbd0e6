/** Slides as a PPTX file: words as text that can be edited, the picture beside them, notes below. Loaded when asked for. */
import type PptxGenJS from "pptxgenjs";
import { fitText } from "./fit.ts";
import type { DeckPage, OwnPage, Slide } from "./slide.ts";

export interface DeckWords {
  readonly title: string;
  /** The link's own words. */
  readonly open: string;
  /** Kit, version and date. */
  readonly made: string;
  readonly cautions: readonly string[];
}

/** inches */
const PAGE = { w: 13.33, h: 7.5 } as const;

/** inches, of a slide of that size */
const BOX = {
  title: { x: 0.4, y: 0.25, w: 12.5, h: 0.75 },
  picture: { x: 0.4, y: 1.1, w: 8.4, h: 4.725 },
  panes: { x: 0.4, y: 5.85, w: 8.4, h: 0.75 },
  body: { x: 9, y: 1.1, w: 3.95, h: 2.9 },
  figures: { x: 9, y: 4.05, w: 3.95, h: 1.75 },
  caution: { x: 9, y: 5.85, w: 3.95, h: 0.75 },
  small: { x: 0.4, y: 6.62, w: 12.5, h: 0.5 },
  link: { x: 0.4, y: 7.12, w: 12.5, h: 0.28 },
} as const;

/** points: smallest and largest */
const SIZE = {
  title: [16, 30],
  body: [11, 20],
  figures: [10, 15],
  panes: [9, 13],
  caution: [9, 12],
  small: [6, 9],
} as const;

const INK = "12151F";
const SOFT = "434A5C";
/** Present wherever decks are shown, with all letters of our languages and subscript digits. */
const FONT = "Arial";

type Page = PptxGenJS.Slide;
type Box = (typeof BOX)[keyof typeof BOX] | { x: number; y: number; w: number; h: number };

function put(page: Page, text: string, box: Box, sizes: readonly [number, number], bold = false) {
  if (!text) return;
  const fitted = fitText(text, { width: box.w, height: box.h }, sizes);
  page.addText(fitted.text, {
    ...box,
    fontSize: fitted.size,
    fontFace: FONT,
    bold,
    color: INK,
    margin: 0,
    valign: "top",
  });
}

function addSlide(page: Page, slide: Slide, words: DeckWords): void {
  put(page, slide.title, BOX.title, SIZE.title, true);
  const captions = slide.panes.map(({ caption }) => caption).filter(Boolean);
  page.addImage({
    data: slide.picture,
    ...BOX.picture,
    altText: [slide.title, ...captions].join(". "),
  });
  put(page, slide.body.join("\n"), BOX.body, SIZE.body);
  const [alone] = slide.panes;
  if (slide.panes.length === 1 && alone) put(page, alone.figures.join("\n"), BOX.figures, SIZE.figures);
  else addPanes(page, slide);
  put(page, slide.caution, BOX.caution, SIZE.caution, true);
  put(page, words.cautions.join(" "), BOX.small, SIZE.small);
  const small = { fontSize: 10, fontFace: FONT, color: SOFT };
  page.addText(
    [
      { text: words.open, options: { ...small, hyperlink: { url: slide.link, tooltip: words.open } } },
      { text: `    ${words.made}`, options: small },
    ],
    { ...BOX.link, margin: 0 },
  );
  page.addNotes([slide.notes, slide.caution, slide.link].filter(Boolean).join("\n\n"));
}

/** The picture as large as the slide holds it, or title and words in its middle. */
function addOwn(page: Page, { title, words, picture, notes }: OwnPage): void {
  if (picture) {
    const scale = Math.min(PAGE.w / picture.width, PAGE.h / picture.height);
    const [w, h] = [picture.width * scale, picture.height * scale];
    page.addImage({ data: picture.data, x: (PAGE.w - w) / 2, y: (PAGE.h - h) / 2, w, h, altText: title });
  } else {
    put(page, title, { x: 0.9, y: 2.4, w: 11.5, h: 1.6 }, [20, 44], true);
    put(page, words, { x: 0.9, y: 4.2, w: 11.5, h: 2.4 }, [12, 24]);
  }
  if (notes) page.addNotes(notes);
}

/** Under the picture, each caption with its number below its own pane. */
function addPanes(page: Page, { panes }: Slide): void {
  const w = BOX.panes.w / panes.length;
  panes.forEach(({ caption, figures }, index) => {
    const box = { ...BOX.panes, x: BOX.panes.x + index * w, w: w - 0.1 };
    put(page, [caption, ...figures].join("\n"), box, SIZE.panes);
  });
}

export const PPTX_TYPE = "application/vnd.openxmlformats-officedocument.presentationml.presentation";

/** The bytes of a PPTX file. */
export async function writePptx(slides: readonly DeckPage[], words: DeckWords): Promise<Uint8Array> {
  const { default: Deck } = await import("pptxgenjs");
  const deck = new Deck();
  deck.layout = "LAYOUT_WIDE";
  deck.title = words.title;
  deck.author = "";
  deck.company = "";
  for (const slide of slides) {
    if (slide.kind === "own") addOwn(deck.addSlide(), slide);
    else addSlide(deck.addSlide(), slide, words);
  }
  return (await deck.write({ outputType: "uint8array", compression: true })) as Uint8Array;
}
