/** The pen's lines over the picture, and the small picture that the speaker's window gets. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { type MarkEvent, mark, NO_MARKS, type Place } from "../../../../src/modes/lecture/pen/pen.ts";
import { LONGEST_SIDE, sizeOfPicture } from "../../../../src/modes/lecture/picture/picture-limits.ts";
import { readToRoom, readToSpeaker } from "../../../../src/modes/lecture/windows/window-messages.ts";

const draw = (line: string, ...to: (readonly [number, number])[]): MarkEvent => ({ kind: "draw", line, to });
const after = (...events: readonly MarkEvent[]) => events.reduce(mark, NO_MARKS);

test("a line grows by its name, another begins beside it, and clearing takes both and leaves the pointer", () => {
  const drawn = after(
    { kind: "point", at: [0.5, 0.5] },
    draw("a", [0, 0]),
    draw("b", [1, 1]),
    draw("a", [0.1, 0.1], [0.2, 0.1]),
  );
  expect(drawn.lines).toEqual([
    {
      id: "a",
      points: [
        [0, 0],
        [0.1, 0.1],
        [0.2, 0.1],
      ],
    },
    { id: "b", points: [[1, 1]] },
  ]);
  expect(mark(drawn, { kind: "clear" })).toEqual({ pointer: [0.5, 0.5], lines: [] });
});

test("the eraser takes a line that it touches, between its points too, and no other", () => {
  const drawn = after(draw("flat", [0.1, 0.2], [0.9, 0.2]), draw("low", [0.1, 0.9], [0.9, 0.9]));
  const left = (...along: [Place, Place]) => mark(drawn, { kind: "erase", along }).lines.map(({ id }) => id);
  expect(left([0.5, 0.21], [0.5, 0.21])).toEqual(["low"]);
  expect(left([0.5, 0.5], [0.5, 0.5])).toEqual(["flat", "low"]);
  // A quick stroke, of which only the ends are told.
  expect(left([0.4, 0.05], [0.6, 0.5])).toEqual(["low"]);
  expect(left([0.4, 0.05], [0.6, 0.99])).toEqual([]);
  expect(left([0.2, 0.5], [0.8, 0.6])).toEqual(["flat", "low"]);
  // Past a line's end, not over it.
  expect(left([0.95, 0.05], [0.95, 0.5])).toEqual(["flat", "low"]);
});

test("whatever is drawn stays within bounds", () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const place = fc.tuple(share, share);
  const line = fc.stringMatching(/^[a-z0-9]{1,3}$/);
  const to = fc.array(place, { minLength: 1, maxLength: 100 });
  const any = fc.record({ kind: fc.constant("draw" as const), line, to });
  fc.assert(
    fc.property(fc.array(any, { maxLength: 300 }), (events) => {
      const { lines } = after(...events);
      expect(lines.length).toBeLessThanOrEqual(200);
      for (const { points } of lines) expect(points.length).toBeLessThanOrEqual(2000);
    }),
    { numRuns: 20 },
  );
});

test.each([
  { kind: "draw", line: "a", to: [] },
  { kind: "draw", line: "a", to: [[0, 2]] },
  { kind: "draw", line: "../x", to: [[0, 0]] },
  { kind: "draw", line: "a", to: Array.from({ length: 101 }, () => [0, 0]) },
  {
    kind: "erase",
    along: [
      [-1, 0],
      [0, 0],
    ],
  },
  { kind: "point", at: [0] },
])("a mark out of bounds is not read: %j", (event) => {
  expect(readToRoom({ kind: "mark", event })).toBeNull();
});

test("the picture keeps the stage's shape within its longest side, and only a JPEG of bounded size is taken", () => {
  expect(sizeOfPicture(1920, 1080)).toEqual([LONGEST_SIDE, 360]);
  expect(sizeOfPicture(768, 1024)).toEqual([480, LONGEST_SIDE]);
  expect(sizeOfPicture(320, 200)).toEqual([320, 200]);
  const jpeg = (size: number) => {
    const bytes = new Uint8Array(size);
    bytes.set([0xff, 0xd8, 0xff]);
    return { kind: "picture", bytes: bytes.buffer, width: 640, height: 360, covered: false };
  };
  expect(readToSpeaker(jpeg(5000))).not.toBeNull();
  expect(readToSpeaker(jpeg(500_000))).toBeNull();
  expect(readToSpeaker({ ...jpeg(5000), bytes: new Uint8Array(5000).buffer })).toBeNull();
  expect(readToSpeaker({ ...jpeg(5000), width: 4000 })).toBeNull();
});
