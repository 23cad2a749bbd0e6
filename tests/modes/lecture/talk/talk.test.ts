import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shownAt, speak, startTalk, type TalkEvent } from "../../../../src/modes/lecture/talk/talk.ts";

const events: fc.Arbitrary<TalkEvent> = fc.oneof(
  fc.constantFrom<TalkEvent>(
    { kind: "next" },
    { kind: "back" },
    { kind: "first" },
    { kind: "last" },
    { kind: "hold" },
    { kind: "script" },
    { kind: "blank", to: "black" },
    { kind: "blank", to: "white" },
    { kind: "aside", state: "1~textracardiac" },
  ),
  fc.integer({ min: -5, max: 50 }).map((at): TalkEvent => ({ kind: "go", at })),
);

describe("a talk", () => {
  it("U13 any press while blank brings the picture back without stepping", () => {
    const blank = speak(startTalk(5, 2), { kind: "blank", to: "black" });
    expect(speak(blank, { kind: "next" })).toEqual(startTalk(5, 2));
    expect(speak(blank, { kind: "blank", to: "black" })).toEqual(startTalk(5, 2));
    expect(speak(blank, { kind: "blank", to: "white" }).blank).toBe("white");
  });

  it("U13 fifty random presses, then back to the script and the first step, equal a fresh start", () => {
    fc.assert(
      fc.property(fc.array(events, { maxLength: 50 }), (presses) => {
        const after = presses.reduce(speak, startTalk(7));
        expect(after.at).toBeGreaterThanOrEqual(0);
        expect(after.at).toBeLessThan(7);
        const home = [{ kind: "script" }, { kind: "first" }] as const;
        expect(home.reduce(speak, after)).toEqual(startTalk(7));
      }),
    );
  });

  it("holds what the room sees while the speaker moves on", () => {
    const held = speak(speak(startTalk(5, 1), { kind: "hold" }), { kind: "next" });
    expect(held.at).toBe(2);
    expect(shownAt(held)).toBe(1);
    expect(shownAt(speak(held, { kind: "hold" }))).toBe(2);
  });

  it("comes back to the script from a what-if by one press, and by stepping", () => {
    const aside = speak(startTalk(5, 1), { kind: "aside", state: "1" });
    expect(speak(aside, { kind: "script" })).toEqual(startTalk(5, 1));
    expect(speak(aside, { kind: "next" }).aside).toBeNull();
  });
});
