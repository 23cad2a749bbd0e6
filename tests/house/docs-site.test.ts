import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { readPage, slug } from "../../scripts/docs/docs-page.ts";
import { readSite } from "../../scripts/docs/site.ts";
import { TOP } from "./sources.ts";

const { pages } = readSite();
const names = pages.map(({ name }) => name);
const targets = (html: string): string[] => [...html.matchAll(/href="([^"]+)"/g)].map(([, href]) => href!);

describe("the docs as pages", () => {
  test("the first page leads to every other page", () => {
    const first = pages.find(({ name }) => name === "index.html")!;
    const reached = new Set(targets(first.html));
    expect(names.filter((name) => name !== "index.html" && !reached.has(name))).toEqual([]);
  });

  test("every link within them leads to a page and to a heading there", () => {
    const ids = new Map(
      pages.map(({ name, html }) => [
        name,
        new Set([...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id!)),
      ]),
    );
    const dead = pages.flatMap(({ name, html }) =>
      targets(html)
        .filter((href) => !/^(https?:|\.\.\/index\.html)/.test(href))
        .filter((href) => {
          const [page, heading] = href.split("#");
          const there = ids.get(page || name);
          return !there || (heading !== undefined && !there.has(heading));
        })
        .map((href) => `${name} -> ${href}`),
    );
    expect(dead).toEqual([]);
  });

  test("every section for the search has text or contains others, and every picture exists", () => {
    const sections = pages.flatMap(({ sections }) => sections);
    expect(new Set(sections.map(({ id }) => id)).size).toBe(sections.length);
    expect(sections.filter(({ title }) => !title.trim())).toEqual([]);
    expect(pages.flatMap(({ pictures }) => pictures).filter((path) => !existsSync(join(TOP, path)))).toEqual(
      [],
    );
  });

  test.each(["passing score", "pass mark", "moodle", "scorm 2004", "completed when"])(
    "who searches for %s finds the page on courses",
    (asked) => {
      const course = pages.find(({ name }) => name === "course.html")!;
      const words = asked.split(" ");
      const found = course.sections.filter(({ text, title }) =>
        words.every((word) => `${title} ${text}`.toLowerCase().includes(word)),
      );
      expect(found).not.toEqual([]);
    },
  );

  test("the first page and each chapter of the model have live figures", () => {
    const without = [
      "index.html",
      "model-circulation.html",
      "model-pathways.html",
      "model-field.html",
    ].filter((name) => !pages.find((page) => page.name === name)?.html.includes("<iframe"));
    expect(without).toEqual([]);
  });
});

describe("a page of the docs", () => {
  test("a live figure whose address is no state's is refused by name", () => {
    expect(() => readPage("docs/x.md", "# X\n\n```live\n1~wnowhere\nWords\n```\n")).toThrow(/nowhere/);
  });

  test("markup in a text or a caption stays text, and a script address is no link", () => {
    const { html } = readPage(
      "docs/x.md",
      '# <script>x</script>\n\n[a](javascript:x)\n\n```live\n1\n"><script>x</script>\n```\n',
    );
    expect(html).not.toMatch(/<script|href="javascript/);
  });

  test("an equation becomes MathML, a link to a source file becomes words", () => {
    const { html } = readPage(
      "docs/x.md",
      "# X\n\n```math\na = b\n```\n\n[s](../src/main.ts) [m](model.md#limits)",
    );
    expect(html).toContain("<math");
    expect(html).not.toContain("main.ts");
    expect(html).toContain('href="model.html#limits"');
  });

  test("headings are named as repositories' web pages name them", () => {
    expect(slug("1. One network, five tables")).toBe("1-one-network-five-tables");
  });
});
