/** Words as wide and high as in our face, where no canvas measures them. */

/** Every letter as wide as a wide one: plates come out no smaller than on a page. */
const EM = 0.58;
const [ASCENT, DESCENT] = [0.93, 0.22];

/** Words as they were painted. */
export interface Painted {
  readonly canvas: HTMLCanvasElement;
  readonly words: string;
  readonly colour: string;
  readonly font: string;
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** Lets the window's canvases measure, and tell what is painted on them. */
export function measureLetters(onPaint: (painted: Painted) => void = () => {}): void {
  const inkOf = (canvas: HTMLCanvasElement) => ({
    canvas,
    font: "",
    fillStyle: "",
    by: 1,
    scale(by: number) {
      this.by *= by;
    },
    fillText(words: string, x: number, y: number) {
      onPaint({ canvas, words, colour: this.fillStyle, font: this.font, x, y, scale: this.by });
    },
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
  });
  HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement) {
    return inkOf(this);
  } as unknown as HTMLCanvasElement["getContext"];
}
