import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readLessonFiles } from "../../../src/cli/lesson-files.ts";
import { draftChecker, type FromDraftChecker } from "../../../src/lesson/check/draft-checker.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";

const files = readLessonFiles("lessons");
const library = {
  glossary: files.glossaries.en ?? {},
  sources: files.sources,
  lessons: files.lessons.en ?? [],
};
const guide = readFileSync("docs/authoring.md", "utf8");
const example = /````markdown\n([\s\S]*?)````/.exec(guide)?.[1] ?? "";

async function check(text: string): Promise<readonly FromDraftChecker[]> {
  const posted: FromDraftChecker[] = [];
  const hear = draftChecker({
    solve,
    post: (message) => posted.push(structuredClone(message)),
    rest: async () => {},
  });
  await hear(structuredClone({ kind: "library", library }));
  await hear({ kind: "text", id: 1, text });
  return posted;
}

const found = (posted: readonly FromDraftChecker[]): readonly string[] =>
  posted
    .filter(({ kind }, i) => kind === "read" || i === posted.length - 1)
    .flatMap(({ faults }) => faults.map((fault) => `${fault.path}: ${fault.found}`));

const QUESTION = `
\`\`\`question
kind: choose
ask: Which tube costs less?
answers:
  wide: { say: the wide one, because: Width helps., right: "RIGHT" }
  narrow: { say: the narrow one, because: It is narrow., right: "RIGHT" }
\`\`\`
`;
const GOAL = `
\`\`\`question
kind: goal
ask: Make the tube cost less.
control: conduitDiameter
until: pathway.pressureDrop < 0
reached: Good.
further: Wider.
missed: Not yet.
\`\`\`
`;

describe("a draft is checked as the command checks a file", () => {
  test("the guide's example has no faults, each step was run through the model, and all that is posted can pass between threads", async () => {
    const posted = await check(example);
    expect(found(posted)).toEqual([]);
    expect(posted.at(-1)).toMatchObject({ kind: "checked", steps: 2, of: 2 });
  });

  test("what another lesson does not have is a fault at the line that names it, and a typed number is told whole", async () => {
    const text = example
      .replace("minutes: 3", 'minutes: 3\nterms: [nothing]\nrecall: ["03-pathways#nothing"]')
      .replace("Now the tube is narrow.", "Now the tube takes 12 mmHg.");
    expect(found(await check(text))).toEqual([
      'lesson.md:9: glossary "nothing"',
      'lesson.md:10: step "03-pathways#nothing"',
      'lesson.md:30: a typed number, "12 mmHg", in step "narrow"',
    ]);
  });

  test("the steps of lessons that the guide names have questions to ask again", () => {
    const named = [...guide.matchAll(/`(\d\d-[a-z-]+#[a-z-]+)`/g)].map(([, reference]) => reference);
    expect(named).not.toEqual([]);
    const asked = library.lessons.flatMap(({ id, steps }) =>
      steps.flatMap((step) => (step.question ? [`${id}#${step.id}`] : [])),
    );
    expect(named.filter((reference) => !asked.includes(reference!))).toEqual([]);
  });

  test("a reversed claim, two right answers and an unreachable goal are faults at their lines", async () => {
    const reversed = example.replace("rises from previous", "falls from previous");
    expect(found(await check(reversed))).toEqual([
      expect.stringMatching(/^lesson\.md:28: "pathway\.pressureDrop falls from previous" does not hold/),
    ]);
    expect(found(await check(example + QUESTION.replaceAll("RIGHT", "pathway.pressureDrop > 0")))).toEqual([
      expect.stringMatching(/right by the model: wide, narrow/),
    ]);
    expect(found(await check(example + GOAL))).toEqual([
      expect.stringMatching(/no conduitDiameter reaches it/),
    ]);
  });

  test("a newer text ends the check of an older one", async () => {
    const posted: FromDraftChecker[] = [];
    const hear = draftChecker({
      solve,
      post: (message) => posted.push(message),
      rest: () => new Promise((done) => setTimeout(done)),
    });
    await hear({ kind: "library", library });
    const older = hear({ kind: "text", id: 1, text: example });
    await Promise.all([older, hear({ kind: "text", id: 2, text: example })]);
    expect(posted.filter(({ id, kind }) => id === 1 && kind === "checked")).toHaveLength(1);
    expect(posted.at(-1)).toMatchObject({ id: 2, steps: 2 });
  });
});
