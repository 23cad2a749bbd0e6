/** Words as wide and high as in our face, where no canvas measures them. */

/** Every letter as wide as a wide one: plates come out no smaller than on a page. */
const EM = 0.58;
const [ASCENT, DESCENT] = [0.93, 0.22];

/** Lets the window's canvases measure. */
export function measureLetters(): void {
  const ink = {
    font: "",
    measureText(words: string) {
      const size = Number(/([\d.]+)px/.exec(this.font)?.[1]);
      return {
        width: words.length * size * EM,
        actualBoundingBoxLeft: 0,
        actualBoundingBoxRight: words.length * size * EM,
        actualBoundingBoxAscent: size * ASCENT,
        actualBoundingBoxDescent: size * DESCENT,
      };
    },
  };
  HTMLCanvasElement.prototype.getContext = (() => ink) as unknown as HTMLCanvasElement["getContext"];
}
