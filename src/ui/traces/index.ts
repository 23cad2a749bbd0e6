/** Charts. The charting library itself is fetched when a chart is first shown. */
export { ParameterMap } from "./parameter-map.tsx";

export { SweepChart } from "./sweep-chart.tsx";
export { SweepProgress } from "./sweep-progress.tsx";

export { TracesSection } from "./traces-section.tsx";
