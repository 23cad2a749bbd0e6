/** A sweep's figure against what was changed, one curve for each state. */
import type { Sweep } from "../../chain/running-sweep.ts";
import type { Palette } from "../../scenes/theme/colour.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { Chart } from "./chart.tsx";
import { sweepSeries } from "./series.ts";

export interface SweepChartProps {
  readonly sweep: Sweep;
  /** in words, unit included */
  readonly title: string;
  readonly unit: string;
  readonly foot: string;
  readonly read: (circulation: Circulation) => number;
  /** Curve's name in words, by the sweep's name of it and its index. */
  readonly nameOf: (curve: string, index: number) => string;
  /** present value of what is varied, in the scene */
  readonly mark?: number;
  readonly palette: Palette;
  /** CSS px of the smallest words: 24 in a lecture or kiosk */
  readonly type: number;
  /** CSS px */
  readonly height: number;
}

export function SweepChart({ sweep, read, nameOf, palette, mark, ...chart }: SweepChartProps) {
  const x = sweep.curves[0]?.points.map(({ at }) => at) ?? [];
  return (
    <Chart
      {...chart}
      x={x}
      series={sweepSeries(sweep, read, nameOf, palette)}
      points
      palette={palette}
      {...(mark === undefined ? {} : { mark })}
    />
  );
}
