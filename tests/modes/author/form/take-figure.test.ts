import { expect, test } from "vitest";
import { asSvg } from "../../../../src/modes/author/form/take-figure.ts";

const HEAD = '<svg xmlns="http://www.w3.org/2000/svg">';

test("a cleaned drawing loses its links to elsewhere and keeps those within it", () => {
  const filter = (link: string) => `<filter id="f"><feImage ${link}></feImage></filter>`;
  const within = '<textPath href="#p" xlink:href="#p">a</textPath></svg>';
  expect(asSvg(`${HEAD}${filter(`id="i" xlink:href="https://example.org/x"`)}${within}`)).toBe(
    `${HEAD}${filter('id="i"')}${within}`,
  );
});

test("a no-break space stays one: SVG has no name for it", () =>
  expect(asSvg(`${HEAD}<text>12&nbsp;mmHg</text></svg>`)).toBe(`${HEAD}<text>12&#160;mmHg</text></svg>`));

test("what is no drawing is none, and one without its namespace is given it", () => {
  expect(asSvg("<p>x</p>")).toBeNull();
  expect(asSvg("<svg></svg>")).toBe(`${HEAD}</svg>`);
});
