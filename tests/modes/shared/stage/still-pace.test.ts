import { describe, expect, it } from "vitest";
import type { Frame, Pane } from "../../../../src/chain/frame.ts";
import { EMPTY_PANE } from "../../../../src/chain/still-frame.ts";
import { stillPace } from "../../../../src/modes/shared/stage/still-pace.ts";
import { START } from "../../../../src/state/scene-state.ts";

const CLOT = { x: 1, y: 2, diameter: 3, angle: 0, place: "pathway" };
/** Made anew at each look, as the chain does. */
const frameOf = (pane: Partial<Pane> = {}): Frame => ({
  state: START,
  panes: [{ ...EMPTY_PANE, clots: [{ ...CLOT }], ...pane }],
  time: 0,
  pace: 0,
  degraded: [],
  still: true,
});

/** Looks at a screen frame every 25 ms; ms at which `frameAt` was looked at and drawn. */
function watched(frameAt: (ms: number) => Frame, wakenAt: readonly number[] = []) {
  let now = 0;
  const { wakeUp, isDue, isStale } = stillPace(() => now);
  const looked: number[] = [];
  const drawn: number[] = [];
  for (; now <= 4000; now += 25) {
    if (wakenAt.includes(now)) wakeUp();
    if (!isDue()) continue;
    looked.push(now);
    if (isStale(frameAt(now))) drawn.push(now);
  }
  return { looked, drawn };
}

describe("a picture that stands still", () => {
  it("is looked at four times a second, and drawn once a second while nothing in it is new", () => {
    const { looked, drawn } = watched(() => frameOf());
    expect(looked).toHaveLength(17);
    expect(drawn).toEqual([0, 1000, 2000, 3000, 4000]);
  });

  it.each<[string, Partial<Pane>]>([
    ["a clot elsewhere", { clots: [{ ...CLOT, x: 1.1 }] }],
    ["one clot fewer", { clots: [] }],
    ["curves of the days", { exchange: {} as NonNullable<Pane["exchange"]> }],
    ["dye on its way", { washOut: { time: [0, 1], left: [1, 0.5] } }],
  ])("is drawn at the next look when there is %s", (_, change) => {
    const { drawn } = watched((ms) => frameOf(ms < 1300 ? {} : change));
    expect(drawn).toEqual([0, 1000, 1500, 2500, 3500]);
  });

  it("is drawn at every screen frame for a while after something was asked of it", () => {
    const { drawn } = watched(() => frameOf(), [2000]);
    expect(drawn.filter((ms) => ms >= 2000 && ms <= 3500)).toHaveLength(61);
    expect(drawn.filter((ms) => ms > 3500)).toEqual([]);
  });

  it("that takes long to draw leaves twice that time to the page, one that moves does not wait", () => {
    const gapsOf = (frame: Frame) => {
      let now = 0;
      const { wakeUp, isDue, isStale } = stillPace(() => now);
      const drawn: number[] = [];
      wakeUp();
      for (; now <= 1000; now += 10) {
        if (!isDue() || !isStale(frame)) continue;
        drawn.push(now);
        now += 100;
      }
      return drawn.slice(1).map((at, i) => at - drawn[i]!);
    };
    expect(gapsOf(frameOf())).toEqual([330, 330, 330]);
    expect(new Set(gapsOf({ ...frameOf(), still: false }))).toEqual(new Set([110]));
  });
});

describe("a first picture that waits for its blood", () => {
  const walls = { geometry: {} as NonNullable<Pane["geometry"]> };
  const flows = { ...walls, field: {} as NonNullable<Pane["field"]> };
  const moving = (ms: number, pane: Partial<Pane>): Frame => ({
    ...frameOf(pane),
    still: false,
    time: ms / 1000,
  });
  /** A screen frame every 25 ms of a picture that goes on, with walls only before `flowing`. */
  const drawnOf = (flowing: number, until: number, wakenAt: readonly number[] = []) => {
    let now = 0;
    const { wakeUp, goOn, isDue, isStale } = stillPace(() => now);
    const drawn: number[] = [];
    for (; now <= until; now += 25) {
      if (wakenAt.includes(now)) wakeUp();
      goOn();
      if (isDue() && isStale(moving(now, now < flowing ? walls : flows))) drawn.push(now);
    }
    return drawn;
  };

  it("is drawn once, and at every screen frame when blood has come", () => {
    expect(drawnOf(500, 575)).toEqual([0, 500, 525, 550, 575]);
  });

  it("is drawn when something is asked of it, as by a new size", () => {
    expect(drawnOf(500, 500, [200])).toEqual([0, 200, 500]);
  });

  it("goes on without blood when that is late", () => {
    expect(drawnOf(9000, 1550)).toEqual([0, 1500, 1525, 1550]);
  });
});
