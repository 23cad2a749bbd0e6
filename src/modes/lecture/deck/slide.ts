/** A slide of someone's own deck, as plain data: what it shows, what is said beside it, and the way back to the live state. */

/** One picture of those side by side: what sets it apart, and its numbers. */
export interface SlidePane {
  /** Empty where one picture stands alone. */
  readonly caption: string;
  /** Each with its name, unit and, where the model leaves a range open, band. */
  readonly figures: readonly string[];
}

export interface SlideWords {
  readonly title: string;
  /** The question with its answers where the hall is asked one, else the first sentence. */
  readonly body: readonly string[];
  /** The step's own caution. */
  readonly caution: string;
  readonly panes: readonly SlidePane[];
  readonly notes: string;
  /** Opens the live state. */
  readonly link: string;
}

/** A figure of the lesson's own. */
export interface SlideFigure<Picture = string> {
  readonly alt: string;
  /** null where it cannot be read: its words stand for it */
  readonly picture: OwnPicture<Picture> | null;
}

export interface Slide<Picture = string> extends SlideWords {
  readonly kind: "scene";
  /** lesson and step, for a file's name */
  readonly id: string;
  /** a data address, where nothing else is said */
  readonly picture: Picture;
  readonly ownFigures: readonly SlideFigure<Picture>[];
}

export const withPicture = <Picture>(
  ownFigures: readonly SlideFigure<Picture>[],
): readonly { readonly alt: string; readonly picture: OwnPicture<Picture> }[] =>
  ownFigures.flatMap(({ alt, picture }) => (picture ? [{ alt, picture }] : []));

/** A slide of the speaker's own: a picture that fills it, or words alone. */
export interface OwnPage<Picture = string> {
  readonly kind: "own";
  readonly id: string;
  readonly title: string;
  /** Further words of a title or an end. */
  readonly words: string;
  /** null where words stand alone */
  readonly picture: OwnPicture<Picture> | null;
  readonly notes: string;
}

export interface OwnPicture<Picture = string> {
  readonly data: Picture;
  /** px */
  readonly width: number;
  readonly height: number;
}

export type DeckPage<Picture = string> = Slide<Picture> | OwnPage<Picture>;

/** px: sharp in a hall and at the width of a page; the floor is about 11 points there */
export const PICTURE = { width: 1600, height: 900, floor: 30 } as const;

/** With the words of each figure that has no picture. */
export const bodyOf = ({ body, ownFigures }: Slide<unknown>): readonly string[] => [
  ...body,
  ...ownFigures.flatMap(({ alt, picture }) => (picture ? [] : [`[${alt}]`])),
];

/** All that a slide says, as a text file beside its picture. */
export const slideText = (slide: SlideWords, cautions: readonly string[]): string =>
  [
    slide.title,
    ...slide.body,
    slide.caution,
    ...slide.panes.map(({ caption, figures }) => [caption, ...figures].filter(Boolean).join("\n")),
    slide.notes,
    slide.link,
    cautions.join(" "),
  ]
    .filter(Boolean)
    .join("\n\n")
    .concat("\n");

export const ownText = ({ title, words, notes }: OwnPage<unknown>): string =>
  [title, words, notes].filter(Boolean).join("\n\n").concat("\n");
