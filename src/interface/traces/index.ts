/** Charts. The charting library itself is fetched when a chart is first shown. */
export { ParameterMap, type ParameterMapProps } from "./parameter-map.tsx";
export { TRACE_KINDS, type TraceKind } from "./series.ts";
export { SweepChart, type SweepChartProps } from "./sweep-chart.tsx";
export { LoopChart, TraceChart, type TraceChartProps } from "./traces.tsx";
export { TracesSection, type TracesSectionProps } from "./traces-section.tsx";
