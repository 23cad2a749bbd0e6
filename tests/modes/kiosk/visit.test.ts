import { describe, expect, it } from "vitest";
import { startVisit, USUAL_IDLE_LIMITS, type Visit, visit } from "../../../src/modes/kiosk/visit.ts";

const idleFor = (from: Visit, seconds: number): Visit => {
  let now = from;
  for (let at = from.touched; at <= from.touched + seconds; at += 0.25)
    now = visit(now, { kind: "tick", at });
  return now;
};
const reading = visit(startVisit(0), { kind: "open", screen: "lesson", at: 10 });

describe("a visit to the kiosk", () => {
  it("U16 warns at least 20 s before it goes back to the start", () => {
    expect(USUAL_IDLE_LIMITS.warning).toBeGreaterThanOrEqual(20);
    expect(idleFor(reading, 59).left).toBeNull();
    expect(idleFor(reading, 60.25).left).toBe(20);
    expect(idleFor(reading, 79).screen).toBe("lesson");
    expect(idleFor(reading, 80)).toEqual(startVisit(90));
  });

  it("U16 keeps the place after any touch, as often as one likes", () => {
    let now = reading;
    for (let round = 0; round < 12; round++) {
      const warned = idleFor(now, 70);
      expect(warned.left).toBe(10);
      now = visit(warned, { kind: "touch", at: warned.touched + 70 });
      expect(now).toMatchObject({ screen: "lesson", left: null });
    }
  });

  it("waits at the start for ever", () => {
    expect(idleFor(startVisit(0), 500)).toEqual(startVisit(0));
  });

  it("survives a clock that jumps back", () => {
    expect(visit(reading, { kind: "tick", at: 2 })).toMatchObject({
      screen: "lesson",
      touched: 2,
      left: null,
    });
  });
});
