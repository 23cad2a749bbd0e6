/** What each chart shows, from the circulation's traces: names, units, colours of the scene and a dash pattern for each. */
import type { Sweep } from "../../chain/running-sweep.ts";
import type { Palette } from "../../scenes/theme/colour.ts";
import { lookOf } from "../../scenes/theme/curve-look.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation, Traces } from "../../sim/circulation/answer/answer.ts";

export const TRACE_KINDS = ["pressures", "flows", "breathing"] as const;
export type TraceKind = (typeof TRACE_KINDS)[number];

export interface Series {
  /** word key `traces.series.<name>`, or a text already in words */
  readonly name: string;
  readonly values: ArrayLike<number>;
  readonly colour: string;
  /** lengths on, off, ... in units of the type size */
  readonly dash?: readonly number[];
}

interface Choice {
  readonly name: string;
  readonly read: (traces: Traces) => Float64Array | undefined;
  readonly colour: (palette: Palette) => string;
  readonly dash?: readonly number[];
}

const LONG = [0.8, 0.4];
const SHORT = [0.3, 0.3];
const MIXED = [1, 0.35, 0.2, 0.35];

const CHOICES: Readonly<Record<TraceKind, readonly Choice[]>> = {
  pressures: [
    { name: "pathway", read: ({ pressures }) => pressures.pathway, colour: ({ pressure }) => pressure },
    { name: "atrium", read: ({ pressures }) => pressures.atrium, colour: ({ rich }) => rich, dash: LONG },
    {
      name: "pulmonaryVein",
      read: ({ pressures }) => pressures.pulmonaryVein,
      colour: ({ origin }) => origin[1],
      dash: SHORT,
    },
    { name: "ivc", read: ({ pressures }) => pressures.ivc, colour: ({ origin }) => origin[2], dash: MIXED },
  ],
  flows: [
    { name: "ivc", read: ({ flows }) => flows.ivc, colour: ({ origin }) => origin[2] },
    { name: "svc", read: ({ flows }) => flows.svc, colour: ({ origin }) => origin[0], dash: LONG },
    { name: "pulmonary", read: ({ flows }) => flows.pulmonary, colour: ({ rich }) => rich, dash: MIXED },
    {
      name: "fenestration",
      read: ({ flows }) =>
        flows.fenestration?.some((value) => value !== 0) ? flows.fenestration : undefined,
      colour: ({ dye }) => dye,
      dash: SHORT,
    },
  ],
  breathing: [
    { name: "pleural", read: ({ pressures }) => pressures.pleural, colour: ({ pressure }) => pressure },
    {
      name: "abdominal",
      read: ({ pressures }) => pressures.abdominal,
      colour: ({ origin }) => origin[1],
      dash: LONG,
    },
  ],
};

export const UNITS: Readonly<Record<TraceKind, "mmHg" | "L/min">> = {
  pressures: "mmHg",
  flows: "L/min",
  breathing: "mmHg",
};

/** What bears another name in a heart with two ventricles. */
const OF_TWO: Readonly<Record<string, string>> = {
  pathway: "mainPulmonaryArtery",
  atrium: "leftAtrium",
  ventricle: "leftVentricle",
};

const nameIn = ({ request }: Circulation, name: string): string =>
  (request.stage === "two-ventricle" && OF_TWO[name]) || name;

/** The kind's series that this circulation has, in the scene's colours. */
export const traceSeries = (kind: TraceKind, circulation: Circulation, palette: Palette): readonly Series[] =>
  CHOICES[kind].flatMap(({ name, read, colour, dash }) => {
    const values = read(circulation.traces);
    const named = { name: nameIn(circulation, name), colour: colour(palette) };
    return values ? [{ ...named, values, ...(dash ? { dash } : {}) }] : [];
  });

export interface Loop {
  /** mL */
  readonly x: Float64Array;
  readonly series: readonly Series[];
}

/** Pressure (mmHg) against volume (mL) of the ventricle over the whole cycle; null while the model gives none. */
export function pressureVolumeLoop(circulation: Circulation, palette: Palette): Loop | null {
  const { pressures, volumes } = circulation.traces;
  const { ventricle } = pressures;
  const { ventricle: volume } = volumes;
  if (!ventricle || !volume) return null;
  const name = nameIn(circulation, "ventricle");
  return { x: volume, series: [{ name, values: ventricle, colour: palette.rich }] };
}

/** One series for each curve of a sweep; points that are not answered, or have no such figure, are gaps (NaN). */
export const sweepSeries = (
  sweep: Sweep,
  read: (circulation: Circulation) => number,
  nameOf: (curve: string, index: number) => string,
  palette: Palette,
): readonly Series[] =>
  sweep.curves.map((curve, i) => ({
    name: nameOf(curve.name, i),
    values: curve.points.map(({ circulation }) => (circulation ? read(circulation) : Number.NaN)),
    ...lookOf(curve.name, palette),
  }));

export interface Summary {
  readonly mean: number;
  readonly least: number;
  readonly greatest: number;
}

/** Figures for the table in place of a chart; gaps are left out, null when nothing is left. The last sample of a closed trace repeats the first. */
export function summaryOf(values: ArrayLike<number>, closed: boolean): Summary | null {
  let [sum, count] = [0, 0];
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < values.length; i++) {
    const value = entryAt(values, i);
    if (!Number.isFinite(value)) continue;
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
    if (closed && i === values.length - 1) continue;
    sum += value;
    count++;
  }
  return count > 0 ? { mean: sum / count, least, greatest } : null;
}
