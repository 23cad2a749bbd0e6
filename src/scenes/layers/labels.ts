/** Names and numbers at their places: a plate outside the vessel, joined to its spot by a hairline; none covers another. */
import type { Graphics } from "pixi.js";
import { appendChange, formatQuantity, type Lung, shareOf, writeShare } from "../../i18n/index.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Place, Station } from "../../sim/geometry/geometry.ts";
import type { Look } from "../drawing/drawing-sheet.ts";
import type { Lettering, Line } from "../drawing/lettering.ts";
import { layOut } from "../drawing/written.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";
import { hairline } from "./keep-off.ts";
import { PRESSURE_AT } from "./spots.ts";

/** The lung that belongs to a place. */
const LUNG: Readonly<Record<string, Lung>> = { leftLung: "left", rightLung: "right" };

/**
 * The numbers that stand at a place, as words; none where none belongs.
 * @param earlier before the last change, whose change then stands behind each number
 */
function figuresAt(
  place: string,
  circulation: Circulation | null,
  earlier: Circulation | null | undefined,
  theme: Theme,
): readonly string[] {
  if (!circulation) return [];
  const written = (of: (from: Circulation) => number, unit: string, digits: number) =>
    appendChange(
      formatQuantity(of(circulation), unit, digits),
      earlier && of(earlier),
      of(circulation),
      digits,
    );
  const pressure = PRESSURE_AT[place];
  if (pressure) return [written(({ pressures }) => pressures[pressure], "mmHg", 1)];
  if (place === "fenestration") return [written(({ flows }) => flows.fenestration, "L/min", 2)];
  if (place === "aorta")
    return [theme.say("scene.saturation", { saturation: written((of) => of.saturations.arterial, "%", 0) })];
  const { shares } = circulation;
  const lung = LUNG[place];
  if (!lung || !shares) return [];
  return (["ivc", "svc"] as const).map((vein) =>
    appendChange(
      theme.say(`scene.share.${vein}`, { share: writeShare(shares[vein], lung) }),
      earlier?.shares && shareOf(earlier.shares[vein], lung).value,
      shareOf(shares[vein], lung).value,
      0,
    ),
  );
}

export interface Label {
  readonly name: string;
  readonly lines: readonly Line[];
  /** CSS px: the spot, and where the plate would like its centre */
  readonly at: readonly [number, number];
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** its phrases broken in two, for where it has no room */
  readonly narrow?: Label;
}

/** mm -> CSS px */
export type ToScreen = (point: readonly [number, number]) => readonly [number, number];

/** How labels look, and the answer before the last change. */
export interface LabelLook extends Look {
  readonly earlier?: Circulation | null | undefined;
}

/** @param brief short names, and only where a number belongs */
export function labelsOf(
  places: readonly Place[],
  circulation: Circulation | null,
  toScreen: ToScreen,
  brief: boolean,
  { sizes, theme, earlier }: LabelLook,
): Label[] {
  return places.flatMap(({ name, at, label }) => {
    const figures = figuresAt(name, circulation, earlier, theme);
    if (figures.length === 0 && brief) return [];
    const title: Line = {
      words: theme.say(brief ? `place.short.${name}` : `place.${name}`),
      size: sizes.axis,
      colour: theme.colour.inkSoft,
    };
    const spot = toScreen(at);
    const wish = toScreen(label);
    // Whole phrases are written smaller than a number alone.
    const size = figures.length > 1 ? sizes.axis : sizes.label;
    const plate = (words: readonly string[]): Label => {
      const lines = [
        title,
        ...words.map((each): Line => ({ words: each, size, colour: theme.colour.ink, bold: true })),
      ];
      const [width, height] = measure(lines, sizes, theme);
      return { name, lines, at: spot, width, height, ...hung(spot, wish, [width, height], brief) };
    };
    return figures.length > 1
      ? [{ ...plate(figures), narrow: plate(figures.flatMap(brokenInTwo)) }]
      : [plate(figures)];
  });
}

/** The plate hangs on its label point by the side that faces the spot, so that it stays off the vessel. */
function hung(
  [sx, sy]: readonly [number, number],
  [lx, ly]: readonly [number, number],
  [width, height]: readonly [number, number],
  brief: boolean,
): { readonly x: number; readonly y: number } {
  // Short of room, the plate keeps off what lies before its part.
  if (Math.hypot(lx - sx, ly - sy) < 0.7 * height) return { x: brief ? sx + width / 2 : sx, y: sy };
  return Math.abs(lx - sx) >= Math.abs(ly - sy)
    ? { x: lx + (Math.sign(lx - sx) * width) / 2, y: ly }
    : { x: lx, y: ly + (Math.sign(ly - sy) * height) / 2 };
}

/** A phrase as two lines, at the space nearest its middle; as one where it has none. */
function brokenInTwo(phrase: string): readonly string[] {
  const middle = phrase.length / 2;
  const after = phrase.indexOf(" ", middle);
  const before = phrase.lastIndexOf(" ", middle);
  const at = after >= 0 && (before < 0 || after - middle < middle - before) ? after : before;
  return at < 0 ? [phrase] : [phrase.slice(0, at), phrase.slice(at + 1)];
}

/** mmHg with which blood comes to an element; undefined off the path that the grade line follows. The same as at the places. */
export function pressureIn(element: string, { pathway, pressures }: Circulation): number | undefined {
  if (element === "superiorVenaCava") return pressures.svc;
  return pathway.gradeLine.find(({ at }) => at === element)?.totalPressure;
}

/** The element that is pointed at: its name, its pressure and what is lost there, beside its light. Empty where the plane has no such element. */
export function elementLabel(
  element: string,
  path: readonly Station[],
  circulation: Circulation | null,
  toScreen: ToScreen,
  { sizes, theme }: Look,
): Label[] {
  const area = path.find((station) => station.element === element)?.area;
  if (!area) return [];
  const lines: Line[] = [
    { words: theme.say(`element.${element}`), size: sizes.axis, colour: theme.colour.inkSoft },
  ];
  const bold = (words: string): Line => ({ words, size: sizes.label, colour: theme.colour.ink, bold: true });
  const pressure = circulation ? pressureIn(element, circulation) : undefined;
  if (pressure !== undefined)
    lines.push(bold(theme.say("scene.element.pressure", { pressure: formatQuantity(pressure, "mmHg", 1) })));
  const rows = circulation?.pathway.ledger.filter((row) => row.element === element) ?? [];
  if (rows.length > 0) {
    const spent = rows.reduce((sum, row) => sum + row.pressureDrop, 0);
    const drop = formatQuantity(Math.abs(spent), "mmHg", 2);
    lines.push(bold(theme.say(spent < 0 ? "scene.element.gained" : "scene.element.lost", { drop })));
  }
  const [width, height] = measure(lines, sizes, theme);
  const at = toScreen(area.centre);
  const [edge] = toScreen([area.centre[0] + area.radius + 6, area.centre[1]]);
  return [{ name: element, lines, at, x: edge + width / 2, y: at[1], width, height }];
}

const measure = (lines: readonly Line[], sizes: Sizes, theme: Theme): [number, number] => [
  Math.max(...lines.map((line) => widthOf(line, theme))) + 0.9 * sizes.axis,
  lines.reduce((sum, line) => sum + 1.22 * line.size, 0) + 0.6 * sizes.axis,
];

const widthOf = ({ words, size, bold }: Line, { family }: Theme): number =>
  layOut(words, { family, size, bold }).width;

/** Hairlines into `ink`, plates and words into `words`. */
export function drawLabels(
  ink: Graphics,
  words: Lettering,
  labels: readonly Label[],
  focus: string | null,
  theme: Theme,
): void {
  for (const label of labels) {
    const { x, y, width, height, lines, name } = label;
    const [[ax, ay], [ex, ey]] = hairline(label);
    const inside = Math.abs(ax - x) < width / 2 && Math.abs(ay - y) < height / 2;
    if (!inside && lines.length > 1) {
      ink.moveTo(ax, ay).lineTo(ex, ey).stroke({ width: 1.5, color: theme.colour.hair });
      ink.circle(ax, ay, 3.5).fill({ color: theme.colour.ink });
    }
    words.write({ lines, x, y, anchor: [0.5, 0.5], lit: focus === name }, theme);
  }
}
