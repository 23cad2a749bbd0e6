/** The circulation against time: pressures, flows or breathing, and the ventricle's pressure-volume loop. */

import { t } from "../../i18n/index.ts";
import type { Palette } from "../../scenes/theme/colour.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { Chart } from "./chart.tsx";
import { pressureVolumeLoop, type TraceKind, traceSeries, UNITS } from "./series.ts";

interface Drawn {
  readonly palette: Palette;
  /** CSS px of the smallest words: 24 in a lecture or kiosk */
  readonly type: number;
  /** CSS px */
  readonly height: number;
}

export interface TraceChartProps extends Drawn {
  readonly kind: TraceKind;
  readonly circulation: Circulation;
  /** s of the picture's running clock; the marker follows its phase */
  readonly moment?: () => number;
}

export function TraceChart({ kind, circulation, palette, type, height, moment }: TraceChartProps) {
  const { traces } = circulation;
  return (
    <Chart
      title={t(`traces.${kind}`)}
      foot={t("traces.seconds")}
      unit={UNITS[kind]}
      x={traces.time}
      series={traceSeries(kind, circulation, palette)}
      palette={palette}
      type={type}
      height={height}
      {...(moment ? { moment: () => moment() % traces.period } : {})}
    />
  );
}

export function LoopChart({
  circulation,
  palette,
  type,
  height,
}: Drawn & { readonly circulation: Circulation }) {
  const loop = pressureVolumeLoop(circulation, palette);
  if (!loop) return null;
  return (
    <Chart
      title={t("traces.loop")}
      foot={t("traces.volume")}
      unit="mmHg"
      x={loop.x}
      series={loop.series}
      loop
      palette={palette}
      type={type}
      height={height}
    />
  );
}
