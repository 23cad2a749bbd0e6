/**
 * How often the parts of an SVG are drawn, parts that draw parts again included: a few bytes can ask a browser for
 * years of it. Counted too high rather than too low.
 */

/** From here on a drawing would keep the page from answering. */
export const MAX_DRAWN = 200_000;

/** Each stops at the next `<`: how long a text is must not matter. */
const TAG = /<\/?[A-Za-z](?:[^"'<>]|"[^"<]*"|'[^'<]*')*>/g;
/** Of a filter, a step works on every pixel; noise on each many times. */
const STEP = 1000;
const NOISE = 20_000;

/** What is drawn within a part, and how often: `OWN`, or what may be an id. */
type Part = Map<string, number>;
const refer = (part: Part, id: string, times: number): Part => part.set(id, (part.get(id) ?? 0) + times);

/** No drawing nests its definitions as deep as this. */
const DEEPEST = 200;
/** No ids: the part's own tags, and what styles refer to, which any tag may use. */
const OWN = " own";
const STYLES = " styles";

/** The tags of a drawing that has nothing but tags and words; null for any other, such as one with a declaration or a comment. */
export function plainTags(svg: string): readonly string[] | null {
  const tags = svg.match(TAG) ?? [];
  return /^\s*<svg[\s>]/.test(svg) && svg.split("<").length - 1 === tags.length ? tags : null;
}

/** Infinity for a drawing that is not plain, and for one that refers to itself. */
export function drawingCost(svg: string): number {
  const tags = plainTags(svg);
  if (!tags) return Number.POSITIVE_INFINITY;
  const { whole, byId } = partsOf(tags, stylesOf(svg));
  const known = new Map<Part, number>();
  const open = new Set<Part>();
  const costOf = (part: Part): number => {
    const before = known.get(part);
    if (before !== undefined) return before;
    if (open.has(part) || open.size > DEEPEST) return Number.POSITIVE_INFINITY;
    open.add(part);
    let cost = part.get(OWN) ?? 0;
    for (const [id, times] of part) {
      const target = byId.get(id);
      if (target) cost += times * costOf(target);
    }
    open.delete(part);
    known.set(part, cost);
    return cost;
  };
  return costOf(whole);
}

const stylesOf = (svg: string): string =>
  [...svg.matchAll(/<style[^>]*>([^<]*)/gi)].map(([, css]) => decoded(css ?? "")).join(" ");

function partsOf(tags: readonly string[], css: string) {
  const whole: Part = new Map();
  const styles: Part = new Map();
  // A selector names what is styled, an address what is drawn.
  for (const name of namesIn((css.match(/url\([^)]*/gi) ?? []).join(" "))) refer(styles, name, 1);
  const byId = new Map([[STYLES, styles]]);
  const within = [whole];
  for (const tag of tags) {
    const name = (/^<\/?(?:[\w-]+:)?([\w-]+)/.exec(tag)?.[1] ?? "").toLowerCase();
    if (tag.startsWith("</")) {
      if (within.length > 1) within.pop();
      continue;
    }
    const inner = within.at(-1) ?? whole;
    const words = decoded(tag);
    // Whatever has an id may be drawn again. Of two of one id a browser takes the first.
    const id = idOf(words);
    const isNew = id !== undefined && !byId.has(id);
    const part: Part = isNew ? new Map() : inner;
    if (isNew) {
      byId.set(id, part);
      // Counted where it stands as well as where it is referred to.
      refer(inner, id, 1);
    }
    refer(part, OWN, name === "feturbulence" ? NOISE : name.startsWith("fe") ? STEP : 1);
    // A marker is drawn at every corner of its path.
    const times = /marker/i.test(words) || /marker/i.test(css) ? corners(words) : 1;
    for (const each of namesIn(words)) refer(part, each, times);
    if (styles.size > 0) refer(part, STYLES, times);
    if (tag.endsWith("/>")) continue;
    within.push(part);
  }
  return { whole, byId };
}

const idOf = (tag: string): string | undefined => {
  for (const [, name, value] of tag.matchAll(/([^\s"'<>/=]+)\s*=\s*("[^"]*"|'[^']*')/g))
    if (name === "id") return value?.slice(1, -1);
  return undefined;
};

const namesIn = (words: string): readonly string[] =>
  [...words.matchAll(/#([^\s"'();,{}<>]+)/g)].map(([, name]) => name ?? "");

const corners = (words: string): number => Math.max(1, (words.match(/[a-z]|-?[\d.]+/gi)?.length ?? 0) / 2);

/** Numbered signs of XML and of styles written out: a name may be spelt with them. */
const decoded = (words: string): string =>
  words
    .replace(/&#(x[\da-f]+|\d+);/gi, (_, code: string) => sign(Number(code.replace(/^x/i, "0x"))))
    .replace(/\\([\da-f]{1,6})\s?/gi, (_, code: string) => sign(Number.parseInt(code, 16)));

const sign = (code: number): string => (code <= 0x10ffff ? String.fromCodePoint(code) : "");
