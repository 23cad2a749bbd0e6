/** What the stretches of the grade line are called in each course of the blood, and where it rises or falls by how much. */

import { formatQuantity, LOSS_DIGITS, writeDrop } from "../../i18n/index.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Theme } from "../theme/theme.ts";

type GradeLine = Circulation["pathway"]["gradeLine"];

export interface Stretch {
  /** of its words */
  readonly key: string;
  readonly from: number;
  readonly to: number;
}

/** Elements that are stretches of their own; what lies between is vein, pathway or artery. */
const ENDS = ["hepaticVein", "rightVentricle", "lungBed", "pulmonaryVein"];
/** Elements of a bidirectional Glenn's arteries, and of the lower vein's way into the atrium. */
const TURNS = ["leftTurn", "rightTurn"];
const INTO_ATRIUM = "lowerAtrialEntry";

/** Where the elements begin that part the line. */
function marksOf(points: GradeLine) {
  const start = (at: string) => points.find((point) => point.at === at)?.station;
  const pump = points.findIndex(({ at }) => at === "rightVentricle");
  return {
    entry: points.find(({ at }) => !ENDS.includes(at))?.station ?? 0,
    pump: points[pump],
    pumped: pump < 0 ? undefined : points[pump + 1],
    bed: start("lungBed"),
    veins: start("pulmonaryVein"),
  };
}

export function stretchesOf(points: GradeLine): Stretch[] {
  const start = (at: string) => points.find((point) => point.at === at)?.station;
  const { entry, pump, pumped, bed, veins } = marksOf(points);
  const below = points[0]?.at === "hepaticVein";
  const liver = below ? [{ key: "scene.stretch.liver", from: 0, to: entry }] : [];
  // At the Glenn stage the lower vein ends in the atrium: the lungs are not on its way.
  if (bed === undefined || veins === undefined)
    return [
      ...liver,
      { key: "scene.stretch.lowerVein", from: entry, to: start(INTO_ATRIUM) ?? 1 },
      { key: "scene.stretch.atrium", from: start(INTO_ATRIUM) ?? 1, to: 1 },
    ];
  const arteries = points.find(({ at }) => TURNS.includes(at))?.station ?? bed;
  const between =
    pump && pumped
      ? [
          { key: "scene.stretch.lowerVein", from: entry, to: pump.station },
          { key: "scene.stretch.rightVentricle", from: pump.station, to: pumped.station },
          { key: "scene.stretch.pulmonaryArteries", from: pumped.station, to: bed },
        ]
      : [{ key: "scene.stretch.pathway", from: entry, to: bed }];
  const above = [
    { key: "scene.stretch.upperVein", from: 0, to: arteries },
    { key: "scene.stretch.pulmonaryArteries", from: arteries, to: bed },
  ];
  return [
    ...liver,
    ...(below ? between : above),
    { key: "scene.stretch.lungs", from: bed, to: veins },
    { key: "scene.stretch.veins", from: veins, to: 1 },
  ];
}

export interface Change {
  readonly words: string;
  readonly figure: string;
  /** where its words stand: beneath that point of the line, ending before it, or beginning after it */
  readonly station: number;
  readonly pressure: number;
  readonly side: "beneath" | "before" | "after";
}

/** What a pathway spends; with two ventricles what the right one adds and the lungs spend; nothing of note on the way to the atrium. */
export function changesOf({ pathway }: Circulation, theme: Theme): Change[] {
  const { gradeLine: points, pressureDrop } = pathway;
  const { entry, pump, pumped, bed, veins } = marksOf(points);
  const at = (station: number | undefined) => points.find((point) => point.station === station);
  const [before, after] = [at(bed), at(veins)];
  if (!before || !after) return [];
  if (!pump || !pumped) {
    const station = (entry + before.station) / 2;
    return [
      {
        words: theme.say("scene.drop", { drop: writeDrop(pathway) }),
        figure: formatQuantity(pressureDrop, "mmHg", LOSS_DIGITS.pressureDrop),
        station,
        pressure: before.pressure,
        side: "beneath",
      },
    ];
  }
  const rise = formatQuantity(pumped.totalPressure - pump.totalPressure, "mmHg", 1);
  const spent = formatQuantity(before.totalPressure - after.totalPressure, "mmHg", 1);
  return [
    {
      words: theme.say("scene.rise", { rise }),
      figure: `+${rise}`,
      station: pump.station,
      pressure: (pump.pressure + pumped.pressure) / 2,
      side: "before",
    },
    {
      words: theme.say("scene.drop.lungs", { drop: spent }),
      figure: spent,
      station: (before.station + after.station) / 2,
      pressure: before.pressure,
      side: "after",
    },
  ];
}
