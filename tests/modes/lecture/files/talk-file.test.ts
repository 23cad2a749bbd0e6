import { strToU8, unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import { typeOfPicture } from "../../../../src/modes/lecture/files/picture-kinds.ts";
import { readTalkFile, writeTalkFile } from "../../../../src/modes/lecture/files/talk-file.ts";
import {
  benchStop,
  pictureStop,
  stepStop,
  type TalkPlan,
  wordsStop,
} from "../../../../src/modes/lecture/talk/own-stops.ts";

const PNG = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3]);
const plan: TalkPlan = {
  title: "Evening for parents",
  minutes: 25,
  stops: [
    { ...wordsStop("title", "Hello"), notes: "Greet the hall.", minutes: 2 },
    benchStop("1~textracardiac", "Extracardiac", null),
    pictureStop("a1.png", "Our ward"),
    stepStop("03-pathways", "swirl"),
    wordsStop("end", "Thank you"),
  ],
};
const pictures = new Map([
  ["a1.png", new Blob([PNG], { type: "image/png" })],
  ["unused.png", new Blob([PNG], { type: "image/png" })],
]);

/** The talk's file with its manifest and files changed. */
async function altered(
  change: (manifest: Record<string, unknown>) => unknown,
  drop: readonly string[] = [],
): Promise<Blob> {
  const files = unzipSync(new Uint8Array(await (await writeTalkFile({ plan, pictures })).arrayBuffer()));
  const manifest = change(JSON.parse(new TextDecoder().decode(files["talk.json"])));
  const kept = Object.entries({ ...files, "talk.json": strToU8(JSON.stringify(manifest)) });
  return new Blob([zipSync(Object.fromEntries(kept.filter(([name]) => !drop.includes(name)))) as BlobPart]);
}

test("a talk comes back from its file as it went, with the pictures that it shows", async () => {
  const { talk, faults } = await readTalkFile(await writeTalkFile({ plan, pictures }));
  expect(faults).toEqual([]);
  expect(talk?.plan).toEqual(plan);
  expect([...(talk?.pictures.keys() ?? [])]).toEqual(["a1.png"]);
  expect(new Uint8Array(await talk!.pictures.get("a1.png")!.arrayBuffer())).toEqual(PNG);
});

test("a newer file with a stop to come and a missing picture opens as far as it goes and says what it lacks", async () => {
  const file = await altered(
    (manifest) => ({
      ...manifest,
      version: 2,
      stops: [...(manifest.stops as unknown[]), { kind: "hologram" }],
    }),
    ["pictures/a1.png"],
  );
  const { talk, faults } = await readTalkFile(file);
  expect(talk?.plan.stops.map(({ kind }) => kind)).toEqual(["title", "bench", "step", "end"]);
  expect(faults.map(({ path }) => path)).toEqual(["version", "stops.3.picture", "stops.6.kind"]);
});

test("what only calls itself a picture does not come in", async () => {
  const files = unzipSync(new Uint8Array(await (await writeTalkFile({ plan, pictures })).arrayBuffer()));
  files["pictures/a1.png"] = strToU8("<html><script>alert(1)</script>");
  const { talk, faults } = await readTalkFile(new Blob([zipSync(files) as BlobPart]));
  expect(talk?.pictures.size).toBe(0);
  expect(faults.map(({ path }) => path)).toEqual(["stops.3.picture"]);
});

test("a damaged file, one of another kind and one without a manifest are refused with the reason", async () => {
  const whole = await writeTalkFile({ plan, pictures });
  const cut = await readTalkFile(whole.slice(0, 200));
  expect(cut.talk).toBeNull();
  expect(cut.faults[0]).toMatchObject({ path: "file", allowed: "ZIP" });
  const other = await readTalkFile(await altered(() => ({ kind: "shopping" })));
  expect(other.faults[0]).toMatchObject({ path: "kind", found: "shopping" });
  const empty = await readTalkFile(await altered((manifest) => manifest, ["talk.json"]));
  expect(empty.faults[0]).toMatchObject({ path: "file", allowed: "talk.json" });
});

test("a list of steps as earlier versions saved it opens", async () => {
  const text = JSON.stringify({
    kind: "lungward-playlist",
    version: 1,
    title: "Old",
    minutes: 10,
    stops: [{ lesson: "03-pathways", step: "swirl" }],
  });
  const { talk, faults } = await readTalkFile(new Blob([text]));
  expect(faults).toEqual([]);
  expect(talk?.plan).toEqual({ title: "Old", minutes: 10, stops: [stepStop("03-pathways", "swirl")] });
});

test("a file's own words are shown in short", async () => {
  const { talk, faults } = await readTalkFile(
    await altered((manifest) => ({ ...manifest, kind: "x".repeat(1e6) })),
  );
  expect(talk).toBeNull();
  expect(faults[0]!.found.length).toBeLessThan(100);
});

/** A ZIP whose headers say another size than its files unpack to. */
function lying(files: Record<string, Uint8Array>, said: number): Blob {
  const zip = zipSync(files, { level: 9 });
  const view = new DataView(zip.buffer);
  for (let at = 0; at < zip.length - 30; at++) {
    if (view.getUint32(at, true) === 0x04034b50) view.setUint32(at + 22, said, true);
    if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, said, true);
  }
  return new Blob([zip as BlobPart]);
}

test.each([0, 10, 0x7fff_ffff, 0xffff_ffff])(
  "a file that unpacks to more than it may have is refused as it unpacks, while the page draws, whatever its headers say: %d",
  async (said) => {
    let drawn = 0;
    const drawing = setInterval(() => drawn++, 1);
    const { talk, faults } = await readTalkFile(
      lying({ "pictures/b0.png": new Uint8Array(30_000_000) }, said),
    );
    clearInterval(drawing);
    expect(talk).toBeNull();
    expect(faults[0]?.found).toBe("pictures/b0.png: more than 25000000 bytes");
    expect(drawn).toBeGreaterThan(0);
  },
);

test("what leads out of its folder, or is no picture's name, is passed over", async () => {
  const strange = ["../talk.json", "pictures/../../a1.png", "/talk.json", "C:\\\\talk.json"];
  const files = Object.fromEntries(
    [...strange, "talk.json"].map((name) => [
      name,
      strToU8('{"kind":"lungward-talk","version":1,"minutes":20,"stops":[]}'),
    ]),
  );
  const { talk, faults } = await readTalkFile(new Blob([zipSync(files) as BlobPart]));
  expect(faults).toEqual([]);
  expect(talk?.pictures.size).toBe(0);
});

test("a ZIP cut off anywhere, or empty, is a fault or a talk, never thrown", async () => {
  const whole = new Uint8Array(await (await writeTalkFile({ plan, pictures })).arrayBuffer());
  for (let length = 0; length < whole.length; length += 23) {
    const { talk, faults } = await readTalkFile(new Blob([whole.slice(0, length)]));
    expect(talk !== null || faults.length > 0).toBe(true);
  }
});

test("a head of many remarks is looked through at once", () => {
  const began = performance.now();
  expect(typeOfPicture(strToU8("<!---->".repeat(28)))).toBeNull();
  expect(typeOfPicture(strToU8(`${"<!-- > -->".repeat(28)}<svg>`))).toBe("image/svg+xml");
  expect(performance.now() - began).toBeLessThan(500);
});

test("an SVG that would keep the page from answering stays out, and is named", async () => {
  const deep = Array.from(
    { length: 8 },
    (_, i) => `<mask id="m${i}">${`<rect mask="url(#m${i - 1})"/>`.repeat(8)}</mask>`,
  );
  const hostile = strToU8(
    `<svg xmlns="http://www.w3.org/2000/svg">${deep.join("")}<rect mask="url(#m7)"/></svg>`,
  );
  const manifest = strToU8('{"kind":"lungward-talk","version":1,"minutes":20,"stops":[]}');
  const zip = zipSync({
    "talk.json": manifest,
    "pictures/a1.svg": hostile,
    "pictures/a2.svg": strToU8("<svg></svg>"),
  });
  const { talk, faults } = await readTalkFile(new Blob([zip as BlobPart]));
  expect([...(talk?.pictures.keys() ?? [])]).toEqual(["a2.svg"]);
  expect(faults.map(({ path }) => path)).toEqual(["pictures/a1.svg"]);
});
