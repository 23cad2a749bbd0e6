import { describe, expect, it } from "vitest";
import { costs, type GridLadder, gridLadder } from "../../src/chain/grid-ladder.ts";

/** s of blood in one report of a field */
const SLICE = 0.02;

/** A ladder on a computer that computes `ability` s of blood in a second on 20 cells. */
function on(ability: number, { asked = 0.5, first = 20 } = {}) {
  const ladder = gridLadder();
  ladder.begin(first, false);
  ladder.ask(asked);
  return machine(ladder, ability);
}

function machine(ladder: GridLadder, ability: number) {
  const laid: number[] = [];
  return {
    ladder,
    laid,
    /** `seconds` of computing at `now`, the s of blood in a second on 20 cells */
    computes(seconds: number, now = ability) {
      for (let busy = 0; busy < seconds; ) {
        const spent = SLICE / (now * costs(20, ladder.cellsAcross));
        busy += spent;
        const next = ladder.note(SLICE, spent);
        if (next === undefined) continue;
        ladder.laid(next);
        laid.push(next);
      }
      return laid;
    },
  };
}

describe("the ladder of a field's grids", () => {
  it.each([
    { computer: "fast", ability: 4, asked: 0.5, laid: [24] },
    { computer: "a little faster than is needed", ability: 1.1, asked: 0.5, laid: [24] },
    { computer: "just enough, without room for more", ability: 0.8, asked: 0.5, laid: [] },
    { computer: "too slow by little", ability: 0.5, asked: 0.5, laid: [16] },
    { computer: "slow", ability: 0.2, asked: 0.5, laid: [12] },
    { computer: "so slow that nothing helps", ability: 0.02, asked: 0.5, laid: [12] },
    { computer: "fast, for slow motion", ability: 1.1, asked: 0.1, laid: [24] },
    { computer: "slow, for slow motion", ability: 0.2, asked: 0.1, laid: [] },
    { computer: "the same for real speed", ability: 1.1, asked: 1, laid: [] },
    { computer: "fast, for real speed", ability: 2, asked: 1, laid: [24] },
    { computer: "too slow for real speed", ability: 0.7, asked: 1, laid: [16] },
  ])("lays $laid where the computer is $computer", ({ ability, asked, laid }) => {
    expect(on(ability, { asked }).computes(60)).toEqual(laid);
  });

  it("waits for a beat before it goes up, and for some seconds before it comes down", () => {
    const fast = on(4);
    expect(fast.computes(0.9 / 4)).toEqual([]);
    expect(fast.computes(0.2 / 4)).toEqual([24]);
    const slow = on(0.4);
    expect(slow.computes(3.9)).toEqual([]);
    expect(slow.computes(0.3)).toEqual([16]);
  });

  it("does not take one slow second for a slow computer", () => {
    const { computes } = on(0.8);
    computes(8);
    computes(0.8, 0.3);
    expect(computes(20)).toEqual([]);
  });

  it("tries what was too fine again only for other walls, another inflow or another speed", () => {
    const { ladder, computes, laid } = on(1.1);
    computes(6);
    computes(5, 0.7);
    expect(laid).toEqual([24, 20]);
    computes(120);
    expect(laid).toEqual([24, 20]);
    ladder.changed();
    computes(6);
    computes(5, 0.7);
    ladder.ask(0.4);
    computes(6);
    computes(5, 0.5);
    expect(ladder.begin(20, true)).toBe(20);
    computes(6);
    expect(laid).toEqual([24, 20, 24, 20, 24, 20, 24]);
  });

  it("keeps what it has found for other walls of the same pathway, and begins another pathway as at first", () => {
    const { ladder, computes } = on(0.2);
    computes(10);
    expect(ladder.begin(20, true)).toBe(12);
    expect(ladder.begin(20, false)).toBe(20);
    const fast = on(4);
    fast.computes(5);
    expect(fast.ladder.begin(20, true)).toBe(24);
    // A GPU's grid is not the processor's.
    expect(fast.ladder.begin(16, true)).toBe(16);
    expect(on(0.2).ladder.begin(24, true)).toBe(20);
  });

  it("goes no finer than it may, however fast the computer", () => {
    const { ladder, computes } = on(4);
    ladder.begin(16, false, 16);
    expect(computes(10)).toEqual([]);
    expect(computes(20, 0.2)).toEqual([12]);
    expect(ladder.begin(20, false)).toBe(20);
    expect(computes(10)).toEqual([12, 24]);
  });

  it("judges nothing while the page is paused, holds still or is hidden, and goes on as before", () => {
    const { ladder, computes } = on(4);
    computes(0.2);
    ladder.ask(0);
    expect(computes(30)).toEqual([]);
    expect(computes(30, 0.1)).toEqual([]);
    ladder.ask(0.5);
    expect(computes(0.2)).toEqual([]);
    expect(computes(0.1)).toEqual([24]);
    computes(5, 0.2);
    expect(ladder.cellsAcross).toBe(12);
    ladder.ask(0);
    ladder.ask(0.5);
    computes(0.9, 1.1);
    expect(computes(60, 4)).toEqual([24, 12, 20]);
  });

  it("is without a choice on a field that was never asked for motion", () => {
    const ladder = gridLadder();
    ladder.begin(6, false);
    expect(machine(ladder, 4).computes(30)).toEqual([]);
  });
});
