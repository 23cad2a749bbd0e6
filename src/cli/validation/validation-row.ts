/** One row of the validation page: our value, the published range, the source. */
import { present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";

export interface Row {
  readonly quantity: string;
  readonly unit: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
  /** Why a value may be outside. */
  readonly remark?: string;
}

export interface Section {
  readonly title: string;
  readonly rows: readonly Row[];
}

/** A row as it is written below. */
type Given = readonly [
  quantity: string,
  unit: string,
  value: number,
  range: readonly [low: number, high: number],
  source: string,
  remark?: string,
];

export const row = (...[quantity, unit, value, [low, high], source, remark]: Given): Row => ({
  quantity,
  unit,
  value,
  low,
  high,
  source,
  ...(remark ? { remark } : {}),
});

export const rows = (given: readonly Given[]): Row[] => given.map((each) => row(...each));

export const INDEX = "L/min/m2";

/** A further output, which must be there. */
export const extra = ({ extras }: Circulation, name: string): number => present(extras[name]);
