/** One page of the docs: markdown -> markup, its sections for the search, and what it refers to. */
import { posix } from "node:path";
import katex from "katex";
import MarkdownIt, { type Token } from "markdown-it";
import { readAddress } from "../../src/state/address.ts";

interface Section {
  /** address within the docs folder, such as `model.html#limits` */
  readonly id: string;
  readonly page: string;
  readonly title: string;
  readonly text: string;
}

export interface Page {
  /** file name within the built docs folder */
  readonly name: string;
  readonly title: string;
  readonly html: string;
  readonly sections: readonly Section[];
  /** pictures that it shows, as paths from the repository's top */
  readonly pictures: readonly string[];
}

/** `docs/model.md` -> `model.html`; `DEVELOPERS.md` -> `developers.html`. Undefined for anything that is not a page. */
const pageName = (path: string): string | undefined =>
  path === "README.md"
    ? "index.html"
    : path === "DEVELOPERS.md"
      ? "developers.html"
      : /^docs\/([\w-]+)\.md$/.exec(path)?.[1]?.concat(".html");

/** Ids of headings as on the repository's web pages, so that one link works in both places. */
export const slug = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, "")
    .replaceAll(" ", "-");

const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** A scene of the kit itself within the page: first line its state's address, then the caption. */
function live(content: string, path: string): string {
  const [address = "", ...words] = content.trim().split("\n");
  const { dropped } = readAddress(address);
  if (dropped.length)
    throw new Error(`${path}: live figure "${address}": ${dropped.map(({ found }) => found).join(", ")}`);
  const caption = escaped(words.join(" "));
  const query = `../index.html?mode=bench&amp;state=${escaped(address)}`;
  return `<figure class="live"><iframe src="${query}&amp;embed=1" title="${caption}" loading="lazy" allow="fullscreen"></iframe><figcaption>${caption} <a href="${query}">&#8599;</a></figcaption></figure>`;
}

const markdown = (path: string, pictures: string[]) => {
  const reader = new MarkdownIt();
  const at = (target: string) => posix.normalize(posix.join(posix.dirname(path), target));
  const { fence } = reader.renderer.rules;
  reader.renderer.rules.fence = (tokens, index, ...rest) => {
    const { info, content } = tokens[index]!;
    if (info === "live") return live(content, path);
    if (info === "math")
      return katex.renderToString(content, { displayMode: true, output: "mathml", strict: "error" });
    return fence!(tokens, index, ...rest);
  };
  reader.renderer.rules.table_open = () => '<div class="wide" tabindex="0"><table>';
  // An empty corner cell is not a header.
  const cell =
    (step: 1 | -1): NonNullable<typeof fence> =>
    (tokens, index, options, _environment, self) => {
      if (!tokens[index + step]!.content) tokens[index]!.tag = "td";
      return self.renderToken(tokens, index, options);
    };
  reader.renderer.rules.th_open = cell(1);
  reader.renderer.rules.th_close = cell(-1);
  reader.renderer.rules.table_close = () => "</table></div>";
  reader.renderer.rules.image = (tokens, index, options, _environment, self) => {
    const token = tokens[index]!;
    const target = at(String(token.attrGet("src")));
    pictures.push(target);
    token.attrSet("src", posix.relative("docs", target));
    token.attrSet("alt", token.content);
    return self.renderToken(tokens, index, options);
  };
  // A link to a page leads to the built page; a link to another file of the repository becomes plain text.
  const known = (href: string): string | undefined => {
    if (/^(https?:|#)/.test(href)) return href;
    const [file = "", heading] = href.split("#");
    const page = pageName(at(file));
    return page && heading ? `${page}#${heading}` : page;
  };
  const open: boolean[] = [];
  reader.renderer.rules.link_open = (tokens, index, options, _environment, self) => {
    const href = known(String(tokens[index]!.attrGet("href")));
    open.push(href !== undefined);
    if (href === undefined) return "";
    tokens[index]!.attrSet("href", href);
    return self.renderToken(tokens, index, options);
  };
  reader.renderer.rules.link_close = () => (open.pop() ? "</a>" : "");
  return reader;
};

/** @param path from the repository's top @throws Error when a live figure's address is not a state's */
export function readPage(path: string, text: string): Page {
  const name = pageName(path)!;
  const pictures: string[] = [];
  const reader = markdown(path, pictures);
  const tokens = reader.parse(text, {});
  const sections: { id: string; title: string; words: string[] }[] = [];
  for (const [index, token] of tokens.entries()) {
    if (token.type === "heading_open") {
      const title = tokens[index + 1]!.children!.map(({ content }: Token) => content).join("");
      const anchor = slug(title);
      token.attrSet("id", anchor);
      sections.push({ id: sections.length ? `${name}#${anchor}` : name, title, words: [] });
    } else if (token.type === "inline" || token.type === "fence") {
      const words = token.children?.map(({ content }: Token) => content).join(" ") ?? token.content;
      if (tokens[index - 1]?.type !== "heading_open") sections.at(-1)?.words.push(words);
    }
  }
  const title = sections[0]?.title ?? name;
  return {
    name,
    title,
    html: reader.renderer.render(tokens, reader.options, {}),
    sections: sections.map(({ words, ...rest }) => ({ ...rest, page: title, text: words.join(" ") })),
    pictures,
  };
}
