/** The docs as pages of the kit: every text of `docs/`, in the order and groups of `docs/index.md`. */
import { readdirSync, readFileSync } from "node:fs";
import { parse } from "yaml";
import { cssTokens, darkTheme, lightTheme } from "../../src/scenes/theme/theme.ts";
import { type Page, readPage } from "./docs-page.ts";

/** The few labels around the texts, at the top of `docs/index.md`. */
interface Frame {
  readonly kit: string;
  readonly docs: string;
  readonly search: string;
  readonly nothing: string;
}

export interface Site {
  readonly pages: readonly Page[];
  readonly frame: Frame;
}

const FRONT = /^---\n([\s\S]*?)\n---\n/;

export function readSite(): Site {
  const paths = [
    "DEVELOPERS.md",
    ...readdirSync("docs").flatMap((name) => (/\.md$/.test(name) ? [`docs/${name}`] : [])),
  ];
  const front = FRONT.exec(readFileSync("docs/index.md", "utf8"))![1]!;
  return {
    pages: paths.map((path) => readPage(path, readFileSync(path, "utf8").replace(FRONT, ""))),
    frame: parse(front),
  };
}

/** @param head markup that loads the search and the style, from within the docs folder */
export const wholePage = (
  { frame }: Site,
  { name, title, html }: Page,
  head: string,
): string => `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta name="color-scheme" content="dark light" />
    <link rel="icon" href="data:," />
    <title>${title} · Lungward</title>
    ${head}
  </head>
  <body>
    <header>
      <nav>
        <a href="../index.html">${frame.kit}</a>
        <a href="index.html"${name === "index.html" ? ' aria-current="page"' : ""}>${frame.docs}</a>
      </nav>
      <search>
        <label>${frame.search} <input type="search" id="search" autocomplete="off" /></label>
        <div id="found" aria-live="polite" data-nothing="${frame.nothing}"></div>
      </search>
    </header>
    <main>
${html}
    </main>
  </body>
</html>
`;

/** The kit's colours and type, dark or light as the reader's device asks. */
export const looks = (): string => {
  const say = (key: string) => key;
  const rules = (theme: Parameters<typeof cssTokens>[0]) =>
    `:root { ${Object.entries(cssTokens(theme))
      .map(([token, value]) => `${token}: ${value};`)
      .join(" ")} }`;
  return `${rules(darkTheme(say))}\n@media (prefers-color-scheme: light) { ${rules(lightTheme(say))} }\n`;
};
