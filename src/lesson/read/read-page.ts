/** A page to read in addition to the lessons ("about the model"): a title, and sections of prose; a translation has front matter. */

import { entryAt } from "../../sim/checked/present.ts";
import { pageFrontSchema } from "../format/front-matter.ts";
import { readRecord } from "../format/yaml-record.ts";
import type { Translation } from "../lesson.ts";
import type { Prose } from "../prose.ts";
import { fingerprint } from "./lesson-version.ts";
import { type Reading, refuseIn } from "./read.ts";
import { type Refuse, readProse } from "./read-prose.ts";

interface PageSection {
  readonly title: string;
  readonly prose: Prose;
}

export interface Page {
  readonly title: string;
  readonly language: string;
  readonly sections: readonly PageSection[];
  /** Fingerprint of its text: "v" and eight hexadecimal digits. */
  readonly version: string;
  readonly translation: Translation | null;
}

const LONGEST = 40_000;

/** `source`: the page of which this is a translation, null for an original. */
export function readPage(text: string, file: string, language: string, source: Page | null): Reading<Page> {
  const { refuse, faults } = refuseIn(file);
  if (text.length > LONGEST) refuse(1, `${text.length} characters`, `at most ${LONGEST}`);
  const lines = text.slice(0, LONGEST).split(/\r\n|\r|\n/);
  const { translation, body } = readFront(lines, source, refuse);
  const title = /^#\s+(\S.*)$/.exec(lines[body] ?? "")?.[1]?.trim();
  if (title === undefined) refuse(body + 1, JSON.stringify((lines[body] ?? "").slice(0, 40)), "# Title");
  const sections: PageSection[] = [];
  let [heading, from] = ["", body + 1];
  const close = (to: number) => {
    const prose = lines.slice(from, to).join("\n");
    if (prose.trim() !== "") sections.push({ title: heading, prose: readProse(prose, from + 1, refuse) });
  };
  for (let index = body + 1; index < lines.length; index++) {
    const next = /^##\s+(\S.*)$/.exec(entryAt(lines, index));
    if (!next) continue;
    close(index);
    [heading, from] = [entryAt(next, 1).trim(), index + 1];
  }
  close(lines.length);
  if (source && sections.length !== source.sections.length)
    refuse(body + 1, `${sections.length} sections`, `${source.sections.length}, as in the source`);
  if (title === undefined || faults.length > 0) return { value: null, faults };
  const version = `v${fingerprint(lines.slice(body).join("\n").trim())}`;
  return { value: { title, language, sections, version, translation }, faults };
}

/** `body`: index of the line with the title. */
function readFront(
  lines: readonly string[],
  source: Page | null,
  refuse: Refuse,
): { translation: Translation | null; body: number } {
  const end = lines[0] === "---" ? lines.indexOf("---", 1) : -1;
  if (!source || end < 0) {
    if (source) refuse(1, "no front matter", "--- of, translator, date, reviewed ---");
    return { translation: null, body: 0 };
  }
  const front = readRecord(lines.slice(1, end).join("\n"), 2, pageFrontSchema, refuse);
  const body = lines.findIndex((line, index) => index > end && line.trim() !== "");
  if (!front) return { translation: null, body };
  const { of, ...made } = front.value;
  return { translation: { ...made, outOfDate: of !== source.version }, body };
}
