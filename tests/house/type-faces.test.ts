import { readdirSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import { expect, test } from "vitest";
import { latinFace, parts, unicodeRange } from "../../scripts/type-faces.ts";
import { TOP } from "./sources.ts";

/** Code points for which a font has an outline: its table `cmap`, in the format of most fonts (4). */
function drawn(font: Buffer): ReadonlySet<number> {
  const tables = Array.from({ length: font.readUInt16BE(4) }, (_, i) => 12 + 16 * i);
  const cmap = font.readUInt32BE(tables.find((at) => font.toString("latin1", at, at + 4) === "cmap")! + 8);
  const formats = Array.from(
    { length: font.readUInt16BE(cmap + 2) },
    (_, i) => cmap + font.readUInt32BE(cmap + 8 + 8 * i),
  );
  const at = formats.find((format) => font.readUInt16BE(format) === 4)!;
  const bytes = font.readUInt16BE(at + 6);
  const found = new Set<number>();
  for (let i = 0; i < bytes; i += 2) {
    const [last, first] = [font.readUInt16BE(at + 14 + i), font.readUInt16BE(at + 16 + bytes + i)];
    for (let point = first; point <= last && point < 0xffff; point++) found.add(point);
  }
  return found;
}

/** What is written in all languages, file by file. */
const texts = ["src/i18n", "lessons"].flatMap((folder) =>
  readdirSync(join(TOP, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => [".json", ".md"].includes(extname(entry.name)))
    .map((entry) => join(entry.parentPath, entry.name)),
);

test.each([400, 700])(
  "the type of weight %i that comes first has each character that the kit writes",
  async (weight) => {
    const { written, other } = parts();
    const [whole, first, second] = await Promise.all(
      [[...written, ...other], written, other].map(async (points) =>
        drawn(await latinFace(weight, points, "sfnt")),
      ),
    );
    expect(texts.length).toBeGreaterThan(100);
    for (const file of texts) {
      const letters = [...new Set(readFileSync(file, "utf8"))].filter((letter) => letter > " ");
      const lacking = letters.filter((letter) => {
        const point = letter.codePointAt(0)!;
        return whole!.has(point) && !first!.has(point);
      });
      expect(lacking, file).toEqual([]);
    }
    // Nothing of the family is lost: the rest is in the file that comes when asked for.
    expect([...whole!].filter((point) => !first!.has(point) && !second!.has(point))).toEqual([]);
    expect(first!.has("ø".codePointAt(0)!)).toBe(false);
    expect(second!.has("ø".codePointAt(0)!)).toBe(true);
  },
);

test("code points that follow each other are one range", () => {
  expect(unicodeRange([0x41, 0x42, 0x43, 0x61])).toBe("U+41-43,U+61");
});
