/** Which line of a sweep is whose, along the top of its plots, and how far the sweep has come. */
import type { Sweep, SweepCurve } from "../../chain/running-sweep.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import type { Box } from "../scene.ts";
import { lookOf } from "../theme/curve-look.ts";
import type { Theme } from "../theme/theme.ts";
import { apartIn } from "./apart.ts";
import type { Sheet } from "./drawing-sheet.ts";
import { BROKEN, dashes } from "./plot.ts";

const firstOf = ({ points }: SweepCurve): CirculationRequest => entryAt(points, 0).request;

/** A sweep's curve in words. @param apart what sets it apart from another of its stage, or nothing */
function nameOf(curve: SweepCurve, apart: string | undefined, theme: Theme): string {
  if (curve.name === "reference") return theme.say("further.sweep.reference");
  const request = firstOf(curve);
  const stage = theme.say(`stage.${request.stage}`);
  if (apart) return `${stage}, ${apart}`;
  if (request.stage !== "extracardiac") return stage;
  return theme.say("further.sweep.pathway", {
    stage,
    diameter: formatQuantity(numberSetting(request, "conduitDiameter"), "mm"),
  });
}

/** Where a name's sample begins; the name stands behind it. */
type Spot = readonly [x: number, y: number];

/** Returns the height taken. @param beyond what a curve's broken end is, where there is one */
export function drawSweepLegend(
  sheet: Omit<Sheet, "sizes">,
  sweep: Sweep,
  box: Box,
  type: number,
  beyond?: string,
): number {
  const { words, theme } = sheet;
  let [x, y] = [box.x, box.y + type * 0.7];
  const apart = apartIn(
    sweep.curves.map((curve) => (curve.name === "reference" ? null : firstOf(curve))),
    theme.say,
  );
  const looks = sweep.curves.map((curve, i) => ({
    ...lookOf(curve.name, theme.colour),
    words: nameOf(curve, apart[i], theme),
  }));
  const [first] = looks;
  for (const look of [...looks, ...(first && beyond ? [{ ...first, dash: BROKEN, words: beyond }] : [])]) {
    const note = {
      lines: [{ words: look.words, size: type, colour: theme.colour.ink }],
      bare: true,
    };
    const { width, height } = words.measure(note, theme);
    const room = box.width - type * 2.8;
    if (x > box.x && x + type * 2.8 + width > box.x + box.width) {
      // The word does not fit behind the others: it moves to a line of its own.
      x = box.x;
      y += type * 1.5;
    }
    drawSample(sheet, look, [x, y], type);
    const lain = words.write({ ...note, x: x + type * 2.8, y: y - height / 2, wrap: room }, theme);
    y += lain.height - height;
    x += type * 2.8 + lain.width + type * 1.6;
  }
  const says =
    sweep.progress < 1
      ? theme.say("further.sweep.solving", { share: formatQuantity(100 * sweep.progress, "%") })
      : sweep.curves.some(({ points }) => !points.at(-1)?.circulation) && theme.say("further.sweep.ends");
  if (says) {
    y += type * 1.5;
    words.write(
      {
        lines: [{ words: says, size: type, colour: theme.colour.inkSoft }],
        x: box.x,
        y,
        anchor: [0, 0.5],
        bare: true,
      },
      theme,
    );
  }
  return y - box.y + type * 1.4;
}

function drawSample(
  { ink }: Pick<Sheet, "ink">,
  { colour, dash }: ReturnType<typeof lookOf>,
  [x, y]: Spot,
  type: number,
) {
  const sample: [number, number][] = [
    [x, y],
    [x + type * 2.3, y],
  ];
  const pattern = dash?.map((part) => part * type);
  for (const [start, ...rest] of pattern ? dashes(sample, pattern) : [sample]) {
    ink.moveTo(...present(start));
    for (const [px, py] of rest) ink.lineTo(px, py);
    ink.stroke({ color: colour, width: Math.max(2.2, type * 0.17), cap: "round" });
  }
}
