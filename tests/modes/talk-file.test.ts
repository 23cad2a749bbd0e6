import { strToU8, unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import {
  benchStop,
  pictureStop,
  stepStop,
  type TalkPlan,
  wordsStop,
} from "../../src/modes/lecture/own-stops.ts";
import { readTalkFile, writeTalkFile } from "../../src/modes/lecture/talk-file.ts";

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
