/** A kiosk's day: memory and objects of the page, visit after visit, drawn by the processor and for a graphics chip. */
import { readFileSync } from "node:fs";

export const WAYS = ["canvas", "webgl"] as const;
type Way = (typeof WAYS)[number];

/** Where the run of each way to draw is stored. */
export const soakOf = (way: Way): string => `docs/validation/soak-${way}.json`;

interface Level {
  readonly hours: number;
  readonly heap: number;
  readonly nodes: number;
  readonly listeners: number;
  readonly workers: number;
  readonly contexts: number;
  readonly graphics: number;
}

interface SoakReport {
  readonly course: readonly Level[];
}

export const readSoaks = (): Record<Way, SoakReport> =>
  Object.fromEntries(WAYS.map((way) => [way, JSON.parse(readFileSync(soakOf(way), "utf8"))])) as Record<
    Way,
    SoakReport
  >;

const ROWS = [
  ["heap", "heap after collection, MB"],
  ["nodes", "nodes of the page"],
  ["listeners", "listeners"],
  ["graphics", "graphics objects"],
  ["workers", "workers"],
] as const;
const [WIDTH, ROW, LEFT, RIGHT, TOP] = [900, 92, 60, 30, 24];

/** One strip for each count that must stay level, from 0 to a quarter above the highest. */
export function drawSoaks(reports: Record<Way, SoakReport>): string {
  const courses = WAYS.map((way) => ({ way, course: reports[way].course }));
  const last = Math.max(...courses.map(({ course }) => course.at(-1)!.hours));
  const across = (hours: number) => (LEFT + (hours / last) * (WIDTH - LEFT - RIGHT)).toFixed(1);
  const height = TOP + ROWS.length * ROW + 30;
  const strips = ROWS.map(([name, words], row) => {
    const values = courses.flatMap(({ course }) => course.map((level) => level[name]));
    const most = Math.max(...values) * 1.25;
    const foot = TOP + (row + 1) * ROW - 14;
    const up = (value: number) => (foot - (value / most) * (ROW - 40)).toFixed(1);
    const lines = courses.map(({ way, course }) => {
      const points = course.map((level) => `${across(level.hours)},${up(level[name])}`).join(" ");
      return `<polyline class="${way}" points="${points}"/>`;
    });
    const marks = [0, Math.max(...values)].map(
      (value) =>
        `<text class="mark" x="${LEFT - 8}" y="${Number(up(value)) + 4}">${Math.round(value)}</text>`,
    );
    return `<text x="${LEFT}" y="${foot - ROW + 34}">${words}</text><path class="axis" d="M${LEFT} ${foot}H${WIDTH - RIGHT}"/>${lines.join("")}${marks.join("")}`;
  });
  const hours = Array.from({ length: Math.floor(last) + 1 }, (_, hour) => hour);
  const scale = hours.map(
    (hour) => `<text class="hour" x="${across(hour)}" y="${height - 18}">${hour} h</text>`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" role="img">
<title>What the page held over ${last.toFixed(1)} hours of simulated visitors</title>
<style>
.ground { fill: #f7f5f0; }
text { font: 14px sans-serif; fill: #16181f; }
.mark { text-anchor: end; font-size: 12px; }
.hour { text-anchor: middle; font-size: 12px; }
polyline { fill: none; stroke: #21409a; stroke-width: 2; }
.canvas { stroke-dasharray: 5 3; }
.axis { stroke: #8591b0; stroke-width: 1; }
</style>
<rect class="ground" width="${WIDTH}" height="${height}"/>
${strips.join("\n")}
${scale.join("\n")}
</svg>
`;
}
