import { expect, test } from "vitest";
import { withSize } from "../../../../src/modes/lecture/deck/step-figures.ts";

test.each([
  ['<svg xmlns="x" viewBox="0 0 200 80"><g/></svg>', 'width="1600" height="640"'],
  ['<svg viewBox="0 0 200 80" width="100%" height="9em"/>', 'width="1600" height="640"'],
  [
    '<svg width="30px" height="60"><path stroke-width="2"/></svg>',
    'width="800" height="1600" viewBox="0 0 30 60"',
  ],
  ["<svg><g/></svg>", 'width="1600" height="1200" viewBox="0 0 4 3"'],
])("%s is drawn in its own shape, large", (svg, sized) => {
  const drawn = withSize(svg);
  expect(drawn).toMatch(new RegExp(`^<svg ${sized}[ />]`));
  expect(drawn.match(/\s(width|height)="/g)).toHaveLength(2);
});
