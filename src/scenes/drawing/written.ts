/** Words as a picture: measured at once, painted when they are drawn for the first time, as densely as the screen is. */
import { type Container, DOMAdapter, Rectangle, Sprite, Texture } from "pixi.js";
import { present } from "../../sim/checked/present.ts";

/** What words are written with; `size` in CSS px. */
interface Hand {
  readonly family: string;
  readonly size: number;
  readonly bold?: boolean | undefined;
}

/** Words as lines, CSS px from the top left. */
export interface Laid {
  readonly hand: Hand;
  readonly lines: readonly string[];
  readonly widths: readonly number[];
  readonly width: number;
  readonly height: number;
  /** of the first line; the others follow at `height` by their number */
  readonly baseline: number;
}

interface Said {
  readonly laid: Laid;
  readonly colour: string;
}

export interface Written {
  readonly view: Sprite;
  write(laid: Laid, colour: string): void;
  /** @param density device pixels in a CSS px */
  paint(density: number): void;
}

/** From the highest accent to the lowest tail. */
const TALL = "|ÉqÅM";
/** Parts of the size around the words: tails of our face reach below what is measured for it. */
const AIR = 0.2;
const MAX_KEPT = 1000;

type Ink = CanvasRenderingContext2D;

const inkOf = (width: number, height: number): Ink =>
  present(DOMAdapter.get().createCanvas(width, height).getContext("2d")) as Ink;

let ruler: Ink | undefined;
const kept = new Map<string, Laid>();
const said = new WeakMap<Container, Said>();

/** What a picture says; undefined of what is no words. */
export const saidBy = (view: Container): Said | undefined => said.get(view);

const fontOf = ({ family, size, bold }: Hand): string =>
  `${bold ? 700 : 400} ${size}px "${family}",sans-serif`;

/** @param wrap CSS px at which lines break, between words; never without it */
export function layOut(words: string, hand: Hand, wrap = Number.POSITIVE_INFINITY): Laid {
  const font = fontOf(hand);
  const key = `${font}|${wrap}|${words}`;
  const known = kept.get(key);
  if (known) return known;
  ruler ??= inkOf(1, 1);
  ruler.font = font;
  const ink = ruler;
  const lines = words.split("\n").flatMap((line) => broken(ink, line, wrap));
  const widths = lines.map((line) => {
    const { width, actualBoundingBoxLeft, actualBoundingBoxRight } = ink.measureText(line);
    return Math.max(width, actualBoundingBoxLeft + actualBoundingBoxRight);
  });
  const { actualBoundingBoxAscent: baseline, actualBoundingBoxDescent } = ink.measureText(TALL);
  const height = lines.length * (baseline + actualBoundingBoxDescent);
  const laid = { hand, lines, widths, width: Math.max(...widths), height, baseline };
  // The oldest goes: words that stand keep theirs, by which they are known as painted.
  if (kept.size >= MAX_KEPT) kept.delete(present(kept.keys().next().value));
  kept.set(key, laid);
  return laid;
}

function broken(ink: Ink, line: string, wrap: number): readonly string[] {
  if (wrap === Number.POSITIVE_INFINITY) return [line];
  const space = ink.measureText(" ").width;
  const lines: string[] = [];
  let room = 0;
  for (const word of line.split(" ")) {
    const { width } = ink.measureText(word);
    if (lines.length > 0 && space + width <= room) {
      lines.push(`${lines.pop()} ${word}`);
      room -= space + width;
    } else {
      lines.push(word);
      room = wrap - width;
    }
  }
  return lines;
}

export function written(): Written {
  const view = new Sprite();
  let texture: Texture | undefined;
  let [painted, dense]: [Said | undefined, number] = [undefined, 0];
  view.once("destroyed", () => texture?.destroy(true));
  return {
    view,
    write(laid, colour) {
      const before = said.get(view);
      if (before?.laid !== laid || before.colour !== colour) said.set(view, { laid, colour });
    },
    paint(density) {
      const now = said.get(view);
      if (!now || (density === dense && now === painted)) return;
      [painted, dense] = [now, density];
      texture?.destroy(true);
      texture = picture(now, density);
      view.texture = texture;
    },
  };
}

function picture({ laid, colour }: Said, density: number): Texture {
  const { hand, lines, width, height, baseline } = laid;
  const air = Math.ceil(AIR * hand.size);
  const device = (length: number) => Math.ceil(Math.ceil(Math.max(1, length) + 2 * air) * density);
  const ink = inkOf(device(width), device(height));
  ink.scale(density, density);
  ink.font = fontOf(hand);
  ink.fillStyle = colour;
  lines.forEach((line, i) => {
    ink.fillText(line, air, air + baseline + (i * height) / lines.length);
  });
  // In whole device pixels: a source of another density sizes its canvas anew where the two do not divide, which wipes it.
  const { source } = Texture.from(ink.canvas, true);
  return new Texture({
    source,
    orig: new Rectangle(0, 0, width, height),
    trim: new Rectangle(-air, -air, source.width / density, source.height / density),
  });
}
