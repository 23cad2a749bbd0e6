/** Slide-size pictures in one ZIP, each with its words in a text file of the same name. */
import { strToU8, type Zippable, zip } from "fflate";
import { type Slide, slideText } from "./slide.ts";

export async function packStills(
  slides: readonly Slide<Blob>[],
  cautions: readonly string[],
): Promise<Uint8Array> {
  const files: Zippable = {};
  for (const [index, slide] of slides.entries()) {
    const name = `${String(index + 1).padStart(3, "0")}-${slide.id}`;
    // Pictures are packed already: store them.
    files[`${name}.png`] = [new Uint8Array(await slide.picture.arrayBuffer()), { level: 0 }];
    files[`${name}.txt`] = strToU8(slideText(slide, cautions));
  }
  return new Promise((resolve, reject) =>
    zip(files, (error, data) => (error ? reject(error) : resolve(data))),
  );
}
