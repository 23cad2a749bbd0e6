/**
 * How often the parts of an SVG are drawn, definitions that use definitions included: a few bytes can ask a browser for
 * years of it. Counted too high rather than too low.
 */

/** From here on a drawing would keep the page from answering. */
export const MAX_DRAWN = 200_000;

/** Each stops at the next `<`: how long a text is must not matter. */
const TAG = /<\/?[A-Za-z](?:[^"'<>]|"[^"<]*"|'[^'<]*')*>/g;
const DEFINITION = /^(pattern|mask|clippath|marker|filter|symbol|g)$/;
/** Of a filter, a step works on every pixel; noise on each many times. */
const STEP = 1000;
const NOISE = 20_000;

interface Part {
  /** Drawn once within it, apart from what it refers to. */
  own: number;
  /** What may be the id of a definition, with how often it is drawn. */
  readonly refers: Map<string, number>;
}
const newPart = (): Part => ({ own: 0, refers: new Map() });
const refer = ({ refers }: Part, id: string, times: number) => refers.set(id, (refers.get(id) ?? 0) + times);

/** No drawing nests its definitions as deep as this. */
const DEEPEST = 200;
/** No id: what styles refer to, which any tag may use. */
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
    let cost = part.own;
    for (const [id, times] of part.refers) {
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
  const whole = newPart();
  const styles = newPart();
  for (const name of namesIn(css)) refer(styles, name, 1);
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
    inner.own += name === "feturbulence" ? NOISE : name.startsWith("fe") ? STEP : 1;
    // A marker is drawn at every corner of its path.
    const times = /marker/i.test(words) || /marker/i.test(css) ? corners(words) : 1;
    for (const each of namesIn(words)) refer(inner, each, times);
    if (styles.refers.size > 0) refer(inner, STYLES, times);
    if (tag.endsWith("/>")) continue;
    const id = DEFINITION.test(name) ? /\sid\s*=\s*["']?([^"'\s>]+)/i.exec(words)?.[1] : undefined;
    const part = id === undefined ? inner : newPart();
    if (id !== undefined) {
      byId.set(id, part);
      // Counted where it stands as well as where it is referred to.
      refer(inner, id, 1);
    }
    within.push(part);
  }
  return { whole, byId };
}

const namesIn = (words: string): readonly string[] =>
  [...words.matchAll(/#([^\s"'();,{}<>]+)/g)].map(([, name]) => name ?? "");

const corners = (words: string): number => Math.max(1, (words.match(/[a-z]|-?[\d.]+/gi)?.length ?? 0) / 2);

/** Numbered signs of XML and of styles written out: a name may be spelt with them. */
const decoded = (words: string): string =>
  words
    .replace(/&#(x[\da-f]+|\d+);/gi, (_, code: string) => sign(Number(code.replace(/^x/i, "0x"))))
    .replace(/\\([\da-f]{1,6})\s?/gi, (_, code: string) => sign(Number.parseInt(code, 16)));

const sign = (code: number): string => (code <= 0x10ffff ? String.fromCodePoint(code) : "");
