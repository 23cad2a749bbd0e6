// @vitest-environment happy-dom
import { expect, it } from "vitest";
import { t } from "../../src/i18n/index.ts";
import { elementLabel, labelsOf } from "../../src/scenes/layers/labels.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { sizes as typeSizes } from "../../src/scenes/theme/type.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { START } from "../../src/state/scene-state.ts";
import { measureLetters } from "./wide-letters.ts";

measureLetters();
const circulation = solve(START.request);
const geometry = pathwayGeometry(START.request)!;
const [theme, sizes] = [darkTheme(t), typeSizes(800, 13)];
const flat = (point: readonly [number, number]) => point;
const wordsOf = (element: string) =>
  elementLabel(element, geometry.path, circulation, flat, { sizes, theme })[0]!.lines.map(
    ({ words }) => words,
  );

it("the lower vein shows its pressure, the same as at its place, and the loss in it, each by name", () => {
  const [name, pressure, lost] = wordsOf("inferiorVenaCava");
  const place = labelsOf(geometry.places, circulation, flat, false, { sizes, theme }).find(
    ({ name }) => name === "ivc",
  )!;
  const atPlace = place.lines[1]!.words;
  expect(name).toBe("Inferior vena cava");
  expect(pressure).toBe(`Pressure ${atPlace}`);
  const row = circulation.pathway.ledger.find(({ element }) => element === "inferiorVenaCava")!;
  expect(lost).toMatch(/^Lost here /);
  expect(lost).toContain(row.pressureDrop.toFixed(2));
});

it("no element writes a loss as a bare pressure", () => {
  for (const { element, area } of geometry.path)
    if (area)
      for (const words of wordsOf(element).slice(1))
        expect(words).toMatch(/^(Pressure|Lost here|Gained here) /);
});
