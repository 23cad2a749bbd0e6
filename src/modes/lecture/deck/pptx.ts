/** Slides as a PPTX file: words as text that can be edited, the picture beside them, notes below. Loaded when asked for. */
import type PptxGenJS from "pptxgenjs";
import { entryAt } from "../../../sim/checked/present.ts";
import { type Box, columnOf, shared, within } from "./column.ts";
import { fitText } from "./fit.ts";
import { bodyOf, type DeckPage, type OwnPage, type Slide, withPicture } from "./slide.ts";

export interface DeckWords {
  readonly title: string;
  readonly language: string;
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
  /** Of body and figures together. */
  column: { x: 9, y: 1.1, w: 3.95, h: 4.7 },
  caution: { x: 9, y: 5.85, w: 3.95, h: 0.75 },
  small: { x: 0.4, y: 6.62, w: 12.5, h: 0.5 },
  link: { x: 0.4, y: 7.12, w: 12.5, h: 0.28 },
} as const;

/** points: smallest and largest */
const SIZE = {
  title: [16, 30],
  body: [11, 20],
  figures: [10, 15],
  fewer: [8, 12],
  panes: [9, 13],
  caution: [9, 12],
  small: [6, 9],
} as const;

const INK = "12151F";
const SOFT = "434A5C";
/** Present wherever decks are shown, with all letters of our languages and subscript digits. */
const FONT = "Arial";

type Page = PptxGenJS.Slide;

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
  addColumn(page, slide);
  if (slide.panes.length > 1) addPanes(page, slide);
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

/** What is said, the numbers of a picture that stands alone, and between them the step's own figures. */
function addColumn(page: Page, slide: Slide): void {
  const words = bodyOf(slide).join("\n");
  const ownFigures = withPicture(slide.ownFigures);
  const [alone] = slide.panes;
  const numbers = slide.panes.length === 1 && alone ? alone.figures.join("\n") : "";
  if (ownFigures.length === 0) {
    put(page, words, BOX.body, SIZE.body);
    put(page, numbers, BOX.figures, SIZE.figures);
    return;
  }
  const column = columnOf(BOX.column, words, numbers !== "");
  put(page, words, column.body, SIZE.body);
  const boxes = shared(column.figures, ownFigures.length);
  for (const [index, { alt, picture }] of ownFigures.entries())
    page.addImage({ data: picture.data, ...within(entryAt(boxes, index), picture), altText: alt });
  put(page, numbers, column.numbers, SIZE.fewer);
}

/** The picture as large as the slide holds it, or title and words in its middle. */
function addOwn(page: Page, { title, words, picture, notes }: OwnPage): void {
  if (picture) {
    page.addImage({ data: picture.data, ...within({ x: 0, y: 0, ...PAGE }, picture), altText: title });
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
