/** Counting lit pixels of what a reader sees. */
import type { Page } from "@playwright/test";

/** Pixels of the page's picture whose every channel lies within `tolerance` of the colour, for each colour. */
export async function countColours(
  page: Page,
  colours: readonly string[],
  tolerance = 24,
): Promise<number[]> {
  const shot = await page.screenshot({ timeout: 60_000 });
  return page.evaluate(
    async ({ png, wanted, near }) => {
      const image = new Image();
      image.src = `data:image/png;base64,${png}`;
      await image.decode();
      const canvas = document.createElement("canvas");
      canvas.width = image.width;
      canvas.height = image.height;
      const ink = canvas.getContext("2d")!;
      ink.drawImage(image, 0, 0);
      const { data } = ink.getImageData(0, 0, image.width, image.height);
      return wanted.map((hex) => {
        const value = Number.parseInt(hex.slice(1), 16);
        const [r, g, b] = [value >> 16, (value >> 8) & 255, value & 255];
        let count = 0;
        for (let k = 0; k < data.length; k += 4) {
          if (
            Math.abs(data[k]! - r) <= near &&
            Math.abs(data[k + 1]! - g) <= near &&
            Math.abs(data[k + 2]! - b) <= near
          )
            count++;
        }
        return count;
      });
    },
    { png: shot.toString("base64"), wanted: colours, near: tolerance },
  );
}
