/** The words of slides: they fit their boxes, and are those of the step with the model's numbers. */
import { strFromU8, unzipSync } from "fflate";
import { expect, test } from "vitest";
import { fitText, linesAt } from "../../../../src/modes/lecture/deck/fit.ts";
import { paneCaptions } from "../../../../src/modes/lecture/deck/pane-captions.ts";
import { plainText } from "../../../../src/modes/lecture/deck/plain-text.ts";
import { packStills } from "../../../../src/modes/lecture/deck/stills.ts";
import { START } from "../../../../src/state/scene-state.ts";
import type { Voice } from "../../../../src/ui/lesson/voice.ts";
import { fileName } from "../../../../src/ui/take-away/file-name.ts";

const ROOM = { width: 4, height: 2 };

test.each([1, 40, 300, 3000])("a text of %i words stays inside its box", (count) => {
  const { text, size } = fitText("pressure ".repeat(count).trim(), ROOM, [9, 20]);
  expect((linesAt(text, size, ROOM.width) * size * 1.22) / 72).toBeLessThanOrEqual(ROOM.height);
  expect(text.endsWith("…")).toBe(count >= 300);
});

test("a single endless word ends too", () => {
  expect(fitText("x".repeat(5000), ROOM, [9, 20]).text).toBe("…");
});

test("terms, numbers and emphasis come as plain words", () => {
  const voice = {
    number: () => "1.2 mmHg",
    glossary: { drop: { term: "pressure drop" } },
  } as unknown as Voice;
  const text = (words: string) => ({ kind: "text", text: words }) as const;
  const content = [
    text("The "),
    { kind: "term", key: "drop", content: [], line: 1 },
    text(" is "),
    { kind: "strong", content: [text("only ")] },
    { kind: "figure", line: 1 },
    { kind: "source", key: "a", line: 1 },
    text("."),
  ];
  expect(plainText(content as never, voice)).toBe("The pressure drop is only 1.2 mmHg.");
});

test("pictures side by side are named by what differs", () => {
  const beside = [10, 14].map((conduitDiameter) => ({ set: { conduitDiameter } }));
  const captions = paneCaptions({ ...START, beside });
  expect(captions).toHaveLength(3);
  expect(new Set(captions).size).toBe(3);
  expect(captions[1]).toContain("10");
  expect(paneCaptions(START)).toEqual([""]);
});

test("a file's name says subject, language and day", () => {
  const day = new Date("2026-11-29T10:00:00Z");
  expect(fileName("Übergang & débit", "fr", day, "pptx")).toBe("lungward-ubergang-debit-fr-2026-11-29.pptx");
  expect(fileName("Große Straße", "de", day, "zip")).toBe("lungward-grosse-strasse-de-2026-11-29.zip");
});

test("each picture of the ZIP has its words beside it", async () => {
  const pane = { caption: "", figures: ["Pressure drop 1.2 mmHg"] };
  const words = {
    title: "Title",
    body: ["Why?"],
    caution: "",
    panes: [pane],
    notes: "Slowly.",
    link: "https://x/",
  };
  const scene = { ...words, kind: "scene", id: "a-b", picture: new Blob(["png"]) } as const;
  const figure = { data: new Blob(["jpg"], { type: "image/jpeg" }), width: 4, height: 3 };
  const ownFigures = [
    { alt: "A kink", picture: figure },
    { alt: "A hose", picture: null },
  ];
  const data = new Blob(["jpg"], { type: "image/jpeg" });
  const own = { kind: "own", id: "picture", title: "Our ward", words: "", notes: "Greet." } as const;
  const packed = await packStills(
    [
      { ...scene, ownFigures },
      { ...own, picture: { data, width: 4, height: 3 } },
      { ...own, id: "end", picture: null },
    ],
    ["For learning."],
  );
  const files = unzipSync(packed);
  expect(Object.keys(files)).toEqual([
    "001-a-b.png",
    "001-a-b-1.jpg",
    "001-a-b.txt",
    "002-picture.jpg",
    "002-picture.txt",
    "003-end.txt",
  ]);
  expect(strFromU8(files["002-picture.txt"]!)).toBe("Our ward\n\nGreet.\n");
  for (const said of [
    "Title",
    "Why?",
    "1.2 mmHg",
    "Slowly.",
    "https://x/",
    "For learning.",
    "001-a-b-1.jpg: A kink",
    "[A hose]",
  ])
    expect(strFromU8(files["001-a-b.txt"]!)).toContain(said);
});
