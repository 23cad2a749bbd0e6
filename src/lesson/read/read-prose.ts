/** Markdown with our own marks -> Prose. HTML, pictures and outside links are not part of the language: they stay text or are refused. */
import MarkdownIt, { type StateInline, type Token } from "markdown-it";
import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import { type Fault, nearestMatch } from "../../sim/faults.ts";
import { formulaFault } from "../format/formula.ts";
import { parseClaims } from "../model/claims.ts";
import { parseFigure } from "../model/live-figures.ts";
import { FIGURE_MARK } from "../own/own-figures.ts";
import { type Block, type Inline, type Prose, parseReference } from "../prose.ts";
import { numberSlip, proseSlips } from "../slips/prose-slips.ts";

/** Takes note of a fault at a line of the file. */
export type Refuse = (line: number, found: string, allowed: string, fix?: Fault["fix"]) => void;

/** Deepest nesting of marks within marks. */
const DEEPEST = 20;

const markdown = new MarkdownIt("zero", { html: false }).enable([
  "emphasis",
  "list",
  "link",
  "escape",
  "newline",
]);
markdown.inline.ruler.before("link", "lesson-marks", readMark);
markdown.validateLink = () => true;

/** One of our marks at the cursor becomes a token of type "mark"; its parts wait in `meta`. */
function readMark(state: StateInline, silent: boolean): boolean {
  const rest = state.src.slice(state.pos, state.posMax);
  const match =
    /^\{\{([^{}]*)\}\}/.exec(rest) ??
    /^\[\[([^[\]|]+)(?:\|([^[\]]+))?\]\]/.exec(rest) ??
    /^\[\^([^[\]\s]+)\]/.exec(rest) ??
    /^\$([^$\n]+)\$/.exec(rest);
  if (match) {
    if (!silent) {
      const token = state.push("mark", "", 0);
      token.content = match[0];
      token.meta = { first: match[1] ?? "", second: match[2] };
    }
    state.pos += match[0].length;
    return true;
  }
  return rest.startsWith("[") && readClaim(state, silent);
}

/** `[words]{claim: ...}`: brackets must balance, since they may contain live numbers, terms and links. */
function readClaim(state: StateInline, silent: boolean): boolean {
  const close = state.md.helpers.parseLinkLabel(state, state.pos);
  if (close < 0) return false;
  const tail = /^\]\{claim:([^{}]*)\}/.exec(state.src.slice(close, state.posMax));
  if (!tail) return false;
  if (!silent) {
    const token = state.push("claim", "", 0);
    token.content = state.src.slice(state.pos + 1, close);
    token.meta = { first: tail[1] };
  }
  state.pos = close + tail[0].length;
  return true;
}

/** Addresses of a lesson's own figures, by name. */
export type Figures = ReadonlyMap<string, string>;
const NO_FIGURES: Figures = new Map();

/** `firstLine`: line of the file on which `text` begins (1-based). Never throws. */
export function readProse(
  text: string,
  firstLine: number,
  refuse: Refuse,
  figures: Figures = NO_FIGURES,
): Prose {
  const blocks: Block[] = [];
  for (const part of splitMath(text, firstLine)) {
    if (part.tex !== undefined)
      blocks.push({ kind: "math", tex: readTex(part.tex, part.line, refuse), line: part.line });
    else {
      refuseLayout(part.text, part.line, refuse);
      blocks.push(...readBlocks(markdown.parse(part.text, {}), part.line, refuse, figures));
    }
  }
  return blocks;
}

const HEADING = /^ {0,3}(#{1,6}(\s|$)|(=+|-{2,})\s*$)/;
/** A row with bars at both ends, or the line of dashes below a first row. */
const TABLE = /^\s*(\|.*\||\|?\s*:?-+:?\s*(\|\s*:?-+:?\s*)+\|?)\s*$/;

/** A lesson's text has no tables or rules; such lines would appear on the page as typed. A table is one fault, however long. */
function refuseLayout(text: string, firstLine: number, refuse: Refuse): void {
  let inTable = false;
  for (const [index, line] of text.split("\n").entries()) {
    const table = TABLE.test(line);
    const found = table ? "a table" : HEADING.test(line) ? "a heading" : null;
    if (found && !(table && inTable))
      refuse(firstLine + index, `${found}, ${JSON.stringify(line.slice(0, 40))}`, "paragraphs and lists");
    inTable = table;
  }
  for (const { line, found, allowed, fix } of proseSlips(text)) refuse(firstLine + line, found, allowed, fix);
}

/** The equation as written, unless it is more than can be set: then none. */
function readTex(tex: string, line: number, refuse: Refuse): string {
  const fault = formulaFault(tex);
  if (fault) refuse(line, fault.found, fault.allowed);
  return fault ? "" : tex;
}

/** A single line of words, as in titles and answers. */
export function readInline(text: string, line: number, refuse: Refuse): readonly Inline[] {
  const tokens = markdown.parseInline(text, {});
  return readTokens(tokens[0]?.children ?? [], line, refuse, 0);
}

/** Display equations are on separate lines between `$$`. */
function splitMath(text: string, firstLine: number): { text: string; line: number; tex?: string }[] {
  const parts: { text: string; line: number; tex?: string }[] = [];
  let line = firstLine;
  for (const [index, part] of text.split("$$").entries()) {
    if (index % 2 === 1) parts.push({ text: "", line, tex: part.trim() });
    else if (part.trim() !== "") parts.push({ text: part, line });
    line += part.split("\n").length - 1;
  }
  return parts;
}

/** On a line of its own it is a picture. */
function readPicture(written: string, line: number, refuse: Refuse, figures: Figures): Block[] {
  const [whole = "", alt = "", name = ""] = FIGURE_MARK.exec(written) ?? [];
  if (whole !== written.trim()) {
    refuse(
      line,
      `a picture within a sentence, ${whole.slice(0, 60)}`,
      "a picture in a paragraph of its own",
      [whole, `\n\n${whole}\n\n`],
    );
    return [];
  }
  const src = figures.get(name);
  const names = [...figures.keys()];
  const near = nearestMatch(name, names);
  if (src === undefined)
    refuse(
      line,
      `figure "${name.slice(0, 60)}"`,
      names.length === 0
        ? "a figure that was added to this lesson (author page, Figures); it has none yet"
        : `${names.join(", ")}${near ? `; nearest: ${near}` : ""}`,
    );
  if (alt.trim() === "")
    refuse(line, `figure "${name}" without alternative text`, `![what it shows, in words](${name})`);
  return src === undefined ? [] : [{ kind: "picture", alt: alt.trim(), src, line }];
}

function readBlocks(tokens: readonly Token[], firstLine: number, refuse: Refuse, figures: Figures): Block[] {
  const stack: { blocks: Block[]; items: Block[][] }[] = [{ blocks: [], items: [] }];
  for (const token of tokens) {
    const top = lastOf(stack);
    switch (token.type) {
      case "inline": {
        const line = firstLine + (token.map?.[0] ?? 0);
        if (FIGURE_MARK.test(token.content)) {
          const at = line + token.content.slice(0, token.content.search(FIGURE_MARK)).split("\n").length - 1;
          top.blocks.push(...readPicture(token.content, at, refuse, figures));
          break;
        }
        top.blocks.push({ kind: "paragraph", content: readTokens(token.children ?? [], line, refuse, 0) });
        break;
      }
      case "bullet_list_open":
      case "ordered_list_open":
      case "list_item_open":
        stack.push({ blocks: [], items: [] });
        break;
      case "list_item_close":
        stack.pop();
        lastOf(stack).items.push(top.blocks);
        break;
      case "bullet_list_close":
      case "ordered_list_close":
        stack.pop();
        lastOf(stack).blocks.push({
          kind: "list",
          ordered: token.type === "ordered_list_close",
          items: top.items,
        });
    }
  }
  return entryAt(stack, 0).blocks;
}

function readTokens(tokens: readonly Token[], firstLine: number, refuse: Refuse, depth: number): Inline[] {
  let line = firstLine;
  type Open = { close: (content: Inline[]) => Inline[]; content: Inline[] };
  const stack: Open[] = [{ close: (content) => content, content: [] }];
  const add = (...nodes: Inline[]) => lastOf(stack).content.push(...nodes);
  const inner = (text: string, at: number): readonly Inline[] => {
    if (depth >= DEEPEST) return [{ kind: "text", text }];
    return readTokens(markdown.parseInline(text, {})[0]?.children ?? [], at, refuse, depth + 1);
  };
  for (const token of tokens) {
    switch (token.type) {
      case "softbreak":
      case "hardbreak":
        line++;
        add({ kind: "text", text: " " });
        break;
      case "em_open":
      case "strong_open": {
        const kind = token.type === "em_open" ? "emphasis" : "strong";
        stack.push({ close: (content) => [{ kind, content }], content: [] });
        break;
      }
      case "link_open":
        stack.push({ close: openLink(token, line, refuse), content: [] });
        break;
      case "em_close":
      case "strong_close":
      case "link_close": {
        const open = present(stack.pop());
        add(...open.close(open.content));
        break;
      }
      case "claim": {
        const claims = parseClaims(String(token.meta?.first).trim());
        if (!claims.ok) refuse(line, claims.found, claims.allowed);
        add({
          kind: "claim",
          claims: claims.ok ? claims.value : [],
          content: inner(token.content, line),
          line,
        });
        line += token.content.split("\n").length - 1;
        break;
      }
      case "mark":
        add(...readMarkToken(token, line, refuse, inner));
        line += token.content.split("\n").length - 1;
        break;
      default:
        if (token.content) add({ kind: "text", text: token.content });
    }
  }
  return entryAt(stack, 0).content;
}

function openLink(token: Token, line: number, refuse: Refuse): (content: Inline[]) => Inline[] {
  const href = String(token.attrGet("href") ?? "");
  const to = parseReference(href);
  if (!to)
    refuse(
      line,
      `link to "${href.slice(0, 60)}"`,
      "#step or lesson#step; web addresses stand in sources.yaml",
    );
  return (content) => (to ? [{ kind: "link", to, content, line }] : content);
}

function readMarkToken(
  token: Token,
  line: number,
  refuse: Refuse,
  inner: (text: string, line: number) => readonly Inline[],
): Inline[] {
  const written = token.content;
  const { first, second } = token.meta as { first: string; second?: string };
  if (written.startsWith("{{")) {
    const figure = parseFigure(first);
    if (figure.ok) return [{ kind: "figure", figure: figure.value, line }];
    const slip = numberSlip(first);
    if (slip) refuse(line, slip.found, slip.allowed, [written, slip.right]);
    else refuse(line, figure.found, figure.allowed);
    return [];
  }
  if (written.startsWith("[["))
    return [{ kind: "term", key: first.trim(), content: second ? inner(second, line) : [], line }];
  if (written.startsWith("[^")) return [{ kind: "source", key: first, line }];
  return [{ kind: "math", tex: readTex(first, line, refuse), line }];
}
