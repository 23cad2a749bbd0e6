import { describe, expect, it } from "vitest";
import { DIAMOND, DISC, type Pixels, paintHead, paintTail, RING } from "../../src/scenes/drawing/comets.ts";

const sheet = (width = 40, height = 40): Pixels => ({
  width,
  height,
  colours: new Uint32Array(width * height),
});
const opacity = ({ colours, width }: Pixels, x: number, y: number) => (colours[y * width + x]! >>> 24) / 255;
/** px2 of full colour that all the paint adds up to */
const area = ({ colours }: Pixels) => colours.reduce((sum, colour) => sum + (colour >>> 24) / 255, 0);
const BLUE = 0xff8020;

describe("heads", () => {
  it("a disc covers its circle at any position on the pixels", () => {
    for (const at of [20, 20.25, 20.5, 20.81]) {
      const pixels = sheet();
      paintHead(pixels, { x: at, y: at, dx: 1, dy: 0, half: 6, shape: DISC }, { colour: BLUE, alpha: 1 });
      expect(Math.abs(area(pixels) / (Math.PI * 36) - 1)).toBeLessThan(0.02);
      expect(pixels.colours[20 * 40 + 20]).toBe(0xff000000 + BLUE);
    }
  });

  it("a ring leaves out its middle, of half its width", () => {
    const pixels = sheet();
    paintHead(pixels, { x: 20.5, y: 20.5, dx: 1, dy: 0, half: 6, shape: RING }, { colour: BLUE, alpha: 1 });
    expect(opacity(pixels, 20, 20)).toBe(0);
    expect(opacity(pixels, 20, 16)).toBe(1);
    expect(Math.abs(area(pixels) / (Math.PI * (36 - 9)) - 1)).toBeLessThan(0.04);
  });

  it("a diamond points along its motion", () => {
    const [right, slant] = [sheet(), sheet()];
    paintHead(right, { x: 20.5, y: 20.5, dx: 1, dy: 0, half: 6, shape: DIAMOND }, { colour: BLUE, alpha: 1 });
    expect(opacity(right, 25, 20)).toBe(1);
    expect(opacity(right, 24, 24)).toBe(0);
    paintHead(
      slant,
      { x: 20.5, y: 20.5, dx: Math.SQRT1_2, dy: Math.SQRT1_2, half: 6, shape: DIAMOND },
      { colour: BLUE, alpha: 1 },
    );
    expect(opacity(slant, 24, 24)).toBeGreaterThan(0.3);
    for (const pixels of [right, slant]) expect(Math.abs(area(pixels) / 72 - 1)).toBeLessThan(0.04);
  });

  it("what is outside the picture is left out, and nothing reappears on the other side", () => {
    const pixels = sheet();
    paintHead(pixels, { x: 39.5, y: 20.5, dx: 1, dy: 0, half: 5, shape: DISC }, { colour: BLUE, alpha: 1 });
    expect(opacity(pixels, 39, 20)).toBe(1);
    expect(opacity(pixels, 0, 20) + opacity(pixels, 0, 21)).toBe(0);
    const before = pixels.colours.slice();
    paintHead(pixels, { x: -100, y: 900, dx: 1, dy: 0, half: 5, shape: DISC }, { colour: BLUE, alpha: 1 });
    paintTail(
      pixels,
      { x: -40, y: 20, wide: 3, strong: 1 },
      { x: -10, y: 90, wide: 1, strong: 0 },
      { colour: BLUE, alpha: 1 },
    );
    expect(pixels.colours).toEqual(before);
  });
});

describe("tails", () => {
  it("thin out from front to back, in width and in strength", () => {
    for (const [ux, uy] of [
      [1, 0],
      [0, -1],
      [0.6, 0.8],
      [-0.8, 0.6],
    ] as const) {
      const pixels = sheet(80, 80);
      const at = (along: number) =>
        opacity(pixels, Math.floor(40.5 + ux * along), Math.floor(40.5 + uy * along));
      paintTail(
        pixels,
        { x: 40.5, y: 40.5, wide: 3, strong: 1 },
        { x: 40.5 + 30 * ux, y: 40.5 + 30 * uy, wide: 1, strong: 0 },
        { colour: BLUE, alpha: 1 },
      );
      expect(at(-2)).toBe(0);
      expect(at(33)).toBe(0);
      expect(at(2)).toBeGreaterThan(0.8);
      expect(at(15)).toBeCloseTo(0.25, 1);
      expect(at(28)).toBeLessThan(0.06);
      // Width falls from 6 to 2, opacity as the square of what falls from 1 to 0.
      const whole = Array.from({ length: 3000 }, (_, k) => (k + 0.5) / 3000).reduce(
        (sum, t) => sum + ((6 - 4 * t) * (1 - t) ** 2 * 30) / 3000,
        0,
      );
      expect(Math.abs(area(pixels) / whole - 1)).toBeLessThan(0.08);
    }
  });

  it("one that has no length leaves no mark", () => {
    const pixels = sheet();
    paintTail(
      pixels,
      { x: 20, y: 20, wide: 3, strong: 1 },
      { x: 20, y: 20, wide: 1, strong: 0 },
      { colour: BLUE, alpha: 1 },
    );
    expect(area(pixels)).toBe(0);
  });
});

describe("paint on paint", () => {
  it("blends like coats of paint: two of one half cover three quarters, mostly in the colour of the upper one", () => {
    const pixels = sheet();
    paintHead(
      pixels,
      { x: 20.5, y: 20.5, dx: 1, dy: 0, half: 4, shape: DISC },
      { colour: 0x0000ff, alpha: 0.5 },
    );
    paintHead(
      pixels,
      { x: 20.5, y: 20.5, dx: 1, dy: 0, half: 4, shape: DISC },
      { colour: 0x00ff00, alpha: 0.5 },
    );
    const colour = pixels.colours[20 * 40 + 20]!;
    expect((colour >>> 24) / 255).toBeCloseTo(0.75, 2);
    expect(colour & 255).toBeCloseTo(255 / 3, -0.5);
    expect((colour >> 8) & 255).toBeCloseTo((255 * 2) / 3, -0.5);
  });

  it("opaque paint covers what was there", () => {
    const pixels = sheet();
    paintHead(
      pixels,
      { x: 20.5, y: 20.5, dx: 1, dy: 0, half: 4, shape: DISC },
      { colour: 0x0000ff, alpha: 0.5 },
    );
    paintHead(
      pixels,
      { x: 20.5, y: 20.5, dx: 1, dy: 0, half: 4, shape: DISC },
      { colour: 0x00ff00, alpha: 1 },
    );
    expect(pixels.colours[20 * 40 + 20]).toBe(0xff00ff00);
  });
});
