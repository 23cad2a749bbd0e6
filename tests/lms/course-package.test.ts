// @vitest-environment happy-dom
import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { readCourse } from "../../src/lesson/library/lesson-course.ts";
import {
  countFiles,
  type Kit,
  type PackagePlan,
  packageFiles,
  STANDARDS,
  type Standard,
} from "../../src/lms/package/course-package.ts";
import { zipOf } from "../../src/lms/package/zip.ts";

const HTML = `<!doctype html><html><head><meta http-equiv="Content-Security-Policy" content="connect-src 'self'" /><meta charset="utf-8" /></head></html>`;
const FILES: Record<string, string> = {
  "index.html": HTML,
  "assets/a&b.js": "1",
  "docs/index.html": "2",
  "sw.js": "3",
  "workbox-1.js": "3",
  "files.json": "3",
  "own/index.json": "3",
};
const kit: Kit = {
  version: "1.0",
  paths: Object.keys(FILES),
  read: async (path) => new TextEncoder().encode(FILES[path]),
};
const course = (...lessons: string[]) => ({
  version: 1 as const,
  lessons,
  textVersion: "technical" as const,
  passMark: 0.7,
  completedWhen: "questions" as const,
  own: [{ file: "mine.md", text: "</script><b>&$& $1" }],
});
const plan = (standard: Standard, items: number): PackagePlan => ({
  id: "lungward-0123abcd",
  title: "A & <B>",
  description: "d",
  language: "de",
  passMark: 0.7,
  standard,
  items: Array.from({ length: items }, (_, index) => ({
    id: `l${index + 1}`,
    title: `Lektion ${index + 1} & mehr`,
    description: "d",
    course: items === 1 ? course("one", "two") : course(["one", "two"][index]!),
  })),
});
const packed = async (what: PackagePlan) => {
  let last = 0;
  const chunks = await zipOf(packageFiles(what, kit), (done) => {
    last = done;
  });
  expect(last).toBe(countFiles(what, kit));
  const files = unzipSync(new Uint8Array(await new Blob(chunks as BlobPart[]).arrayBuffer()));
  return Object.fromEntries(
    Object.entries(files).map(([name, bytes]) => [name, new TextDecoder().decode(bytes)]),
  );
};
const xml = (text: string) => new DOMParser().parseFromString(text, "application/xml");
const all = (from: Document | Element, name: string) => [...from.getElementsByTagName(name)];

describe.each(STANDARDS)("a package by %s", (standard) => {
  test.each([1, 2])(
    "of %d item(s) names each page that it opens, and no file that is not there",
    async (count) => {
      const files = await packed(plan(standard, count));
      const manifest = standard === "cmi5" ? "cmi5.xml" : "imsmanifest.xml";
      const pages = count === 1 ? ["index.html"] : ["lesson-1.html", "lesson-2.html"];
      expect(Object.keys(files).sort()).toEqual(
        [manifest, "assets/a&b.js", "docs/index.html", ...pages].sort(),
      );
      const document = xml(files[manifest]!);
      const launched =
        standard === "cmi5"
          ? all(document, "url").map(({ textContent }) => textContent!)
          : all(document, "item").map((item) => {
              const wanted = item.getAttribute("identifierref");
              return all(document, "resource")
                .find((each) => each.getAttribute("identifier") === wanted)!
                .getAttribute("href")!;
            });
      expect(launched.map((address) => address.replace(/\?.*/, ""))).toEqual(pages);
      for (const address of launched) expect(address).toContain("?mode=study&language=de");
      expect(launched[0]!.includes("&lesson=one")).toBe(count === 2);
      if (standard === "cmi5") {
        expect(all(document, "au").map((au) => au.getAttribute("masteryScore"))).toEqual(
          pages.map(() => "0.7"),
        );
        expect(new Set(all(document, "au").map((au) => au.getAttribute("id"))).size).toBe(count);
      } else {
        const listed = all(document, "file").map((file) => file.getAttribute("href")!);
        expect([...new Set(listed)].sort()).toEqual(
          Object.keys(files)
            .filter((name) => name !== manifest)
            .sort(),
        );
        const known = all(document, "resource").map((each) => each.getAttribute("identifier"));
        for (const each of all(document, "dependency"))
          expect(known).toContain(each.getAttribute("identifierref"));
        expect(all(document, "schemaversion")[0]!.textContent).toBe(
          standard === "scorm12" ? "1.2" : "2004 4th Edition",
        );
      }
      expect(all(document, "title")[0]!.textContent!.trim()).toBe("A & <B>");
    },
  );

  test("each page holds its course as data, and only a cmi5 page may reach a record store elsewhere", async () => {
    const files = await packed(plan(standard, 2));
    const [, data] = /<script type="application\/json" id="course">(.*?)<\/script>/s.exec(
      files["lesson-2.html"]!,
    )!;
    expect(readCourse(data!)).toEqual(course("two"));
    expect(files["lesson-2.html"]!.includes("connect-src 'self' https:")).toBe(standard === "cmi5");
  });
});

test("a file that the library spoils in a stream comes out of the ZIP as it went in, an empty one too", async () => {
  const font = new Uint8Array(readFileSync("node_modules/katex/dist/fonts/KaTeX_SansSerif-Regular.ttf"));
  const files = [
    ["font.ttf", font],
    ["none.js", new Uint8Array()],
    ["font.png", font],
  ] as const;
  const chunks = await zipOf(
    (async function* () {
      yield* files;
    })(),
  );
  const found = unzipSync(new Uint8Array(await new Blob(chunks as BlobPart[]).arrayBuffer()));
  for (const [name, bytes] of files) expect(Buffer.compare(found[name]!, bytes), name).toBe(0);
});

test("without a pass mark nothing is to be passed", async () => {
  const files = await packed({ ...plan("cmi5", 1), passMark: null });
  expect(files["cmi5.xml"]).not.toContain("masteryScore");
  expect(files["cmi5.xml"]).toContain('moveOn="Completed"');
});

test("a page without a character set is no page of the kit", async () => {
  const other: Kit = { ...kit, read: async () => new TextEncoder().encode("<html>") };
  await expect(zipOf(packageFiles(plan("scorm12", 1), other))).rejects.toThrow("index.html");
});

test("a page with a policy that reads otherwise makes no cmi5 package", async () => {
  const html = HTML.replace("connect-src 'self'", "connect-src 'none'");
  const other: Kit = { ...kit, read: async () => new TextEncoder().encode(html) };
  await expect(zipOf(packageFiles(plan("cmi5", 1), other))).rejects.toThrow(/index\.html: .*connect-src/);
});
