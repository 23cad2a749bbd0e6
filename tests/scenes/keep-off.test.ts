import { expect, test } from "vitest";
import { keepOff } from "../../src/scenes/layers/keep-off.ts";
import { seededRandom } from "../../src/sim/random.ts";

const box = { x: 0, y: 0, width: 420, height: 300 };
/** A vessel down the middle with a branch across, as in a narrow pane. */
const inBlood = (x: number, y: number) => Math.abs(x - 210) < 20 || Math.abs(y - 110) < 14;
const plateAt = (x: number, y: number, width = 110, height = 44) => ({
  at: [x, y] as const,
  x: x + width / 2,
  y,
  width,
  height,
});
const covers = ({ x, y, width, height }: ReturnType<typeof plateAt>) => {
  let found = 0;
  for (let i = 0; i <= 20; i++)
    for (let j = 0; j <= 8; j++) if (inBlood(x + width * (i / 20 - 0.5), y + height * (j / 8 - 0.5))) found++;
  return found / (21 * 9);
};
const onBlood = (plate: ReturnType<typeof plateAt>) => covers(plate) > 0;

test("plates in a narrow plane keep clear of the blood that they describe", () => {
  const spots = [plateAt(210, 40), plateAt(210, 250), plateAt(90, 110), plateAt(330, 110)];
  const placed = keepOff(spots, box, [], onBlood);
  expect(placed).toHaveLength(spots.length);
  for (const each of placed) expect(covers(each)).toBe(0);
});

test("U20 plates never cover each other or what is taken, and one without room is left out", () => {
  const random = seededRandom(5);
  const taken = { x: 0, y: 0, width: 420, height: 60 };
  for (let round = 0; round < 30; round++) {
    const spots = Array.from({ length: 9 }, () => plateAt(420 * random(), 300 * random()));
    const placed = keepOff(spots, box, [taken], onBlood);
    expect(placed.length).toBeGreaterThan(0);
    placed.forEach((a, i) => {
      expect(a.x - a.width / 2).toBeGreaterThanOrEqual(0);
      expect(a.x + a.width / 2).toBeLessThanOrEqual(420);
      expect(a.y - a.height / 2).toBeGreaterThanOrEqual(60);
      expect(a.y + a.height / 2).toBeLessThanOrEqual(300);
      for (const b of placed.slice(i + 1))
        expect(Math.abs(a.x - b.x) >= a.width || Math.abs(a.y - b.y) >= a.height).toBe(true);
    });
  }
});

test("a plate that would like to lie upon its spot in the blood leaves it to be seen", () => {
  const [placed] = keepOff([{ ...plateAt(210, 220, 140, 60), x: 210, y: 220 }], box, [], onBlood);
  expect(Math.abs(placed!.x - 210) >= 70 || Math.abs(placed!.y - 220) >= 30).toBe(true);
  expect(covers(placed!)).toBe(0);
  // Where no blood is hidden it stays where it would like to be.
  expect(keepOff([{ ...plateAt(60, 220), x: 60, y: 220 }], box, [], onBlood)[0]).toMatchObject({
    x: 60,
    y: 220,
  });
});

test("where blood fills the box there is no plate rather than one that covers it", () => {
  expect(keepOff([plateAt(210, 150)], box, [], () => true)).toEqual([]);
});

test("a plate whose hairline would be longer than allowed is left out", () => {
  const far = ({ x }: { x: number }) => x < 290;
  const plate = plateAt(210, 150);
  expect(keepOff([plate], box, [], far)).toHaveLength(1);
  expect(keepOff([plate], box, [], far, () => 10)).toEqual([]);
});

test("a plate without room nearby takes its narrower form, and keeps its own where it has room", () => {
  const narrow = plateAt(300, 220, 90, 90);
  const wide = { ...plateAt(300, 220, 170, 50), narrow };
  expect(keepOff([wide], box, [], onBlood)[0]!.width).toBe(170);
  // Further vessels leave a strip that only the narrow form fits.
  const beside = (plate: typeof narrow) =>
    onBlood(plate) || plate.x - plate.width / 2 < 230 || plate.x + plate.width / 2 > 350;
  expect(keepOff<typeof narrow>([wide], box, [], beside)[0]!.width).toBe(90);
});
