import { expect, test } from "vitest";
import { flashCount } from "./flash-count.ts";

const [WIDTH, HEIGHT] = [360, 330];
/** One second at 25 pictures: a square of this side and colour, lit `times` a second. */
function blinking(side: number, times: number, colour: readonly [number, number, number]) {
  const count = flashCount(WIDTH, HEIGHT);
  for (let n = 0; n < 25; n++) {
    const lit = Math.sin((2 * Math.PI * times * n) / 25) > 0;
    const data = new Uint8Array(4 * WIDTH * HEIGHT);
    for (let y = 0; y < side; y++)
      for (let x = 0; x < side; x++) if (lit) data.set(colour, 4 * (y * WIDTH + x));
    count.add(data);
  }
  return count.result();
}

test("a white square that blinks five times a second is counted with its whole area", () => {
  const { light, most } = blinking(100, 5, [255, 255, 255]);
  expect(light).toBe(100 * 100);
  expect(most).toBe(5);
});

test("what turns together counts as much at once, and what turns by halves counts half", () => {
  expect(blinking(100, 5, [255, 255, 255]).atOnce).toBe(100 * 100);
  const count = flashCount(WIDTH, HEIGHT);
  for (let n = 0; n < 25; n++) {
    const data = new Uint8Array(4 * WIDTH * HEIGHT);
    for (let y = 0; y < 100; y++)
      for (let x = 0; x < 100; x++)
        if ((x + n) % 2) data.fill(255, 4 * (y * WIDTH + x), 4 * (y * WIDTH + x) + 3);
    count.add(data);
  }
  expect(count.result()).toMatchObject({ atOnce: 100 * 50 });
});

test("two blinks a second are allowed, and so is a faint one", () => {
  expect(blinking(100, 2, [255, 255, 255]).light).toBe(0);
  expect(blinking(100, 5, [60, 60, 60]).light).toBe(0);
});

test("a red one is counted as red too", () => {
  expect(blinking(50, 5, [255, 0, 0]).red).toBe(50 * 50);
  expect(blinking(50, 5, [0, 0, 255]).red).toBe(0);
});
