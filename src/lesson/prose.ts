/** A lesson's text as plain data: nothing in it is markup, so nothing in it can run or load. */
import { entryAt } from "../sim/checked/present.ts";
import type { Claim } from "./model/claims.ts";
import type { Figure } from "./model/live-figures.ts";

export interface StepReference {
  /** null: this lesson */
  readonly lesson: string | null;
  readonly step: string;
}

const REFERENCE = /^(?:([a-z0-9]+(?:-[a-z0-9]+)*))?#([a-z0-9]+(?:-[a-z0-9]+)*)$/;

/** `#step` or `lesson#step`; null when it is neither. */
export function parseReference(text: string): StepReference | null {
  const match = REFERENCE.exec(text);
  return match ? { lesson: match[1] ?? null, step: entryAt(match, 2) } : null;
}

export type Inline =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "emphasis" | "strong"; readonly content: readonly Inline[] }
  | { readonly kind: "figure"; readonly figure: Figure; readonly line: number }
  | {
      readonly kind: "claim";
      readonly claims: readonly Claim[];
      readonly content: readonly Inline[];
      readonly line: number;
    }
  | {
      readonly kind: "term";
      readonly key: string;
      readonly content: readonly Inline[];
      readonly line: number;
    }
  | { readonly kind: "source"; readonly key: string; readonly line: number }
  | {
      readonly kind: "link";
      readonly to: StepReference;
      readonly content: readonly Inline[];
      readonly line: number;
    }
  | { readonly kind: "math"; readonly tex: string; readonly line: number };

export type Block =
  | { readonly kind: "paragraph"; readonly content: readonly Inline[] }
  | { readonly kind: "list"; readonly ordered: boolean; readonly items: readonly (readonly Block[])[] }
  | { readonly kind: "math"; readonly tex: string; readonly line: number }
  /** A figure of the lesson's own, with its alternative text. */
  | { readonly kind: "picture"; readonly alt: string; readonly src: string; readonly line: number };

export type Prose = readonly Block[];

/** Every inline node, depth first. */
export function* inlinesOf(content: Prose | readonly Inline[]): Generator<Inline> {
  for (const node of content) {
    if (node.kind === "paragraph") yield* inlinesOf(node.content);
    else if (node.kind === "list") for (const item of node.items) yield* inlinesOf(item);
    else if (node.kind !== "picture" && (node.kind !== "math" || !isBlock(content))) {
      yield node as Inline;
      if ("content" in node) yield* inlinesOf(node.content);
    }
  }
}

const isBlock = (content: readonly (Block | Inline)[]): boolean =>
  content.some(({ kind }) => kind === "paragraph" || kind === "list" || kind === "picture");

/** The first so many blocks of words, and the pictures among and behind them. */
export function firstOf(prose: Prose, count: number): Prose {
  let words = 0;
  return prose.filter(({ kind }) => kind === "picture" || words++ < count);
}

/** The text as read aloud or counted; `figure` gives the text of a live number. */
export function wordsOf(
  content: Prose | readonly Inline[],
  figure: (figure: Figure) => string = () => "12",
): string {
  const parts: string[] = [];
  for (const node of content) {
    switch (node.kind) {
      case "text":
        parts.push(node.text);
        break;
      case "figure":
        parts.push(figure(node.figure));
        break;
      case "paragraph":
        parts.push(`${wordsOf(node.content, figure)}\n`);
        break;
      case "list":
        for (const item of node.items) parts.push(wordsOf(item, figure));
        break;
      case "math":
      case "source":
      case "picture":
        break;
      default:
        parts.push(wordsOf(node.content, figure));
    }
  }
  return parts.join("");
}

export const countWords = (text: string): number =>
  text.match(/[\p{L}\p{N}][\p{L}\p{N}'\u2019.,-]*/gu)?.length ?? 0;
