/** One chart: curves over axes by uplot (loaded when first shown), a legend in words, a marker in step with the picture, and a table. */
import { useEffect, useRef } from "preact/hooks";
import type uPlot from "uplot";
import { formatNumber, formatQuantity, hasMessage, t } from "../../i18n/index.ts";
import type { Palette } from "../../scenes/theme/colour.ts";
import { FAMILY } from "../../scenes/theme/type.ts";
import { digitsFor } from "./digits.ts";
import { type Series, summaryOf } from "./series.ts";
import "uplot/dist/uPlot.min.css";
import "./traces.css";

export interface ChartProps {
  /** in words, unit included */
  readonly title: string;
  readonly foot: string;
  readonly unit: string;
  readonly x: ArrayLike<number>;
  readonly series: readonly Series[];
  /** the horizontal values turn back (a loop): points are joined in the order given */
  readonly loop?: boolean;
  /** discs at the points: few computed states rather than a sampled trace */
  readonly points?: boolean;
  readonly palette: Palette;
  /** CSS px of the smallest words: 24 in a lecture or kiosk */
  readonly type: number;
  /** CSS px */
  readonly height: number;
  /** Position of the marker on the horizontal axis, read before each drawn frame; no marker without it. */
  readonly moment?: () => number | null;
  /** The marker stays on this value. */
  readonly mark?: number;
}

/** A series' name in words: the message of its name, or the name itself where it is in words already. */
const nameOf = ({ name }: Series): string =>
  hasMessage(`traces.series.${name}`) ? t(`traces.series.${name}`) : name;

export function Chart(props: ChartProps) {
  const host = useRef<HTMLDivElement>(null);
  const { title, series, unit, palette, type, height, loop, points, x, mark } = props;
  const latest = useRef(props);
  latest.current = props;
  // Rebuilt when what is drawn changes, not whenever the page around it does.
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    let gone = false;
    let stop = () => {};
    void import("uplot").then(({ default: Plot }) => {
      if (!gone) stop = show(Plot, element, latest.current);
    });
    return () => {
      gone = true;
      stop();
    };
  }, [
    x,
    palette,
    type,
    height,
    title,
    mark,
    series.length,
    series[0]?.values,
    series[series.length - 1]?.values,
  ]);
  const closed = !points;
  return (
    <figure class="chart" style={{ fontSize: `${type}px` }}>
      <figcaption>{title}</figcaption>
      <ul class="chart-legend">
        {series.map((each) => (
          <li key={each.name}>
            <Sample series={each} type={type} />
            {nameOf(each)}
          </li>
        ))}
      </ul>
      <div
        class="chart-plot"
        dir="ltr"
        role="img"
        aria-label={title}
        ref={host}
        style={{ height: `${height}px`, color: palette.ink }}
      />
      <details class="chart-table">
        <summary>{t("traces.asTable")}</summary>
        <table>
          <caption class="unseen">{title}</caption>
          <thead>
            <tr>
              <th scope="col">{t("traces.curve")}</th>
              {loop || points ? null : <th scope="col">{t("traces.mean")}</th>}
              <th scope="col">{t("traces.least")}</th>
              <th scope="col">{t("traces.greatest")}</th>
            </tr>
          </thead>
          <tbody>
            {series.map((each) => {
              const summary = summaryOf(each.values, closed);
              const cell = (value: number | undefined) => (
                <td>{value === undefined ? "" : formatQuantity(value, unit, 1)}</td>
              );
              return (
                <tr key={each.name}>
                  <th scope="row">{nameOf(each)}</th>
                  {loop || points ? null : cell(summary?.mean)}
                  {cell(summary?.least)}
                  {cell(summary?.greatest)}
                </tr>
              );
            })}
          </tbody>
        </table>
      </details>
    </figure>
  );
}

function Sample({ series, type }: { readonly series: Series; readonly type: number }) {
  return (
    <svg width={type * 2.2} height={type * 0.6} aria-hidden="true" class="chart-sample">
      <line
        x1="2"
        x2={type * 2.2 - 2}
        y1={type * 0.3}
        y2={type * 0.3}
        stroke={series.colour}
        stroke-width={lineWidth(type)}
        stroke-linecap="round"
        stroke-dasharray={series.dash?.map((part) => part * type).join(" ")}
      />
    </svg>
  );
}

const lineWidth = (type: number): number => Math.max(2, type * 0.16);

/** Builds the plot in `element`, keeps its width and its marker; the returned function takes it away. */
function show(Plot: typeof uPlot, element: HTMLElement, props: ChartProps): () => void {
  const { x, series, palette, type, height, loop, points, foot, mark, moment } = props;
  const width = lineWidth(type);
  const axis = (label?: string): uPlot.Axis => ({
    stroke: palette.inkSoft,
    font: `${type}px "${FAMILY}", sans-serif`,
    labelFont: `${type}px "${FAMILY}", sans-serif`,
    grid: { stroke: `${palette.hair}55`, width: 1 },
    ticks: { stroke: palette.hair, width: 1, size: type * 0.3 },
    gap: type * 0.3,
    space: type * 3.4,
    size: label === undefined ? type * 3.4 : type * 2,
    values: (_, marks) => marks.map((value) => formatNumber(value, digitsFor(marks))),
    ...(label === undefined ? {} : { label, labelSize: type * 1.7, labelGap: 0 }),
  });
  const options: uPlot.Options = {
    width: Math.max(120, element.clientWidth),
    height,
    ...(loop ? { mode: 2 as const } : {}),
    legend: { show: false },
    cursor: { show: false },
    padding: [type * 0.6, type, 0, 0],
    scales: {
      x: {
        time: false,
        ...(loop ? {} : { range: (_: uPlot, min: number, max: number): [number, number] => [min, max] }),
      },
    },
    axes: [axis(foot), axis()],
    series: [
      {},
      ...series.map((each) => ({
        stroke: each.colour,
        width,
        ...(each.dash ? { dash: each.dash.map((part) => part * type) } : {}),
        points: { show: Boolean(points), size: width * 3, fill: each.colour },
        spanGaps: true,
        ...(loop ? { paths: joined } : {}),
      })),
    ],
  };
  const columns = series.map((each) =>
    Array.from(each.values, (value) => (Number.isFinite(value) ? value : null)),
  );
  const xs = Array.from(x);
  const data = (
    loop ? [null, ...columns.map((column) => [xs, column])] : [xs, ...columns]
  ) as uPlot.AlignedData;
  const plot = new Plot(options, data, element);

  const marker = element.ownerDocument.createElement("div");
  marker.className = "chart-moment";
  plot.over.appendChild(marker);
  let turn = 0;
  const place = () => {
    const at = moment ? moment() : (mark ?? null);
    const left = at === null ? -1 : plot.valToPos(at, "x");
    marker.hidden = at === null || left < -1 || left > plot.over.clientWidth + 1;
    marker.style.transform = `translateX(${left}px)`;
    if (moment) turn = requestAnimationFrame(place);
  };
  place();
  const observer = new ResizeObserver(() => {
    if (element.clientWidth > 0 && element.clientWidth !== plot.width) {
      plot.setSize({ width: element.clientWidth, height });
      if (!moment) place();
    }
  });
  observer.observe(element);
  return () => {
    cancelAnimationFrame(turn);
    observer.disconnect();
    plot.destroy();
  };
}

/** Joins the points in their own order, for curves that turn back. */
const joined: uPlot.Series.PathBuilder = (plot, index) => {
  const [xs, ys] = plot.data[index] as unknown as [number[], (number | null)[]];
  const stroke = new Path2D();
  xs.forEach((value, i) => {
    const y = ys[i];
    if (y === null || y === undefined) return;
    const [px, py] = [plot.valToPos(value, "x", true), plot.valToPos(y, "y", true)];
    if (i === 0) stroke.moveTo(px, py);
    else stroke.lineTo(px, py);
  });
  return {
    stroke,
    fill: null,
    clip: null,
    band: null,
    gaps: null,
    flags: 0,
  } as unknown as uPlot.Series.Paths;
};
