// @vitest-environment happy-dom
import { Graphics } from "pixi.js";
import { expect, it } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { t } from "../../src/i18n/index.ts";
import { lettering } from "../../src/scenes/drawing/lettering.ts";
import { saidBy } from "../../src/scenes/drawing/written.ts";
import { drawGradeKey } from "../../src/scenes/layers/grade-key.ts";
import { underTitles } from "../../src/scenes/pathway/annotations.ts";
import { layout } from "../../src/scenes/pathway/pathway-layout.ts";
import type { Viewport } from "../../src/scenes/scene.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { sizes as sizesOf } from "../../src/scenes/theme/type.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";
import { measureLetters } from "./wide-letters.ts";

measureLetters();

const PHONE = { x: 0, y: 0, width: 390, height: 440 };
const sizes = sizesOf(390, 13);
const theme = darkTheme(t);
const asked = [
  {},
  { conduitDiameter: 12 },
  { conduitDiameter: 16, fenestrationDiameter: 4, pulmonaryResistanceIndex: 3 },
].map((set) => ({ ...START.request, set }));

it("the key of three that differ in three settings stands within a phone, each line with its own drop", () => {
  const words = lettering();
  const { grade } = layout(PHONE, 3, true, { x: 0, y: 0, width: 370, height: 50 }, sizes);
  words.begin();
  const key = drawGradeKey(
    { ink: new Graphics(), words, sizes, theme },
    asked.map((each) => solve(each)),
    grade!,
  );
  words.end();
  const lines = words.view.children.flatMap((view) => (view.visible ? (saidBy(view)?.laid ?? []) : []));
  expect(key).not.toBeNull();
  expect(lines).toHaveLength(3);
  expect(new Set(lines.map(({ lines: [line] }) => line)).size).toBe(3);
  words.view.children.forEach((view) => {
    const said = saidBy(view);
    if (said && view.visible) expect(view.x + said.laid.width).toBeLessThanOrEqual(PHONE.width);
  });
});

it("what sets panes apart leaves their pictures room: values alone where names would need more than three rows", () => {
  const frame = { panes: asked.map((request) => ({ circulation: { request } })) } as unknown as Frame;
  const under = (width: number) =>
    underTitles(frame, { clear: { ...PHONE, width }, floor: 13 } as Viewport, theme);
  expect(under(2800).apart[1]).toContain(t("parameter.conduitDiameter"));
  const { apart, rows } = under(PHONE.width);
  expect(rows).toBeLessThanOrEqual(3);
  expect(apart[1]).toMatch(/12\.0/);
  expect(new Set(apart).size).toBe(3);
});
