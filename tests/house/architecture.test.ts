import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { drawArchitecture } from "../../scripts/docs/draw-architecture.ts";
import { levels, readArrows } from "../../scripts/docs/rooms.ts";
import { TOP } from "./sources.ts";

const page = readFileSync(join(TOP, "docs/architecture.md"), "utf8");

describe("the page on the architecture", () => {
  test("its picture is what `npm run architecture` draws from today's imports", () => {
    const kept = readFileSync(join(TOP, "docs/pictures/architecture.svg"), "utf8");
    expect(kept).toBe(drawArchitecture(readArrows()));
  });

  test("it gives every folder of the repository a purpose, and no folder that is not there", () => {
    const rows = page.split("\n").flatMap((line) => {
      const [, folders = "", purpose = ""] = /^\| (`.*`) \| (.+) \|$/.exec(line) ?? [];
      return [...folders.matchAll(/`([^`]+)`/g)].map(([, folder]) => ({ folder: folder!, purpose, line }));
    });
    const below = (folder: string): string[] => [
      folder,
      ...readdirSync(join(TOP, folder), { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .flatMap(({ name }) => below(`${folder}/${name}`)),
    ];
    const folders = ["docs", "lessons", "public", "scripts", "src", "tests"].flatMap(below);
    // `lessons/*` stands for each folder in `lessons`: languages come and go.
    const covers = (row: string, folder: string) =>
      new RegExp(`^${row.replaceAll("*", "[^/]+")}$`).test(folder);
    expect(folders.filter((folder) => !rows.some((row) => covers(row.folder, folder)))).toEqual([]);
    expect(rows.filter((row) => !folders.some((folder) => covers(row.folder, folder)))).toEqual([]);
    // A purpose is a phrase of its own: two folders that serve the same are one too many.
    expect(rows.filter(({ purpose }) => !/^\S+ \S+/.test(purpose.trim()))).toEqual([]);
    expect(new Set(rows.map(({ purpose }) => purpose)).size).toBe(new Set(rows.map(({ line }) => line)).size);
  });

  test("no folders import values in a circle, and a planted circle is found", () => {
    const arrows = readArrows();
    expect(() => levels(arrows)).not.toThrow();
    expect(() => levels([...arrows, { from: "i18n", to: "modes", typeOnly: false }])).toThrow(/circle/);
    expect(() =>
      levels([...arrows, { from: "sim: geometry", to: "sim: hydraulics", typeOnly: false }]),
    ).toThrow(/circle/);
  });
});
