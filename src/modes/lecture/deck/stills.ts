/** Slide-size pictures in one ZIP, each with its words in a text file of the same name. */
import { strToU8, type Zippable, zip } from "fflate";
import { ENDINGS, type PictureType } from "../picture-kinds.ts";
import { type DeckPage, ownText, slideText } from "./slide.ts";

export async function packStills(
  slides: readonly DeckPage<Blob>[],
  cautions: readonly string[],
): Promise<Uint8Array> {
  const files: Zippable = {};
  for (const [index, slide] of slides.entries()) {
    const name = `${String(index + 1).padStart(3, "0")}-${slide.id}`;
    // Pictures are packed already: store them.
    const picture = slide.kind === "own" ? slide.picture?.data : slide.picture;
    if (picture)
      files[`${name}.${endingOf(picture)}`] = [new Uint8Array(await picture.arrayBuffer()), { level: 0 }];
    files[`${name}.txt`] = strToU8(slide.kind === "own" ? ownText(slide) : slideText(slide, cautions));
  }
  return new Promise((resolve, reject) =>
    zip(files, (error, data) => (error ? reject(error) : resolve(data))),
  );
}

const endingOf = ({ type }: Blob): string => ENDINGS[type as PictureType] ?? ENDINGS["image/png"];
