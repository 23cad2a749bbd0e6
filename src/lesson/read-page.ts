/** A page of plain reading beside the lessons ("about the model"): a title, and sections of prose. */
import type { Prose } from "./prose.ts";
import { type Reading, refuseIn } from "./read.ts";
import { readProse } from "./read-prose.ts";

interface PageSection {
  readonly title: string;
  readonly prose: Prose;
}

export interface Page {
  readonly title: string;
  readonly language: string;
  readonly sections: readonly PageSection[];
}

const LONGEST = 40_000;

export function readPage(text: string, file: string, language: string): Reading<Page> {
  const { refuse, faults } = refuseIn(file);
  if (text.length > LONGEST) refuse(1, `${text.length} characters`, `at most ${LONGEST}`);
  const lines = text.slice(0, LONGEST).split(/\r\n|\r|\n/);
  const title = /^#\s+(\S.*)$/.exec(lines[0] ?? "")?.[1]?.trim();
  if (title === undefined) refuse(1, JSON.stringify((lines[0] ?? "").slice(0, 40)), "# Title");
  const sections: PageSection[] = [];
  let [heading, from] = ["", 1];
  const close = (to: number) => {
    const body = lines.slice(from, to).join("\n");
    if (body.trim() !== "") sections.push({ title: heading, prose: readProse(body, from + 1, refuse) });
  };
  for (let index = 1; index < lines.length; index++) {
    const next = /^##\s+(\S.*)$/.exec(lines[index]!);
    if (!next) continue;
    close(index);
    [heading, from] = [next[1]!.trim(), index + 1];
  }
  close(lines.length);
  return { value: title !== undefined && faults.length === 0 ? { title, language, sections } : null, faults };
}
