/** What a drawing asks of a browser: small files that would keep it busy for years are told from drawings. */
import { expect, test } from "vitest";
import { drawingCost, MAX_DRAWN } from "../../../src/lesson/own/drawing-cost.ts";

const svg = (inner: string) => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">${inner}</svg>`;
/** Definitions of eight parts each, eight deep: 8^8 rectangles. */
const nested = (tag: string, use: (id: string) => string) =>
  svg(
    [...Array(8).keys()]
      .map((depth) => {
        const parts = `<rect ${depth ? use(`p${depth - 1}`) : ""}></rect>`.repeat(8);
        return `<${tag} id="p${depth}">${parts}</${tag}>`;
      })
      .concat(`<rect ${use("p7")}></rect>`)
      .join(""),
  );

test.each([
  ["mask", nested("mask", (id) => `mask="url(#${id})"`)],
  ["pattern", nested("pattern", (id) => `fill="url('#${id}')"`)],
  ["clipPath", nested("clipPath", (id) => `style="clip-path: url( #${id} )"`)],
  ["spelt with numbers", nested("mask", (id) => `mask="url(&#x23;${id})"`)],
  ["spelt with a style's numbers", nested("mask", (id) => `style="mask:url(\\23 ${id})"`)],
  [
    "a use that is used",
    svg(
      `<g id="g0"><rect/></g>${Array.from({ length: 8 }, (_, n) => `<use id="u${n}" href="#g${n}"/><g id="g${n + 1}">${`<use href="#u${n}"/>`.repeat(10)}</g>`).join("")}<use href="#g8"/>`,
    ),
  ],
  ["use", nested("g", (id) => `></rect><use href="#${id}"`)],
  [
    "marker",
    svg(
      `<marker id="a"><path d="${"L1 1".repeat(300)}"/></marker><marker id="b"><path d="${"L1 1".repeat(300)}" marker-mid="url(#a)"/></marker><path d="${"L1 1".repeat(300)}" marker-mid="url(#b)"/>`,
    ),
  ],
  [
    "style",
    svg(
      `<style>rect{mask:url(#a)} path{mask:url(#b)}</style><mask id="a">${"<path></path>".repeat(300)}</mask><mask id="b">${"<rect></rect>".repeat(9)}</mask>`,
    ),
  ],
  ["filter", svg(`<filter id="f">${"<feGaussianBlur/>".repeat(300)}</filter>`)],
  ["noise", svg(`<filter id="f"><feTurbulence/></filter>${'<rect filter="url(#f)"/>'.repeat(20)}`)],
  [
    "under an id that stands twice",
    nested("mask", (id) => `mask="url(#${id})"`).replace("</svg>", '<mask id="p7"></mask></svg>'),
  ],
  [
    "behind another word",
    nested("mask", (id) => `mask="url(#${id})"`).replaceAll("<mask id", '<mask class=" id=x" id'),
  ],
  ["itself", svg('<mask id="a"><rect mask="url(#a)"></rect></mask><rect mask="url(#a)"></rect>')],
  ["a declaration", '<!DOCTYPE svg [<!ENTITY a "b">]><svg></svg>'],
  ["deep", svg(Array.from({ length: 5000 }, (_, i) => `<g id="g${i}">`).join("") + "</g>".repeat(5000))],
])("%s is too much", (_, text) => {
  expect(drawingCost(text)).toBeGreaterThan(MAX_DRAWN);
});

test.each([
  ["a styled group", svg('<style>#a{fill:red}</style><g id="a"><rect/></g>')],
  ["many paths", svg('<path d="M0 0L1 1"/>'.repeat(20_000))],
  [
    "groups, gradients and clips",
    svg(
      `<linearGradient id="l"><stop/></linearGradient><clipPath id="c"><rect/></clipPath><g id="layer">${'<g clip-path="url(#c)"><path fill="url(#l)" d="M0 0"/></g>'.repeat(3000)}</g>`,
    ),
  ],
  [
    "shadows",
    svg(
      `<filter id="s"><feGaussianBlur/><feOffset/><feMerge><feMergeNode/></feMerge></filter>${'<rect filter="url(#s)"/>'.repeat(40)}`,
    ),
  ],
  [
    "arrows",
    svg(
      `<marker id="a"><path d="M0 0L1 1Z"/></marker>${'<path marker-end="url(#a)" d="M0 0L9 9"/>'.repeat(500)}`,
    ),
  ],
])("%s are a drawing", (_, text) => {
  expect(drawingCost(text)).toBeLessThan(MAX_DRAWN);
});
