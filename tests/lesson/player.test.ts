import { describe, expect, test } from "vitest";
import type { Judgement } from "../../src/lesson/judge/questions.ts";
import type { Lesson } from "../../src/lesson/lesson.ts";
import {
  canAdvance,
  type Player,
  type PlayerEvent,
  play,
  progressOf,
  questionInView,
  startPlayer,
  stepAt,
} from "../../src/lesson/player.ts";
import {
  dueForRecall,
  NO_PROGRESS,
  readProgress,
  scoreOf,
  withLesson,
  writeProgress,
} from "../../src/lesson/progress/progress.ts";
import { readLesson } from "../../src/lesson/read/read.ts";

const step = (id: string, more = "") => `## ${id} {#${id}}\n\n${more}### plain\nWords.\n\n`;
const choice = (kind: string, more = "") =>
  `\`\`\`question\nkind: ${kind}\nask: What?\n${more}answers:\n  a: { say: A, because: Since., right: true }\n  b: { say: B, because: Since not., show: one }\n\`\`\`\n\n`;
const TEXT = `---
id: a-lesson
number: 2
title: T
reader: r
aim: a
remember: m
minutes: 3
recall: [choose, ask, 01-first#other]
---

${step("one")}${step("ask", choice("predict", "reveal: run\nhints: [Think., Look.]\n"))}${step("between")}${step("run")}${step("choose", choice("choose", "again: 1\n"))}${step("last")}`;

const lesson: Lesson = readLesson(TEXT, "a-lesson.md").value!;
const right: Judgement = { right: true, because: [], show: null, truth: "a" };
const wrong: Judgement = { right: false, because: [], show: "one", truth: "a" };
const day = "2026-11-25";
const walk = (player: Player, ...events: (PlayerEvent | PlayerEvent["kind"])[]): Player =>
  events.reduce<Player>(
    (now, event) => play(lesson, now, (typeof event === "string" ? { kind: event } : event) as PlayerEvent),
    player,
  );
const answer = (given: string, judgement: Judgement | null): PlayerEvent => ({
  kind: "answer",
  given,
  judgement,
  day,
});
const where = (player: Player) => `${stepAt(lesson, player).id} ${player.phase}`;

describe("a learner alone", () => {
  test("the numbers that stood in a question stay with its first answer", () => {
    const asked = walk(startPlayer(lesson, true, undefined, "choose"), {
      ...answer("b", wrong),
      numbers: { "pressures.svc | mmHg 1": 12.3 },
    } as PlayerEvent);
    const again = walk(asked, {
      ...answer("a", right),
      numbers: { "pressures.svc | mmHg 1": 15 },
    } as PlayerEvent);
    expect(again.answers.choose).toMatchObject({ tries: 2, numbers: { "pressures.svc | mmHg 1": 12.3 } });
    const kept = withLesson(NO_PROGRESS, lesson.id, progressOf(lesson, again));
    expect(readProgress(writeProgress(kept))).toEqual(kept);
  });

  test("the button pressed again with the same answer is no further try", () => {
    const asked = startPlayer(lesson, true, undefined, "choose");
    const once = walk(asked, answer("b", wrong));
    expect(walk(once, answer("b", wrong))).toEqual(once);
    expect(walk(once, answer("b", right)).answers.choose?.tries).toBe(2);
  });

  test("U24 the run is not shown before the prediction, whichever way one comes", () => {
    const start = startPlayer(lesson, true);
    const asked = walk(start, "next");
    expect(where(asked)).toBe("ask ask");
    expect(canAdvance(lesson, asked)).toBe(false);
    for (const event of ["next", { kind: "go", step: "run" }, { kind: "go", step: "run" }] as const)
      expect(where(walk(asked, event))).toBe("ask ask");
    expect(where(walk(start, { kind: "go", step: "run" }))).toBe("ask ask");
    expect(where(startPlayer(lesson, true, undefined, "run"))).toBe("ask ask");
  });

  test("U24 a prediction is locked once given, watched, and only then explained", () => {
    const given = walk(startPlayer(lesson, true), "next", answer("b", null), answer("a", null));
    expect(given.answers.ask).toMatchObject({ given: "b", right: null, tries: 1 });
    const running = walk(given, "next", "next");
    expect(where(running)).toBe("run watch");
    const judged = walk(running, { kind: "judged", question: "ask", judgement: wrong });
    expect(where(judged)).toBe("run watch");
    expect(judged.judgement).toBe(wrong);
    const explained = walk(judged, "next");
    expect(where(explained)).toBe("run read");
    expect(explained.judgement).toBe(wrong);
    expect(explained.answers.ask).toMatchObject({ right: false });
    const noted = walk(explained, { kind: "note", question: "ask", text: "x".repeat(900) });
    expect(noted.answers.ask!.note).toHaveLength(500);
  });

  test("a step that resolves a prediction and asks something itself explains first, and its question is open", () => {
    const { question } = lesson.steps.find(({ id }) => id === "choose")!;
    const asking = {
      ...lesson,
      steps: lesson.steps.map((each) => (each.id === "run" ? { ...each, question } : each)),
    };
    const go = (player: Player, ...events: readonly (PlayerEvent | "next")[]) =>
      events.reduce((now, event) => play(asking, now, event === "next" ? { kind: "next" } : event), player);
    const watching = go(startPlayer(asking, true), "next", answer("a", null), "next", "next");
    expect(watching.phase).toBe("watch");
    const explained = go(watching, { kind: "judged", question: "ask", judgement: right }, "next");
    expect([explained.phase, explained.judgement]).toEqual(["read", right]);
    const open = go(explained, "next");
    expect([open.phase, open.judgement, open.given]).toEqual(["ask", null, null]);
    // Judged once more, as when numbers move: nothing of it reaches the open question.
    expect(go(open, { kind: "judged", question: "ask", judgement: right }).judgement).toBeNull();
  });

  test("a wrong answer leads to the step that shows why, and back to the question with the answer still there", () => {
    const player = walk(startPlayer(lesson, true), "next", answer("a", null), "next", "next", "next", "next");
    expect(where(player)).toBe("choose ask");
    const why = walk(player, answer("b", wrong), { kind: "why", step: "one" });
    expect([why.phase, why.why]).toEqual(["why", "one"]);
    for (const way of ["return", "next", "back"] as const) {
      const back = walk(why, way);
      expect(where(back)).toBe("choose ask");
      expect(back.judgement).toBe(wrong);
    }
    const mended = walk(why, "return", answer("a", right));
    expect(mended.answers.choose).toMatchObject({ given: "b", right: false, tries: 2 });
  });

  test("hints are given one at a time and run out", () => {
    const asked = walk(startPlayer(lesson, true), "next");
    expect([0, 1, 2, 3].map((count) => walk(asked, ...Array<"hint">(count).fill("hint")).hints)).toEqual([
      0, 1, 2, 2,
    ]);
  });

  test("U25 a question comes again some steps later, and the lesson ends with its recall, an earlier lesson's among it", () => {
    let player = walk(
      startPlayer(lesson, true),
      "next",
      answer("a", null),
      "next",
      "next",
      "next",
      "next",
      answer("a", right),
      "next",
    );
    expect(where(player)).toBe("choose again");
    expect(questionInView(lesson, player)).toBe(lesson.steps[4]!.question);
    player = walk(player, answer("b", wrong), answer("a", right));
    // One try: the first one counts.
    expect(player.recalled).toEqual({ "a-lesson#choose": { right: false, day } });
    player = walk(player, "next");
    expect(where(player)).toBe("last read");
    const asked: string[] = [];
    for (
      player = walk(player, "next");
      player.phase === "again";
      player = walk(player, answer("a", right), "next")
    ) {
      asked.push(`${player.queue[0]!.lesson ?? ""}#${player.queue[0]!.step}`);
    }
    expect(asked).toEqual(["#choose", "#ask", "01-first#other"]);
    expect(player).toMatchObject({ phase: "end", finished: true });
    expect(player.recalled["a-lesson#choose"]).toEqual({ right: true, day });
    expect(Object.keys(player.recalled)).toContain("01-first#other");
  });

  test("a visit resumes at its step, with answers, and questions that are due come before", () => {
    const player = walk(startPlayer(lesson, true), "next", answer("a", null), "next", "next", "next", "next");
    const kept = progressOf(lesson, player);
    expect(where(startPlayer(lesson, true, kept))).toBe("choose ask");
    const due = startPlayer(lesson, true, kept, undefined, [{ lesson: "01-first", step: "other" }]);
    expect(due.phase).toBe("again");
    expect(where(walk(due, answer("a", right), "next"))).toBe("choose ask");
    // Back without answering loses nothing either.
    expect(
      where(
        startPlayer(lesson, true, {
          ...kept,
          step: "gone",
          answers: { gone: { given: "a", right: true, tries: 1, day } },
        }),
      ),
    ).toBe("one read");
  });
});

describe("a speaker", () => {
  test("may walk on without an answer, is never asked again, and Home and End reach the ends", () => {
    const start = startPlayer(lesson, false);
    const steps: string[] = [where(start)];
    let player = start;
    for (let each = 0; each < 6; each++) {
      player = walk(player, "next");
      steps.push(where(player));
    }
    expect(steps).toEqual([
      "one read",
      "ask ask",
      "between read",
      "run read",
      "choose ask",
      "last read",
      "last end",
    ]);
    expect(where(walk(player, "first"))).toBe("one read");
    expect(where(walk(start, "last"))).toBe("last read");
    expect(where(walk(player, "back"))).toBe("last read");
  });
});

describe("progress", () => {
  const done = withLesson(
    NO_PROGRESS,
    "a-lesson",
    progressOf(
      lesson,
      walk(
        startPlayer(lesson, true),
        "next",
        answer("a", null),
        "next",
        "next",
        { kind: "judged", question: "ask", judgement: wrong },
        "next",
        "next",
        answer("a", right),
      ),
    ),
  );

  test("goes through text and back, and anything else reads as none", () => {
    expect(readProgress(writeProgress(done))).toEqual(done);
    for (const text of [
      null,
      "",
      "{",
      "[]",
      '{"version":2,"lessons":{}}',
      '{"version":1,"lessons":{"a":{"step":3}}}',
    ])
      expect(readProgress(text)).toEqual(NO_PROGRESS);
  });

  test("the score counts first tries and recall, never time", () => {
    expect(scoreOf(done.lessons["a-lesson"]!)).toEqual({ right: 1, asked: 2 });
  });

  test("U25 what was missed comes first at a later visit, nothing comes twice on a day, and what was recalled rests", () => {
    expect(dueForRecall(done, day)).toEqual([]);
    expect(dueForRecall(done, "2026-11-26")).toEqual(["a-lesson#ask", "a-lesson#choose"]);
    const recalled = {
      ...done.lessons["a-lesson"]!,
      recalled: {
        "a-lesson#ask": { right: true, day: "2026-11-26" },
        "a-lesson#choose": { right: true, day: "2026-11-26" },
      },
    };
    expect(dueForRecall(withLesson(done, "a-lesson", recalled), "2026-11-27")).toEqual(["a-lesson#ask"]);
  });
});
