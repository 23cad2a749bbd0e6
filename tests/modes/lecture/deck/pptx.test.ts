/** The PPTX opened as the archive that it is. */
import { strFromU8, unzipSync } from "fflate";
import { beforeAll, expect, test } from "vitest";
import { writePptx } from "../../../../src/modes/lecture/deck/pptx.ts";
import type { Slide } from "../../../../src/modes/lecture/deck/slide.ts";

const PIXEL =
  "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";
const WIDE = 12_192_000;
const HIGH = 6_858_000;

const slide = (over: Partial<Slide>): Slide => ({
  kind: "scene",
  id: "03-pathways-job",
  title: "Débit, Übergang, año, O₂",
  body: ["What will the drop do?", "A  Less", "B  More"],
  caution: "Ask the team.",
  panes: [{ caption: "", figures: ["Pressure drop 1.2 mmHg (1.0 to 1.4)"] }],
  notes: "Say it slowly: CO₂ & <salt>.",
  link: "https://kit.example/?mode=bench&state=1.x",
  picture: PIXEL,
  ownFigures: [],
  ...over,
});
const three = ["10 mm", "14 mm", "18 mm"].map((caption, pane) => ({ caption, figures: [`${pane} mmHg`] }));
let files: Record<string, Uint8Array>;
const text = (name: string) => strFromU8(files[name]!);

beforeAll(async () => {
  const words = {
    title: "Pathways",
    language: "en",
    open: "Open this state live",
    made: "0.1.0",
    cautions: ["For learning."],
  };
  const long = slide({ title: "word ".repeat(60), body: ["sentence ".repeat(300)] });
  files = unzipSync(await writePptx([slide({}), slide({ panes: three }), long], words));
});

test("there is a slide for each stop, with its notes", () => {
  const slides = Object.keys(files).filter((name) => /^ppt\/slides\/slide\d+\.xml$/.test(name));
  expect(slides).toHaveLength(3);
  expect(text("ppt/notesSlides/notesSlide1.xml")).toContain("Say it slowly: CO₂ &amp; &lt;salt&gt;.");
});

test("words, numbers with units and band, caution, and letters of all languages are text", () => {
  const xml = text("ppt/slides/slide1.xml");
  for (const said of ["Débit, Übergang, año, O₂", "1.2 mmHg (1.0 to 1.4)", "Ask the team.", "For learning."])
    expect(xml).toContain(said);
});

test("the link opens the live state", () => {
  expect(text("ppt/slides/_rels/slide1.xml.rels")).toContain("https://kit.example/?mode=bench&amp;state=1.x");
  expect(text("ppt/slides/slide1.xml")).toContain("Open this state live");
});

test("three pictures keep three captions, each below its own", () => {
  const xml = text("ppt/slides/slide2.xml");
  const lefts = three.map(({ caption }) => {
    const shape = xml.split("<p:sp>").find((each) => each.includes(`<a:t>${caption}`))!;
    return Number(/<a:off x="(\d+)"/.exec(shape)![1]);
  });
  expect(lefts).toEqual([...lefts].sort((a, b) => a - b));
  expect(new Set(lefts).size).toBe(3);
});

test("everything stays on the slide and nothing lies over the picture", () => {
  for (const number of [1, 2, 3]) expectApart(text(`ppt/slides/slide${number}.xml`));
});

/** Each box within the slide, none over another. */
function expectApart(xml: string): void {
  const boxes = [...xml.matchAll(/<a:off x="(\d+)" y="(\d+)"\s*\/><a:ext cx="(\d+)" cy="(\d+)"/g)]
    .map((found) => found.slice(1).map(Number) as [number, number, number, number])
    .filter(([, , width]) => width > 0);
  expect(boxes.length).toBeGreaterThan(5);
  for (const [x, y, width, height] of boxes) {
    expect(x + width).toBeLessThanOrEqual(WIDE);
    expect(y + height).toBeLessThanOrEqual(HIGH);
  }
  const hits = boxes.flatMap(([x, y, w, h], i) =>
    boxes.slice(i + 1).filter(([a, b, c, d]) => x < a + c && a < x + w && y < b + d && b < y + h),
  );
  expect(hits).toEqual([]);
}

test("the picture keeps its shape", () => {
  const [, cx, cy] = /<p:pic>.*?<a:ext cx="(\d+)" cy="(\d+)"/s.exec(text("ppt/slides/slide1.xml"))!;
  expect(Number(cx) / Number(cy)).toBeCloseTo(16 / 9, 2);
});

test("a step's own figures stand below its words, each in its shape with its alternative text", async () => {
  const photo = { data: PIXEL, width: 400, height: 100 };
  const ownFigures = [
    { alt: "A hose & a kink", picture: photo },
    { alt: "A walker", picture: { ...photo, width: 100, height: 400 } },
    { alt: "Not to be read", picture: null },
  ];
  const slides = [
    slide({ ownFigures }),
    slide({ ownFigures, panes: three, body: ["sentence ".repeat(300)] }),
  ];
  const made = unzipSync(
    await writePptx(slides, {
      title: "T",
      language: "en",
      open: "Open",
      made: "",
      cautions: ["For learning."],
    }),
  );
  for (const number of [1, 2]) {
    const xml = strFromU8(made[`ppt/slides/slide${number}.xml`]!);
    const [, hose, walker] = [
      ...xml.matchAll(/<p:pic>.*?descr="([^"]*)".*?<a:ext cx="(\d+)" cy="(\d+)"/gs),
    ].map(([, alt, width, height]) => [alt, Number(width) / Number(height)] as const);
    expect([hose![0], walker![0]]).toEqual(["A hose &amp; a kink", "A walker"]);
    expect(hose![1]).toBeCloseTo(4, 1);
    expect(walker![1]).toBeCloseTo(0.25, 1);
    expectApart(xml);
  }
  expect(strFromU8(made["ppt/slides/slide1.xml"]!)).toContain("[Not to be read]");
  expect(strFromU8(made["ppt/slides/slide1.xml"]!)).toContain("1.2 mmHg (1.0 to 1.4)");
});

test("an own picture fills the slide in its own shape, with its notes; a title stands alone", async () => {
  const own = { kind: "own", id: "picture", title: "Our ward", words: "", notes: "Greet." } as const;
  const made = unzipSync(
    await writePptx(
      [
        { ...own, picture: { data: PIXEL, width: 400, height: 300 } },
        { ...own, id: "end", title: "Thank you", words: "Questions?", picture: null },
      ],
      { title: "T", language: "en", open: "", made: "", cautions: [] },
    ),
  );
  const pages = Object.keys(made).filter((name) => /slides\/slide\d+\.xml$/.test(name));
  expect(pages).toHaveLength(2);
  const [first, second] = [1, 2].map((number) => strFromU8(made[`ppt/slides/slide${number}.xml`]!));
  const [, x, y, cx, cy] = /<p:pic>.*?<a:off x="(\d+)" y="(\d+)"\s*\/>\s*<a:ext cx="(\d+)" cy="(\d+)"/s
    .exec(first!)!
    .map(Number);
  expect(cx! / cy!).toBeCloseTo(4 / 3, 2);
  expect(y! + cy!).toBeLessThanOrEqual(HIGH);
  expect(cy! / HIGH).toBeGreaterThan(0.99);
  expect(x! + cx! / 2).toBeCloseTo(WIDE / 2, -4);
  expect(strFromU8(made["ppt/notesSlides/notesSlide1.xml"]!)).toContain("Greet.");
  expect(second).toContain("Thank you");
  expect(second).toContain("Questions?");
  expect(second).not.toContain("<p:pic>");
});
