/** Slide-size pictures in one ZIP, each with its words in a text file of the same name. */
import { strToU8, type Zippable, zip } from "fflate";
import { ENDINGS, type PictureType } from "../files/picture-kinds.ts";
import { bodyOf, type DeckPage, ownText, slideText, withPicture } from "./slide.ts";

export async function packStills(
  slides: readonly DeckPage<Blob>[],
  cautions: readonly string[],
): Promise<Uint8Array> {
  const files: Zippable = {};
  for (const [index, slide] of slides.entries()) {
    const name = `${String(index + 1).padStart(3, "0")}-${slide.id}`;
    // Pictures are packed already: store them.
    const put = async (picture: Blob, as: string) => {
      const file = `${as}.${endingOf(picture)}`;
      files[file] = [new Uint8Array(await picture.arrayBuffer()), { level: 0 }];
      return file;
    };
    if (slide.kind === "own") {
      if (slide.picture) await put(slide.picture.data, name);
      files[`${name}.txt`] = strToU8(ownText(slide));
      continue;
    }
    await put(slide.picture, name);
    const shown: string[] = [];
    for (const [at, { alt, picture }] of withPicture(slide.ownFigures).entries())
      shown.push(`${await put(picture.data, `${name}-${at + 1}`)}: ${alt}`);
    files[`${name}.txt`] = strToU8(slideText({ ...slide, body: [...bodyOf(slide), ...shown] }, cautions));
  }
  return new Promise((resolve, reject) =>
    zip(files, (error, data) => (error ? reject(error) : resolve(data))),
  );
}

const endingOf = ({ type }: Blob): string => ENDINGS[type as PictureType] ?? ENDINGS["image/png"];
