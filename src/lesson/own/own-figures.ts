/** Pictures of a lesson of one's own: they stand behind its text in the one file, a line each, so that whatever carries the file carries them. */
import type { Fault } from "../../sim/faults.ts";
import { contentFault } from "./figure-content.ts";

/** Behind it each line is a figure: its name, and its bytes in base64. */
const BORDER = "=== figures ===";

const TYPES: Readonly<Record<string, string>> = {
  svg: "image/svg+xml",
  png: "image/png",
  jpg: "image/jpeg",
};

/** bytes of one figure and of all of a lesson; how many */
export const FIGURE_LIMITS = { bytes: 200_000, total: 600_000, count: 12 } as const;
/** characters that they take in a file */
export const MAX_FIGURE_TEXT = Math.ceil(FIGURE_LIMITS.total / 3) * 4 + FIGURE_LIMITS.count * 100 + 100;

const NAME = /^[a-z0-9]+(-[a-z0-9]+)*\.(svg|png|jpg)$/;

/** A figure's place in the words: its alternative text and its name, `![what it shows](kink.png)`. */
export const FIGURE_MARK = /!\[([^[\]]*)\]\(([^()\s]*)\)/;

export interface LessonFigure {
  /** Such as `kink.png`. */
  readonly name: string;
  /** base64 */
  readonly data: string;
}

export const bytesOf = ({ data }: Pick<LessonFigure, "data">): number => Math.floor((data.length * 3) / 4);
const typeOf = (name: string): string => TYPES[name.split(".").pop() ?? ""] ?? "";

/** As an address for a picture: whatever an SVG holds, a picture runs and loads nothing. */
export const sourceOf = ({ name, data }: LessonFigure): string => `data:${typeOf(name)};base64,${data}`;

/** The words of a file, and what stands behind them. */
export function splitFigures(file: string): { readonly text: string; readonly figures: string } {
  const at = file.indexOf(`\n${BORDER}`);
  return at < 0 ? { text: file, figures: "" } : { text: file.slice(0, at + 1), figures: file.slice(at + 1) };
}

export function joinFigures(text: string, figures: readonly LessonFigure[]): string {
  if (figures.length === 0) return text;
  const lines = figures.map(({ name, data }) => `${name} ${data}\n`).join("");
  return `${text.endsWith("\n") ? text : `${text}\n`}${BORDER}\n${lines}`;
}

/** Figures that can be shown, and why others cannot; `path` of a fault is the figure's name. */
export function readFigures(section: string): {
  readonly figures: readonly LessonFigure[];
  readonly faults: readonly Fault[];
} {
  const figures: LessonFigure[] = [];
  const faults: Fault[] = [];
  if (section === "") return { figures, faults };
  let total = 0;
  for (const line of section.split(/\r?\n/).slice(1)) {
    if (line.trim() === "") continue;
    const [name = "", data = "", ...more] = line.trim().split(" ");
    const figure = { name: name.slice(0, 60), data };
    total += bytesOf(figure);
    const fault = more.length > 0 ? null : figureFault(figure, total, figures);
    if (fault ?? more.length > 0)
      faults.push({
        path: figure.name,
        ...(fault ?? { found: "blanks within a figure", allowed: "a name and base64" }),
      });
    else figures.push(figure);
  }
  return { figures, faults };
}

/** Why this figure cannot be one more of those; null where it can. `total`: bytes, it included */
export function figureFault(
  figure: LessonFigure,
  total: number,
  others: readonly LessonFigure[],
): Omit<Fault, "path"> | null {
  const { name, data } = figure;
  if (!NAME.test(name))
    return {
      found: `figure ${JSON.stringify(name)}`,
      allowed: "a name of small letters, digits and hyphens that ends in .svg, .png or .jpg",
    };
  if (others.some((each) => each.name === name))
    return { found: `figure "${name}" twice`, allowed: "a name of its own" };
  if (data === "" || !/^[A-Za-z0-9+/]+={0,2}$/.test(data))
    return { found: `${name} without its picture`, allowed: "base64" };
  if (bytesOf(figure) > FIGURE_LIMITS.bytes)
    return {
      found: `${name}: ${Math.round(bytesOf(figure) / 1000)} kB`,
      allowed: `at most ${FIGURE_LIMITS.bytes / 1000} kB`,
    };
  if (total > FIGURE_LIMITS.total)
    return {
      found: `figures of ${Math.round(total / 1000)} kB`,
      allowed: `at most ${FIGURE_LIMITS.total / 1000} kB in a lesson`,
    };
  if (others.length >= FIGURE_LIMITS.count)
    return { found: `${others.length + 1} figures`, allowed: `at most ${FIGURE_LIMITS.count} in a lesson` };
  return contentFault(name, data);
}

export const totalBytes = (figures: readonly LessonFigure[]): number =>
  figures.reduce((sum, figure) => sum + bytesOf(figure), 0);
