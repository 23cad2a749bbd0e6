/** The course of a kiosk's day: what the page held, visit after visit. */
export const SOAK = "docs/validation/soak.json";

interface Level {
  readonly hours: number;
  readonly heap: number;
  readonly nodes: number;
  readonly listeners: number;
  readonly workers: number;
  readonly contexts: number;
  readonly graphics: number;
}

export interface SoakReport {
  readonly course: readonly Level[];
}

const ROWS = [
  ["heap", "heap after collection, MB"],
  ["nodes", "nodes of the page"],
  ["listeners", "listeners"],
  ["graphics", "graphics objects"],
  ["workers", "workers"],
] as const;
const [WIDTH, ROW, LEFT, RIGHT, TOP] = [900, 92, 60, 30, 24];

/** One strip for each thing that must stay level, from nothing to a quarter above the highest. */
export function drawSoak({ course }: SoakReport): string {
  const last = course.at(-1)!.hours;
  const across = (hours: number) => (LEFT + (hours / last) * (WIDTH - LEFT - RIGHT)).toFixed(1);
  const height = TOP + ROWS.length * ROW + 30;
  const strips = ROWS.map(([name, words], row) => {
    const values = course.map((level) => level[name]);
    const most = Math.max(...values) * 1.25;
    const foot = TOP + (row + 1) * ROW - 14;
    const up = (value: number) => (foot - (value / most) * (ROW - 40)).toFixed(1);
    const points = course.map((level) => `${across(level.hours)},${up(level[name])}`).join(" ");
    const marks = [0, Math.max(...values)].map(
      (value) =>
        `<text class="mark" x="${LEFT - 8}" y="${Number(up(value)) + 4}">${Math.round(value)}</text>`,
    );
    return `<text x="${LEFT}" y="${foot - ROW + 34}">${words}</text><path class="axis" d="M${LEFT} ${foot}H${WIDTH - RIGHT}"/><polyline points="${points}"/>${marks.join("")}`;
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
.axis { stroke: #8591b0; stroke-width: 1; }
</style>
<rect class="ground" width="${WIDTH}" height="${height}"/>
${strips.join("\n")}
${scale.join("\n")}
</svg>
`;
}
