/** A lesson's text without markup, its numbers, terms and formulas written out: for files that hold only text. */
import type { Inline, Prose } from "../../../lesson/prose.ts";
import type { Voice } from "../../../ui/lesson/voice.ts";

/** Paragraphs and entries of lists are parted by line ends. */
export const plainText = (content: Prose | readonly Inline[], voice: Voice): string =>
  content
    .map((node) => written(node, voice))
    .join("")
    .replace(/[ \t]+\n/g, "\n")
    .trim();

function written(node: Prose[number] | Inline, voice: Voice): string {
  switch (node.kind) {
    case "text":
      return node.text;
    case "figure":
      return voice.number(node.figure);
    case "math":
      return node.tex;
    // Sources have no place on a slide; the live state lists them.
    case "source":
      return "";
    case "picture":
      return `[${node.alt}]\n`;
    case "list":
      return node.items.map((item) => `• ${plainText(item, voice)}\n`).join("");
    case "paragraph":
      return `${inner(node.content, voice)}\n`;
    case "term":
      return node.content.length > 0
        ? inner(node.content, voice)
        : (voice.glossary[node.key]?.term ?? node.key);
    default:
      return inner(node.content, voice);
  }
}

/** Blanks at its ends part it from its neighbours. */
const inner = (content: readonly Inline[], voice: Voice): string =>
  content.map((node) => written(node, voice)).join("");
